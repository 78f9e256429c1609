/**
 * Break-even: the value of an input at which a result meets a target. The range is walked in equal steps first, so
 * that none, several and gaps are seen; then each change of sign is closed in on.
 */
import { quantityOf } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';
import type { Outcome } from '$lib/engine/results';
import { NO_ANSWER, OK } from '$lib/engine/state';
import { reasonText } from '$lib/engine/wording';
import type { Workbook } from '$lib/workbook/schema';
import type { StudyOf } from '$lib/workbook/study-schema';
import type { Columns } from './columns/columns';
import { openFollowing, type Replanning } from './following';
import { verifyFirstDraw, type CheckFirst, type FirstDraw } from './first-draw';
import { oneResult } from './one-result';
import { answer, refuse, type Answer } from './problem';
import { nearestToZero, rootBetween } from './root-finder';
import { figure, orNull, outcomeOrNull, type Told } from './told';

export type BreakEvenStudy = StudyOf<'break_even'>;

export interface CurvePoint extends Outcome {
	/** The input: a value, a factor or an amount, as the study's mode says. */
	readonly input: number;
}

export interface Crossing {
	readonly kind: 'crosses' | 'touches' | 'jumps' | 'stretch';
	readonly input: number;
	/** The end of a stretch over which the target is met throughout; else `input` again. */
	readonly to: number;
}

export interface BreakEvenResult {
	readonly kind: 'break_even';
	readonly quantity: string;
	readonly members: readonly string[];
	readonly unit: string;
	readonly target: number;
	readonly input: BreakEvenStudy['input'];
	/** What stands in the input, and the result with it, in the scenario as it is. */
	readonly today: CurvePoint;
	readonly curve: readonly CurvePoint[];
	/** Ascending. A jump passes the target without meeting it. */
	readonly crossings: readonly Crossing[];
	/** Where the result has no value, from which point of the walk to which, and why in the first of them. */
	readonly without: {
		readonly spans: readonly { readonly from: number; readonly to: number }[];
		readonly reason: string;
	} | null;
	/** The value that the result keeps over the whole range; null where it moves. */
	readonly steady: number | null;
	readonly sentence: string;
	/** Null until the second engine has looked at the first draw. */
	readonly check: FirstDraw | null;
}

/** Points of the walk: two crossings nearer than a step of it are not told apart. */
const POINTS = 401;
/** Where every point is planned anew, which takes a thousand times as long. */
const POINTS_PLANNED = 41;
/** Of the range: how near a crossing is closed in on where every step to it is planned anew. */
const WITHIN_PLANNED = 1e-10;
/** Of the higher side: what is not lower beside it is a ripple, as each change of a plan leaves one. */
const RIPPLE = 0.9;
/** In place of "no answer here": on a curve that has its answer, "here" is one stretch of it. */
const ASKS_FOR_NOTHING = 'What its formula asks for does not exist there.';

export function runBreakEven(
	workbook: Workbook,
	study: BreakEvenStudy,
	plan?: Plan,
	checkFirst: CheckFirst = verifyFirstDraw,
	replanning?: Replanning
): Answer<BreakEvenResult> {
	const { input, target } = study;
	if (!(Number.isFinite(input.from) && Number.isFinite(input.to) && input.from < input.to))
		return refuse(
			'bad-range',
			`The range of ${input.label ?? input.quantity} goes from ${input.from} to ${input.to}. Enter a start below its end.`,
			input.quantity
		);
	const opened = openFollowing(
		{
			workbook,
			plan,
			scenario: study.scenario,
			vary: [input],
			ask: [{ quantity: study.quantity, members: study.members }]
		},
		study,
		replanning
	);
	if (!opened.ok) return opened;
	const columns = opened.value;
	const one = oneResult(columns, study.quantity);
	if (!one.ok) return one;
	const points = columns.following ? POINTS_PLANNED : POINTS;
	const inputs = Float64Array.from(
		{ length: points },
		(_, i) => input.from + ((input.to - input.from) * i) / (points - 1)
	);
	const check = checkFirst(columns, [inputs]);
	if (!check.ok) return check;
	const { values, states } = columns.run([inputs]);
	const curve = [...inputs].map((x, i): CurvePoint => ({
		input: x,
		value: values[0]![i]!,
		state: states[0]![i]!
	}));
	const crossings = crossingsOf(columns, curve, target);
	const unit = quantityOf(columns.plan.layout, one.value.cell)?.quantity.unit ?? '1';
	const steady = steadyOf(curve);
	return answer({
		kind: 'break_even',
		quantity: study.quantity,
		members: one.value.members,
		unit,
		target,
		input,
		today: { input: todayOf(columns, study), ...one.value.base },
		curve,
		crossings,
		without: withoutValue(curve),
		steady,
		sentence: sentenceOf(crossings, study, steady, unit),
		check: check.value
	});
}

/** The input as it stands, in the terms of the study's mode. */
function todayOf(columns: Columns, { input: { mode } }: BreakEvenStudy): number {
	if (mode === 'scale') return 1;
	return mode === 'add' ? 0 : (columns.inputs[0]!.base[0]?.value ?? NaN);
}

