/**
 * From a total in one scenario to the same total in another, step by step: each part moves it up or down.
 * What the parts leave unexplained is a step of its own, so that the steps always add up.
 */
import { scenarioTitle } from '$lib/workbook/lookup';
import type { PlainTable } from '$lib/exchange/csv/write';
import type { Picture } from '$lib/workbook/schema';
import { formatDifference, formatNumber } from '../../format';
import { sourceOf, type Open } from '../../figure/open';
import { read, type Reading } from '../../figure/read';
import { scaleFor, type Scale } from '../../figure/scale';
import { midSentence } from '../../figure/words';

export type BridgePicture = Extract<Picture, { kind: 'bridge' }>;

export interface Step {
	readonly name: string;
	readonly label: string;
	/** In the total's unit; more is up. */
	readonly move: number;
	/** Where the bar begins and ends. */
	readonly from: number;
	readonly to: number;
}

export interface Bridge {
	readonly from: Reading;
	readonly to: Reading;
	readonly label: string;
	readonly steps: readonly Step[];
	/** Parts that do not move it, in words. */
	readonly still: readonly string[];
	/** The first part or total without a value; null where all can be drawn. */
	readonly missing: Reading | null;
	readonly money: Scale;
}

/** Below this share of the largest figure, a move is rounding. */
const NOTHING = 1e-9;

export function bridgeOf(open: Open, picture: BridgePicture, left: string, right: string): Bridge {
	const [one, other] = [sourceOf(open, left), sourceOf(open, right)];
	const parts = [
		...picture.added.map((name) => ({ name, sign: 1 })),
		...picture.taken_off.map((name) => ({ name, sign: -1 }))
	].map((part) => ({
		...part,
		before: read(one, part.name),
		after: read(other, part.name)
	}));
	const [from, to] = [read(one, picture.total), read(other, picture.total)];
	const readings = [from, to, ...parts.flatMap(({ before, after }) => [before, after])];
	const missing = readings.find(({ kind }) => kind !== 'value') ?? null;
	const label = (name: string) => open.layout.byName.get(name)?.quantity.label ?? name;
	const unit = open.layout.byName.get(picture.total)?.quantity.unit;
	const about = { from, to, label: label(picture.total), missing };
	if (missing) return { ...about, steps: [], still: [], money: scaleFor(open.units, unit, 0) };

	const least = NOTHING * Math.max(...readings.map(({ value }) => Math.abs(value)));
	const moves = parts.map(({ name, sign, before, after }) => ({
		...{ name, label: label(name), move: sign * (after.value - before.value) }
	}));
	const explained = moves.reduce((sum, { move }) => sum + move, 0);
	const rest = to.value - from.value - explained;
	const moving = moves.filter(({ move }) => Math.abs(move) > least);
	if (Math.abs(rest) > 1e3 * least) moving.push({ name: '', label: 'Everything else', move: rest });
	let level = from.value;
	const steps = moving.map((step) => {
		const start = level;
		level += step.move;
		return { ...step, from: start, to: level };
	});
	return {
		...about,
		steps,
		still: moves.filter(({ move }) => Math.abs(move) <= least).map((move) => move.label),
		money: scaleFor(open.units, unit, Math.max(Math.abs(from.value), Math.abs(to.value)))
	};
}

/** From the lowest to the highest level, zero only where a level reaches it; never an empty range. */
export function bridgeRange({ from, to, steps }: Bridge): { low: number; high: number } {
	const levels = [from.value, to.value, ...steps.flatMap((step) => [step.from, step.to])];
	const [low, high] = [Math.min(...levels), Math.max(...levels)];
	const room = Math.max((high - low) * 0.05, Math.abs(high) * 1e-6, 1e-12);
	return { low: low - room, high: high + room };
}

const titleOf = (open: Open, id: string) => scenarioTitle(open.layout.workbook, id);

export function bridgeTitle(bridge: Bridge, open: Open, left: string, right: string): string {
	const { from, to, steps, money, label, missing } = bridge;
	if (missing) return `${label} cannot be compared yet`;
	const move = (to.value - from.value) * money.factor;
	const [one, other] = [titleOf(open, left), titleOf(open, right)];
	if (left === right || steps.length === 0) return `${label} is the same in ${one} and ${other}`;
	// What goes the other way is no reason for it.
	const along = steps.filter((step) => Math.sign(step.move) === Math.sign(to.value - from.value));
	const most = along.sort((a, b) => Math.abs(b.move) - Math.abs(a.move))[0];
	const word = move > 0 ? 'higher' : 'lower';
	const size = formatNumber(Math.abs(move), 0, open.locale);
	const by = most ? `, most by ${midSentence(most.label)}` : '';
	return `${label} is ${size} ${money.unit} ${word} in ${other} than in ${one}${by}`;
}

export const moveText = (move: number, money: Scale, locale: string) =>
	formatDifference(move * money.factor, 0, locale);

export function bridgeSummary(bridge: Bridge, open: Open, left: string, right: string): string {
	const { from, to, steps, money, label, missing, still } = bridge;
	if (missing) return `${label} cannot be drawn: ${missing.because || 'a value is missing'}.`;
	const figure = (value: number) => `${formatNumber(value * money.factor, 0, open.locale)}`;
	const each = steps.map((step) => `${step.label} ${moveText(step.move, money, open.locale)}`);
	const none = still.length > 0 ? ` Unchanged: ${still.join(', ')}.` : '';
	return `${label}, ${money.unit}: ${titleOf(open, left)} ${figure(from.value)}, ${[...each, `${titleOf(open, right)} ${figure(to.value)}`].join(', ')}.${none}`;
}

export function bridgeTable(bridge: Bridge, open: Open, left: string, right: string): PlainTable {
	const unit = open.layout.byName.get(bridge.from.quantity?.quantity.name ?? '')?.quantity.unit;
	return {
		caption: `${bridge.label}, ${titleOf(open, left)} to ${titleOf(open, right)}`,
		columns: ['Step', unit ?? ''],
		rows: [
			[titleOf(open, left), bridge.from.value],
			...bridge.steps.map((step) => [step.label, step.move] as const),
			[titleOf(open, right), bridge.to.value]
		]
	};
}
