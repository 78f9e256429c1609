/**
 * What an edit moves: the headline results before and after it, and of these the few that moved most. Information for
 * whoever edits, no alarm: a slip of a digit shows here at once, and so does the effect that was wanted.
 */
import { scenarioTitle } from '$lib/workbook/lookup';
import type { Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { headlinesOf } from '$lib/workbook/headlines';
import type { Workbook } from '$lib/workbook/schema';
import { isClose } from '../cells';
import { cut, formatNumber, formatRelative } from '../format';
import { midSentence, years } from '../figure/words';
import { figureOf, type Figure } from '../show';
import { texts } from './texts';

/** As many are told. */
export const MOST_MOVES = 3;

/** One headline result in one scenario. */
export interface Reading {
	readonly quantity: string;
	readonly label: string;
	readonly scenario: string;
	readonly value: number | null;
	readonly text: string;
	readonly unit: string;
}

export interface Move {
	readonly before: Reading;
	readonly after: Reading;
	/** By how much of what it was, at most 1: beyond that, and where a number comes or goes, the workbook's order says more. */
	readonly size: number;
}

interface ReadingOf {
	readonly workbook: Workbook;
	readonly layout: Layout;
	readonly results: ReadonlyMap<string, Results>;
	readonly subject: string | null;
	readonly locale: string;
}

/** Every headline result that is a single number, in every scenario that is computed. */
export function readHeadlines(of: ReadingOf): Reading[] {
	const { workbook, layout, subject, locale } = of;
	const names = headlinesOf(workbook).filter((name) => isNumber(layout, name));
	return workbook.scenarios.flatMap(({ id }) => {
		const results = of.results.get(id);
		if (!results) return [];
		return names.map((quantity): Reading => {
			const figure = figureOf({ layout, results, subject, locale }, quantity);
			return {
				quantity,
				label: figure.quantity?.quantity.label ?? quantity,
				scenario: id,
				value: valueOf(figure, results),
				text: figure.text,
				unit: figure.unit
			};
		});
	});
}

/** What rests on a plan that does not answer the edit is lost to it, whatever still stands there. */
export const withoutPlans = (
	readings: readonly Reading[],
	unplanned: ReadonlySet<string>
): Reading[] =>
	readings.map((reading) =>
		unplanned.has(reading.scenario) ? { ...reading, value: null, text: texts.noPlan } : reading
	);

/** Whether it is a number that is computed: what somebody enters is no result. */
export function isNumber(layout: Layout, name: string): boolean {
	const quantity = layout.byName.get(name)?.quantity;
	return quantity?.formula !== undefined && (quantity.type ?? 'number') === 'number';
}

function valueOf({ cell, state }: Figure, results: Results): number | null {
	if (cell === null || state !== 'value' || results.states[cell] !== OK) return null;
	return results.values[cell] ?? null;
}

/** The headline results that moved, each in the first of the scenarios in which it did, the largest move first. */
export function movesBetween(
	before: readonly Reading[],
	after: readonly Reading[],
	scenarios: readonly string[],
	locale: string
): Move[] {
	const was = new Map(before.map((reading) => [key(reading), reading]));
	const now = new Map(after.map((reading) => [key(reading), reading]));
	const found: Move[] = [];
	for (const quantity of new Set(after.map((reading) => reading.quantity)))
		for (const scenario of scenarios) {
			const at = key({ scenario, quantity });
			const [old, reading] = [was.get(at), now.get(at)];
			const size = old && reading ? sizeOf(old.value, reading.value) : 0;
			const told = old && reading && size > 0 ? toldApart(old, reading, locale) : null;
			if (!told) continue;
			found.push({ ...told, size });
			break;
		}
	return found.sort((a, b) => b.size - a.size);
}

const key = ({ scenario, quantity }: Pick<Reading, 'scenario' | 'quantity'>) =>
	`${scenario} ${quantity}`;

function sizeOf(before: number | null, after: number | null): number {
	if (before === null || after === null) return before === after ? 0 : 1;
	if (isClose(before, after)) return 0;
	return before === 0 ? 1 : Math.min(Math.abs(after / before - 1), 1);
}

/** As many digits more than a figure bears are told of a move that would not show in its own. */
const MORE_DIGITS = 3;

/** Both in as many digits as tell them apart; null where so many more would not. */
function toldApart(before: Reading, after: Reading, locale: string): Omit<Move, 'size'> | null {
	const [one, other] = [before.value, after.value];
	const isPlain = ({ text, value }: Reading) =>
		value !== null && formatNumber(value, decimalsOf(text, locale), locale) === text;
	if (one === null || other === null || !isPlain(before) || !isPlain(after))
		return before.text === after.text ? null : { before, after };
	const decimals = Math.max(decimalsOf(before.text, locale), decimalsOf(after.text, locale));
	const text = (value: number, more: number) => formatNumber(value, decimals + more, locale);
	for (let more = 0; more <= MORE_DIGITS; more++) {
		const [from, to] = [text(one, more), text(other, more)];
		if (from === to) continue;
		if (more === 0) return { before, after };
		return { before: { ...before, text: from }, after: { ...after, text: to } };
	}
	return null;
}

const decimalsOf = (text: string, locale: string) =>
	Math.max(cut(text, locale).fraction.length - 1, 0);

/** "Factory cost per metre 0.2970 to 0.3017 EUR/m, +1.6 %" */
export function moveWords(
	{ before, after }: Move,
	scenario: string | null,
	locale: string
): string {
	const where = scenario === null ? '' : ` (${scenario})`;
	const unit = after.unit || before.unit;
	const label = `${after.label}${where}`;
	if (after.value === null)
		return `${label} ${withUnit(before.text, unit)} to ${midSentence(after.text)}`;
	const relative = before.value === null ? '' : formatRelative(after.value, before.value, locale);
	const words = `${label} ${midSentence(before.text)} to ${withUnit(after.text, unit)}`;
	return [words, relative].filter(Boolean).join(', ');
}

const withUnit = (text: string, unit: string) => (unit === '' ? text : years(text, unit));

/** The few that moved most in words, those of the base first, and how many more there are. */
export function tellMoves(
	before: readonly Reading[],
	after: readonly Reading[],
	{ workbook, baseId, inHand, locale }: ToldOf
): { readonly words: string[]; readonly more: number } {
	const order = new Set([baseId, inHand, ...workbook.scenarios.map(({ id }) => id)]);
	const title = (id: string) => (id === baseId ? null : scenarioTitle(workbook, id));
	const moves = movesBetween(before, after, [...order], locale);
	const words = moves
		.slice(0, MOST_MOVES)
		.map((move) => moveWords(move, title(move.after.scenario), locale));
	return { words, more: moves.length - words.length };
}

interface ToldOf {
	readonly workbook: Workbook;
	readonly baseId: string;
	/** The scenario in hand comes after the base. */
	readonly inHand: string;
	readonly locale: string;
}