export function crossingsOf(
	columns: Columns,
	curve: readonly CurvePoint[],
	target: number
): Crossing[] {
	const f = (x: number) => columns.run([[x]]).values[0]![0]! - target;
	const off = curve.map(({ value, state }) => (state === OK ? value - target : NaN));
	const size = Math.max(Math.abs(target), ...off.filter(Number.isFinite).map(Math.abs));
	const within = columns.following ? WITHIN_PLANNED * (curve.at(-1)!.input - curve[0]!.input) : 0;
	const isZero = (rest: number) => Math.abs(rest) <= 1e-9 * size;
	const found: Crossing[] = [];
	for (let i = 0; i < curve.length; i++) {
		if (off[i] === 0) {
			let end = i;
			while (off[end + 1] === 0) end++;
			const [input, to] = [curve[i]!.input, curve[end]!.input];
			found.push({ kind: end > i ? 'stretch' : kindAt(off, i), input, to });
			i = end;
			continue;
		}
		const [here, next] = [off[i]!, off[i + 1] ?? NaN];
		if (here * next < 0) {
			const root = rootBetween(f, curve[i]!.input, curve[i + 1]!.input, here, next, within);
			if (root)
				found.push({ kind: isZero(root.rest) ? 'crosses' : 'jumps', input: root.x, to: root.x });
		} else if (isDip(off, i)) {
			const ends = Math.min(Math.abs(off[i - 1]!), Math.abs(off[i + 1]!));
			const root = nearestToZero(f, curve[i - 1]!.input, curve[i + 1]!.input, ends);
			if (root && Math.abs(root.rest) <= 1e-12 * size)
				found.push({ kind: 'touches', input: root.x, to: root.x });
		}
	}
	return found;
}

/** A zero at a point of the walk: whether the curve goes through it or comes back. */
const kindAt = (off: readonly number[], i: number): Crossing['kind'] =>
	(off[i - 1] ?? NaN) * (off[i + 1] ?? NaN) > 0 ? 'touches' : 'crosses';

/** Whether the curve comes nearer to the target at a point than on either side, without passing it. */
function isDip(off: readonly number[], i: number): boolean {
	const [before, here, after] = [off[i - 1] ?? NaN, off[i]!, off[i + 1] ?? NaN];
	return (
		before * here > 0 &&
		here * after > 0 &&
		Math.abs(here) <= Math.abs(before) &&
		Math.abs(here) <= Math.abs(after) &&
		Math.abs(here) < RIPPLE * Math.max(Math.abs(before), Math.abs(after))
	);
}

function withoutValue(curve: readonly CurvePoint[]): BreakEvenResult['without'] {
	const first = curve.find(({ state }) => state !== OK);
	if (!first) return null;
	const spans: { from: number; to: number }[] = [];
	curve.forEach(({ input, state }, i) => {
		if (state === OK) return;
		const last = spans.at(-1);
		if (last && curve[i - 1]!.state !== OK) last.to = input;
		else spans.push({ from: input, to: input });
	});
	return { spans, reason: first.state === NO_ANSWER ? ASKS_FOR_NOTHING : reasonText(first.state) };
}

/** Rounding apart, one value wherever there is one. */
function steadyOf(curve: readonly CurvePoint[]): number | null {
	const values = curve.filter(({ state }) => state === OK).map(({ value }) => value);
	const [first] = values;
	if (first === undefined) return null;
	const [low, high] = [Math.min(...values), Math.max(...values)];
	return high - low <= 1e-9 * Math.max(Math.abs(low), Math.abs(high)) ? first : null;
}

function sentenceOf(
	crossings: readonly Crossing[],
	study: BreakEvenStudy,
	steady: number | null,
	unit: string
): string {
	const { input } = study;
	const name = input.label ?? input.quantity;
	const range = `between ${input.from} and ${input.to}`;
	const met = crossings.filter(({ kind }) => kind !== 'jumps');
	const text = (x: number) => String(Number(x.toPrecision(6)));
	const first = met[0];
	if (!first && steady !== null)
		return `The result stays at ${text(steady)}${unit === '1' ? '' : ` ${unit}`} whatever ${name} is ${range}: choose an input that it depends on.`;
	if (!first)
		return crossings.length > 0
			? `The result passes the target at ${name} ${text(crossings[0]!.input)}, but jumps over it and never meets it ${range}.`
			: `The result does not meet the target for any ${name} ${range}.`;
	if (met.length > 1)
		return `The result meets the target at ${met.length} values of ${name} ${range}: ${met.map(({ input: x }) => text(x)).join(', ')}.`;
	if (first.kind === 'stretch')
		return `The result meets the target for every ${name} from ${text(first.input)} to ${text(first.to)}.`;
	return `The result meets the target at ${name} ${text(first.input)}, and nowhere else ${range}.`;
}

export const breakEvenTold: Told<BreakEvenStudy, BreakEvenResult> = {
	text: (_study, { target, sentence, today }, { name, unit }) =>
		[
			`${name}, target ${figure(target)}${unit}\n`,
			`${sentence}\n`,
			`As it stands: ${figure(today.value)}${unit} at ${figure(today.input)}\n`
		].join(''),
	data: (_study, { target, input, crossings, sentence, today }) => ({
		...{ target, input: input.quantity },
		as_it_stands: { input: orNull(today.input), value: outcomeOrNull(today) },
		crossings: crossings.map(({ kind, input, to }) => ({ kind, input, to })),
		sentence
	})
};
