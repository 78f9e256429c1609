/**
 * What the payback picture says: its finding, cautions and summary, and its table to take along. In the
 * conditional, since a case is an estimate; never a verdict.
 */
import type { Layout } from '$lib/engine/layout';
import { decimalsFor, formatDifference, formatNumber, formatUnit } from '../format';
import { outcomeOf, type Case, type Cases, type PaybackPicture } from './payback';
import { plain, type Reading } from './read';
import type { Scale } from './scale';
import type { PlainTable } from './table';
import { count, listed, years } from './words';

const yearText = (reading: Reading, locale: string) => formatNumber(reading.value, 1, locale);
const inYears = (reading: Reading, locale: string) =>
	years(yearText(reading, locale), reading.quantity?.quantity.unit ?? '');

const soonest = (cases: readonly Case[]) =>
	cases
		.filter((one) => outcomeOf(one) === 'pays')
		.sort((a, b) => a.payback.value - b.payback.value)[0];

/** The finding: of the scenario in hand if it has a case, else of the one that is back soonest. */
export function paybackTitle({ cases, pending }: Cases, locale: string): string {
	if (cases.length === 0)
		return pending > 0 ? 'The scenarios are being computed' : 'No scenario has an outlay';
	const hand = cases.find((one) => one.inHand);
	const first = soonest(cases);
	const subject = hand ?? first ?? cases[0];
	if (!subject) return '';
	const outcome = outcomeOf(subject);
	if (outcome === 'unknown') return `${subject.title} has no payback to show`;
	if (outcome === 'nothing-to-pay') return `${subject.title} would never be short of cash`;
	if (outcome === 'never') return neverTitle(cases, subject, hand, first, locale);
	const said = `${subject.title} would pay back ${!hand && cases.length > 1 ? 'soonest, ' : ''}in ${inYears(subject.payback, locale)}`;
	const parent = cases.find((one) => one.id === subject.parent);
	if (parent && hand) return `${said}, ${besideParent(subject, parent, locale)}`;
	return `${said}${theRest(cases, subject)}`;
}

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
	const never = cases.filter((one) => one !== subject && outcomeOf(one) === 'never');
	if (never.length === 0) return '';
	if (never.length > 1) return `; ${count(never.length)} others never would`;
	return `; ${never[0]?.title} never would`;
}

/** What is drawn, in which unit. */
export function paybackLine(layout: Layout, picture: PaybackPicture, scale: Scale): string {
	const label = (name: string) => layout.byName.get(name)?.quantity.label ?? name;
	const set = layout.sets.get(picture.year)?.label.toLowerCase() ?? 'year';
	return `${label(picture.cumulative)} by ${set}, ${scale.unit}, for each scenario that has an outlay`;
}

/** Names of the figures in a row, as the table's head has them. */
export const FIGURES = [
	'payback',
	'discountedPayback',
	'outlay',
	'npv',
	'irr',
	'annualValue'
] as const;
export type FigureName = (typeof FIGURES)[number];

export interface RowFigure {
	readonly text: string;
	/** 'never' and 'none' are answers; an error is not. */
	readonly kind: 'value' | 'answer' | 'error' | 'nothing';
	readonly because: string;
}

/** One figure of a row in words: "2.7", "never", "none" or "No value". */
export function rowFigure(one: Case, name: FigureName, scale: Scale, locale: string): RowFigure {
	const reading = one[name];
	if (reading.kind === 'error')
		return { text: 'No value', kind: 'error', because: reading.because };
	if (reading.kind === 'no-answer') {
		const outcome = outcomeOf(one);
		const never = outcome === 'nothing-to-pay' ? 'at once' : 'never';
		return { text: name === 'irr' ? 'none' : never, kind: 'answer', because: '' };
	}
	if (reading.kind !== 'value')
		return { text: reading.kind === 'pending' ? '…' : 'none', kind: 'nothing', because: '' };
	const money = name === 'npv' || name === 'annualValue' || name === 'outlay';
	const value = reading.value * (money ? scale.factor : 1);
	const decimals = money ? (scale.factor === 1 ? decimalsFor(value, 4) : 0) : 1;
	const signed = name === 'npv' || name === 'annualValue';
	return {
		text: signed
			? formatDifference(value, decimals, locale)
			: formatNumber(value, decimals, locale),
		kind: 'value',
		because: ''
	};
}

