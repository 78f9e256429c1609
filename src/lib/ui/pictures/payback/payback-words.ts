/**
 * What the payback picture says: its finding, what is drawn, and its summary. In the conditional, since a
 * case is an estimate; never a verdict.
 */
import type { Layout } from '$lib/engine/layout';
import { formatDifference, formatNumber } from '../../format';
import { outcomeOf, type Case, type Cases, type PaybackPicture } from './payback';
import { rowFigure, type FigureName } from './payback-table';
import type { Reading } from '../../figure/read';
import type { Scale } from '../../figure/scale';
import { count, listed, midSentence, years } from '../../figure/words';

const yearText = (reading: Reading, locale: string) => formatNumber(reading.value, 1, locale);
const inYears = (reading: Reading, locale: string) =>
	years(yearText(reading, locale), reading.quantity?.quantity.unit ?? '');

const soonest = (cases: readonly Case[]) =>
	cases
		.filter((case_) => outcomeOf(case_) === 'pays')
		.sort((a, b) => a.payback.value - b.payback.value)[0];

/** The finding: of the scenario in hand if it has a case, else of the one that is back soonest. */
export function paybackTitle({ cases, lacking, pending }: Cases, locale: string): string {
	if (lacking) return `${lacking.title}: ${midSentence(lacking.doubt)}`;
	if (cases.length === 0)
		return pending > 0 ? 'The scenarios are being computed' : 'No scenario has an investment';
	const hand = cases.find((case_) => case_.selectedScenario);
	const first = soonest(cases);
	const subject = hand ?? first ?? cases[0];
	if (!subject) return '';
	const outcome = outcomeOf(subject);
	if (outcome === 'doubtful') return `${subject.title}: ${midSentence(subject.doubt)}`;
	if (outcome === 'unknown') return `${subject.title} has no payback to show`;
	if (outcome === 'nothing-to-pay') return `${subject.title} would never be short of cash`;
	if (outcome === 'never') return neverTitle(cases, subject, hand, first, locale);
	const said = `${subject.title} would pay back ${!hand && cases.length > 1 ? 'soonest, ' : ''}in ${inYears(subject.payback, locale)}`;
	const below = belowCapital(subject);
	const parent = cases.find((case_) => case_.id === subject.parent && !case_.doubt);
	if (parent && hand) return `${said}, ${besideParent(subject, parent, locale)}${below}`;
	return `${said}${below}${theRest(cases, subject)}`;
}

/** Money back is no gain where it comes too late for what capital costs. */
const belowCapital = ({ npv }: Case) =>
	npv.kind === 'value' && npv.value < 0 ? ', and would not earn its cost of capital' : '';

function neverTitle(
	cases: readonly Case[],
	subject: Case,
	hand: Case | undefined,
	first: Case | undefined,
	locale: string
): string {
	if (!hand && cases.length > 1) return 'No scenario would pay back within its life';
	const life =
		subject.life.kind === 'value'
			? ` of ${years(formatNumber(subject.life.value, 0, locale), subject.life.quantity?.quantity.unit ?? '')}`
			: '';
	const other = first ? `; ${first.title} would in ${yearText(first.payback, locale)}` : '';
	return `${subject.title} would not pay back within its life${life}${other}`;
}

/** How it compares with the scenario that it stands on. */
function besideParent(subject: Case, parent: Case, locale: string): string {
	if (outcomeOf(parent) === 'never') return `which ${parent.title} alone never would`;
	if (outcomeOf(parent) !== 'pays') return `standing on ${parent.title}`;
	const there = yearText(parent.payback, locale);
	if (there === yearText(subject.payback, locale)) return `as ${parent.title} alone would`;
	const sooner = subject.payback.value < parent.payback.value;
	return `${sooner ? 'sooner' : 'later'} than ${parent.title} alone at ${there}`;
}

function theRest(cases: readonly Case[], subject: Case): string {
	const never = cases.filter((case_) => case_ !== subject && outcomeOf(case_) === 'never');
	if (never.length === 0) return '';
	if (never.length > 1) return `; ${count(never.length)} others never would`;
	return `; ${never[0]?.title} never would`;
}

/** What is drawn, in which unit. */
export function paybackLine(layout: Layout, picture: PaybackPicture, scale: Scale): string {
	const label = (name: string) => layout.byName.get(name)?.quantity.label ?? name;
	const set = layout.sets.get(picture.year)?.label.toLowerCase() ?? 'year';
	return `${label(picture.cumulative)} by ${set}, ${scale.unit}, for each scenario that has an investment`;
}

/** The picture for somebody who cannot see it. */
export function paybackSummary({ cases, without }: Cases, scale: Scale, locale: string): string {
	const lines = cases.map((case_) => {
		const figure = (name: FigureName) => rowFigure(case_, name, scale, locale).text;
		const outcome = outcomeOf(case_);
		const back =
			outcome === 'pays'
				? `would pay back after ${inYears(case_.payback, locale)}, discounted ${figure('discountedPayback')}`
				: outcome === 'doubtful'
					? `is no case to read: ${midSentence(case_.doubt)}`
					: outcome === 'never'
						? 'would not pay back within its life'
						: outcome === 'nothing-to-pay'
							? 'would never be below zero'
							: 'has no payback to show';
		const last = case_.simple.points.at(-1);
		const end = last
			? `, and would end at ${formatDifference(last.y * scale.factor, 0, locale)} ${scale.unit} after ${years(formatNumber(last.x, 0, locale), 'year')}`
			: '';
		return `${case_.title}, investment ${figure('outlay')} ${scale.unit}, ${back}${end}`;
	});
	const none = without.length > 0 ? ` Without an investment: ${listed(without)}.` : '';
	return lines.length === 0
		? `No scenario has an investment.${none}`
		: `${lines.join('. ')}.${none}`;
}
