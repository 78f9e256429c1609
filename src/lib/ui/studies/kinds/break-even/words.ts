/** A break-even in words, its curve in pixels, its table. */
import type { PlainTable } from '$lib/exchange/csv/write';
import type { BreakEvenResult } from '$lib/studies/break-even';
import { OK } from '$lib/engine/state';
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { StudyOf } from '$lib/workbook/study-schema';
import { axisOf } from '../../../figure/axis';
import type { KindWords } from '../../kind-words';
import { inSentence, nameOf, titleOf } from '../../names';
import { movedWhole, rangeText } from '../../range-words';
import type { Shown } from '../../shown';

export const kind: KindWords<'break_even'> = {
	name: 'Break-even',
	asks: 'At which value of an input a result meets a target',
	atEach: 'at every value that is tried',
	points: 'values',
	fresh: ({ selected, ranges: [input] }) => ({ scenario: selected, input, target: 0 }),
	figures: ({ curve }, { target }) => [...curve.map(({ value }) => value), target],
	said(workbook, study, result, shown) {
		const title = breakEvenTitle(workbook, study, result, shown);
		return {
			...{ title, line: breakEvenLine(workbook, study, shown) },
			table: breakEvenTable(workbook, study, result),
			summary: breakEvenSummary(title, breakEvenNotes(workbook, study, result, shown))
		};
	},
	headline({ input, crossings }, _unit, unitOf) {
		const unit = input.mode === 'scale' ? undefined : unitOf(input.quantity);
		const met = crossings.find(({ kind }) => kind !== 'jumps');
		return [{ label: 'Met at', value: met?.input ?? NaN, unit }];
	}
};

type BreakEven = StudyOf<'break_even'>;

export const inputName = (workbook: Workbook, { input }: BreakEven): string =>
	input.label ?? nameOf(workbook, input);

export function breakEvenTitle(
	workbook: Workbook,
	study: BreakEven,
	result: BreakEvenResult,
	shown: Shown
): string {
	const name = nameOf(workbook, study);
	const input = inSentence(inputName(workbook, study));
	const at = (value: number) => movedWhole(workbook, study.input, value, shown.locale);
	const target = shown.whole(study.target);
	const met = result.crossings.filter(({ kind }) => kind !== 'jumps');
	const [first] = met;
	const range = rangeText(workbook, study.input, study.input.from, study.input.to, shown.locale);
	if (!first && result.steady !== null)
		return `${name} stays at ${shown.whole(result.steady)} whatever ${input} is from ${range}: choose an input that it depends on`;
	if (!first)
		return result.crossings.length > 0
			? `${name} jumps past ${target} at ${input} ${at(result.crossings[0]!.input)} and never meets it`
			: `No ${input} from ${range} brings ${inSentence(name)} to ${target}`;
	if (met.length > 1)
		return `${name} meets ${target} at ${met.length} values: ${input} ${met.map(({ input: x }) => at(x)).join(', ')}`;
	if (first.kind === 'stretch')
		return `${name} is ${target} for every ${input} from ${at(first.input)} to ${at(first.to)}`;
	return `${name} meets ${target} at ${input} ${at(first.input)}`;
}

export const breakEvenLine = (workbook: Workbook, study: BreakEven, shown: Shown): string =>
	`${nameOf(workbook, study)} of ${titleOf(workbook, study.scenario)}${shown.unit ? `, ${shown.unit}` : ''}, over ${inSentence(inputName(workbook, study))} from ${rangeText(workbook, study.input, study.input.from, study.input.to, shown.locale)}`;

export function breakEvenNotes(
	workbook: Workbook,
	study: BreakEven,
	result: BreakEvenResult,
	shown: Shown
): string[] {
	const notes = [
		`As it stands: ${shown.whole(result.today.state === OK ? result.today.value : NaN)} at ${inSentence(inputName(workbook, study))} ${Number.isFinite(result.today.input) ? movedWhole(workbook, study.input, result.today.input, shown.locale) : 'of several values'}.`
	];
	if (result.without) notes.push(gapWords(workbook, study, result.without, shown.locale));
	return notes;
}

const MOST_GAPS = 3;