export function paybackTable(
	{ cases }: Cases,
	layout: Layout,
	picture: PaybackPicture
): PlainTable {
	const unit = (name: string) => formatUnit(layout.byName.get(name)?.quantity.unit);
	const all = layout.sets.get(picture.year)?.members ?? [];
	const cash = (line: Case['simple'], x: number) =>
		line.points.find((point) => point.x === x)?.y ?? null;
	const numbers = all.map((year, ordinal) => year.number ?? ordinal);
	const names = all.map((year) => year.label ?? year.id);
	const inUnit = (label: string, name: string) => (unit(name) ? `${label}, ${unit(name)}` : label);
	const answer = (one: Case, reading: Reading) =>
		reading.kind === 'no-answer'
			? rowFigure(one, 'payback', { factor: 1, unit: '' }, 'en').text
			: plain(reading);
	return {
		caption: picture.title,
		columns: [
			'Scenario',
			'Stands on',
			inUnit('Life', picture.life),
			inUnit('Payback', picture.payback),
			inUnit('Payback, discounted', picture.discounted_payback),
			inUnit('Outlay', picture.outlay),
			inUnit('Net present value', picture.npv),
			inUnit('Rate of return', picture.irr),
			inUnit('Annual value', picture.annual_value),
			...names.map((name) => inUnit(`Cumulative, ${name}`, picture.cumulative)),
			...names.map((name) => inUnit(`Discounted, ${name}`, picture.cumulative_discounted))
		],
		rows: cases.map((one) => [
			one.title,
			one.on,
			plain(one.life),
			one.payback.kind === 'no-answer' ? answer(one, one.payback) : plain(one.payback),
			one.discountedPayback.kind === 'no-answer' ? 'never' : plain(one.discountedPayback),
			plain(one.outlay),
			plain(one.npv),
			plain(one.irr),
			plain(one.annualValue),
			...numbers.map((x) => cash(one.simple, x)),
			...numbers.map((x) => cash(one.discounted, x))
		])
	};
}

/** The picture for somebody who cannot see it. */
export function paybackSummary({ cases, without }: Cases, scale: Scale, locale: string): string {
	const lines = cases.map((one) => {
		const figure = (name: FigureName) => rowFigure(one, name, scale, locale).text;
		const outcome = outcomeOf(one);
		const back =
			outcome === 'pays'
				? `pays back after ${inYears(one.payback, locale)}, discounted ${figure('discountedPayback')}`
				: outcome === 'never'
					? 'does not pay back within its life'
					: outcome === 'nothing-to-pay'
						? 'is never below zero'
						: 'has no payback to show';
		const last = one.simple.points.at(-1);
		const end = last
			? `, and ends at ${formatDifference(last.y * scale.factor, 0, locale)} ${scale.unit} after ${years(formatNumber(last.x, 0, locale), 'year')}`
			: '';
		return `${one.title}, outlay ${figure('outlay')} ${scale.unit}, ${back}${end}`;
	});
	const none = without.length > 0 ? ` Without an outlay: ${listed(without)}.` : '';
	return lines.length === 0 ? `No scenario has an outlay.${none}` : `${lines.join('. ')}.${none}`;
}

/** "on New line, 12 years". */
export function subLine(one: Case, locale: string): string {
	const life =
		one.life.kind === 'value'
			? years(formatNumber(one.life.value, 0, locale), one.life.quantity?.quantity.unit ?? '')
			: '';
	return [one.on, life].filter(Boolean).join(', ');
}

/** Heads of the figures, with their units. */
export function rowHeads(
	one: Case | undefined,
	scale: Scale
): Record<FigureName, { label: string; unit: string }> {
	const unit = (reading: Reading | undefined) => formatUnit(reading?.quantity?.quantity.unit);
	const plural = (text: string) => (text === 'year' ? 'years' : text);
	return {
		payback: { label: 'Payback', unit: plural(unit(one?.payback)) },
		discountedPayback: { label: 'discounted', unit: plural(unit(one?.discountedPayback)) },
		outlay: { label: 'Outlay', unit: scale.unit },
		npv: { label: 'NPV', unit: scale.unit },
		irr: { label: 'IRR', unit: `${unit(one?.irr)} a year` },
		annualValue: { label: 'Annual value', unit: scale.unit }
	};
}
