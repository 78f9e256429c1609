/** The two-input map: a result over a grid of values of two inputs. */
import { quantityOf } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';
import type { Outcome } from '$lib/engine/results';
import type { Workbook } from '$lib/workbook/schema';
import type { MapAxis, StudyOf } from '$lib/workbook/study-schema';
import { openFollowing, type Replanning } from './following';
import { verifyFirstDraw, type CheckFirst, type FirstDraw } from './first-draw';
import { oneResult } from './one-result';
import { answer, refuse, type Answer } from './problem';
import { columnsOf, orNull, type Told } from './told';

export type MapStudy = StudyOf<'map'>;

export interface MapResult {
	readonly kind: 'map';
	readonly quantity: string;
	readonly members: readonly string[];
	readonly unit: string;
	/** The inputs' values, in their own units or as factors or amounts, by their modes. */
	readonly across: readonly number[];
	readonly down: readonly number[];
	/** Row by row: the value for down[r], across[c] stands at r × across.length + c. */
	readonly values: Float64Array;
	readonly states: Uint8Array;
	/** The result as it stands, and where the two inputs stand; NaN where a place has several values. */
	readonly base: Outcome;
	readonly today: { readonly across: number; readonly down: number };
	/** Null until the second engine has looked at the first draw. */
	readonly check: FirstDraw | null;
}

export function runMap(
	workbook: Workbook,
	study: MapStudy,
	plan?: Plan,
	checkFirst: CheckFirst = verifyFirstDraw,
	replanning?: Replanning
): Answer<MapResult> {
	for (const axis of [study.across, study.down])
		if (!(Number.isFinite(axis.from) && Number.isFinite(axis.to) && axis.from < axis.to))
			return refuse(
				'bad-range',
				`The range of ${axis.label ?? axis.quantity} goes from ${axis.from} to ${axis.to}. Enter a start below its end.`,
				axis.quantity
			);
	const opened = openFollowing(
		{
			workbook,
			plan,
			scenario: study.scenario,
			vary: [study.across, study.down],
			ask: [{ quantity: study.quantity, members: study.members }]
		},
		study,
		replanning
	);
	if (!opened.ok) return opened;
	const columns = opened.value;
	const one = oneResult(columns, study.quantity);
	if (!one.ok) return one;
	const across = stepsOf(study.across);
	const down = stepsOf(study.down);
	const draws = [
		Float64Array.from(down.flatMap(() => across)),
		Float64Array.from(down.flatMap((y) => across.map(() => y)))
	];
	const check = checkFirst(columns, draws);
	if (!check.ok) return check;
	const { values, states } = columns.run(draws);
	const today = [study.across, study.down].map(({ mode }, i) => {
		const { base } = columns.inputs[i]!;
		if (mode !== 'set') return mode === 'scale' ? 1 : 0;
		return base.length === 1 ? base[0]!.value : NaN;
	});
	return answer({
		kind: 'map',
		quantity: study.quantity,
		members: one.value.members,
		unit: quantityOf(columns.plan.layout, one.value.cell)?.quantity.unit ?? '1',
		across,
		down,
		values: values[0]!,
		states: states[0]!,
		base: one.value.base,
		today: { across: today[0]!, down: today[1]! },
		check: check.value
	});
}

const stepsOf = ({ from, to, steps }: MapAxis): number[] =>
	Array.from({ length: steps }, (_, i) =>
		i === steps - 1 ? to : from + ((to - from) * i) / (steps - 1)
	);

/** The values of one row, from left to right. */
const rowOf = ({ across, values }: MapResult, row: number): number[] =>
	across.map((_, column) => values[row * across.length + column] ?? NaN);

export const mapTold: Told<MapStudy, MapResult> = {
	text: (_study, result, { name, unit }) =>
		[
			`${name}${unit && `,${unit}`}\n`,
			columnsOf([
				['', ...result.across],
				...result.down.map((down, row) => [down, ...rowOf(result, row)])
			])
		].join(''),
	data: (_study, result) => ({
		across: result.across,
		down: result.down,
		values: result.down.map((_, row) => rowOf(result, row).map(orNull))
	})
};