/** Where in the range the result has no value, and why. */
function gapWords(
	workbook: Workbook,
	study: BreakEven,
	{ spans, reason }: NonNullable<BreakEvenResult['without']>,
	locale: string
): string {
	const input = inSentence(inputName(workbook, study));
	const parts = spans
		.slice(0, MOST_GAPS)
		.map(({ from, to }) =>
			from === to
				? `at ${movedWhole(workbook, study.input, from, locale)}`
				: `from ${rangeText(workbook, study.input, from, to, locale)}`
		);
	const more = spans.length - parts.length;
	const where = `${parts.join(', ')}${more > 0 ? ` and in ${more} more places` : ''}`;
	return `With ${input} ${where} the result has no value: the curve has a gap there. ${reason}`;
}

/** The finding and the notes, as who cannot see the curve hears them. */
export const breakEvenSummary = (title: string, notes: readonly string[]): string =>
	[`${title}.`, ...notes].join(' ');

export interface Curve {
	/** Pieces between gaps. */
	readonly paths: readonly string[];
	readonly target: number;
	readonly crossings: readonly { readonly x: number; readonly y: number; readonly text: string }[];
	readonly today: { readonly x: number; readonly y: number } | null;
	readonly xTicks: readonly { readonly x: number; readonly value: number }[];
	readonly yTicks: readonly { readonly y: number; readonly value: number }[];
	readonly left: number;
	readonly floor: number;
}

const LEFT = 72;
const TOP = 14;
const FLOOR = 34;

export function curveOf(
	workbook: Workbook,
	study: BreakEven,
	result: BreakEvenResult,
	shown: Shown,
	frame: { readonly width: number; readonly height: number }
): Curve {
	const { from, to } = study.input;
	const values = result.curve.filter(({ state }) => state === OK).map(({ value }) => value);
	const all = [...values, study.target];
	const [low, high] = [Math.min(...all), Math.max(...all)];
	const spare = (high - low || Math.abs(high) || 1) * 0.06;
	const [bottom, top] = [low - spare, high + spare];
	const floor = frame.height - FLOOR;
	const x = (input: number) => LEFT + ((input - from) / (to - from)) * (frame.width - LEFT - 16);
	const y = (value: number) => floor - ((value - bottom) / (top - bottom)) * (floor - TOP);
	const paths: string[] = [];
	let open = false;
	for (const point of result.curve) {
		if (point.state !== OK) {
			open = false;
			continue;
		}
		const step = `${tidy(x(point.input))} ${tidy(y(point.value))}`;
		if (open) paths[paths.length - 1] += `L${step}`;
		else paths.push(`M${step}`);
		open = true;
	}
	const isFactor = study.input.mode === 'scale';
	const shift = (value: number) => (isFactor ? (value - 1) * 100 : value);
	const back = (value: number) => (isFactor ? 1 + value / 100 : value);
	const across = axisOf(shift(from), shift(to), 8);
	const up = axisOf(bottom * shown.factor, top * shown.factor, 6);
	const { today } = result;
	const inside = today.input >= from && today.input <= to && today.state === OK;
	return {
		paths,
		target: y(study.target),
		crossings: result.crossings.map(({ input }) => ({
			x: x(input),
			y: y(study.target),
			text: movedWhole(workbook, study.input, input, shown.locale)
		})),
		today: inside ? { x: x(today.input), y: y(today.value) } : null,
		xTicks: across.ticks.map((value) => ({ value, x: x(back(value)) })),
		yTicks: up.ticks.map((value) => ({ value, y: y(value / shown.factor) })),
		...{ left: LEFT, floor }
	};
}

const tidy = (value: number) => Math.round(value * 10) / 10;

export function breakEvenTable(
	workbook: Workbook,
	study: BreakEven,
	result: BreakEvenResult
): PlainTable {
	const unit = findQuantity(workbook, study.quantity)?.unit ?? '1';
	const name = `${nameOf(workbook, study)} [${unit}]`;
	return {
		caption: `${name} over ${inputName(workbook, study)}`,
		columns: [`${inputName(workbook, study)} (${study.input.mode})`, name],
		rows: result.curve
			.filter((_, i) => i % 10 === 0)
			.map(({ input, value, state }) => [input, state === OK ? value : null])
	};
}
