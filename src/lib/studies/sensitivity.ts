/**
 * Sensitivity: every input swung by itself, ranked by how far it moves the result; named cases that move several
 * at once; and elasticities, how many per cent the result moves for one per cent more of an input, and for one less.
 */
import { buildPlan } from '$lib/engine/planner/plan';
import { quantityOf } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';
import type { Outcome } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import type { Workbook } from '$lib/workbook/schema';
import type { Columns } from './columns/columns';
import { UNCHANGED } from './columns/input-writer';
import { openFollowing, type Replanning } from './following';
import { verifyFirstDraw, type CheckFirst, type FirstDraw } from './first-draw';
import { oneResult } from './one-result';
import { answer, refuse, type Answer } from './problem';
import { swingsOf, type LabelledSwing, type SensitivityStudy } from './sensitivity-inputs';
import { columnsOf, figure, orNull, outcomeOrNull, type Told } from './told';

export type { SensitivityStudy } from './sensitivity-inputs';

export interface SwingResult extends LabelledSwing {
	/** The result with the input at either end. */
	readonly atLow: Outcome;
	readonly atHigh: Outcome;
	/** How far apart the two are; where one end has no value, how far the other is from the result as it stands. */
	readonly reach: number;
	/** Per cent of the result for one per cent more of the input; null where either is zero or has no value. */
	readonly elasticity: number | null;
	/** The same for one per cent less: minus `elasticity` on a straight line, anything across a kink. */
	readonly elasticityLess: number | null;
}

export interface CaseResult {
	readonly label: string;
	readonly result: Outcome;
}

export interface SensitivityResult {
	readonly kind: 'sensitivity';
	readonly quantity: string;
	readonly members: readonly string[];
	readonly unit: string;
	readonly base: Outcome;
	/** Widest reach first. */
	readonly swings: readonly SwingResult[];
	/** Inputs that do not move the result at all. */
	readonly idle: readonly string[];
	readonly cases: readonly CaseResult[];
	/** Null until the second engine has looked at the first draw. */
	readonly check: FirstDraw | null;
}

/** Inputs swung at a time: four columns each. */
const BATCH = 64;
/** How far either way an elasticity is measured, each way by itself: their mean says nothing across a kink. */
const STEP = 0.01;

export function runSensitivity(
	workbook: Workbook,
	study: SensitivityStudy,
	plan: Plan = buildPlan(workbook),
	checkFirst: CheckFirst = verifyFirstDraw,
	replanning?: Replanning
): Answer<SensitivityResult> {
	const swings = swingsOf(plan, workbook, study);
	if (!swings.ok) return swings;
	const cases = study.cases ?? [];
	const moves = cases.flatMap((case_) => case_.moves);
	if (swings.value.length + moves.length === 0)
		return refuse(
			'nothing-asked',
			'The study swings no input. Choose some, or swing every number by a percentage.'
		);
	// Each swing twice: by its own range, and as a factor for its elasticity.
	const factors = swings.value.map(({ quantity, members }) => ({
		quantity,
		members,
		mode: 'scale' as const,
		lenient: true
	}));
	const opened = openFollowing(
		{
			workbook,
			plan,
			scenario: study.scenario,
			vary: [...swings.value, ...factors, ...moves],
			ask: [{ quantity: study.quantity, members: study.members }]
		},
		study,
		replanning
	);
	if (!opened.ok) return opened;
	const columns = opened.value;
	const one = oneResult(columns, study.quantity);
	if (!one.ok) return one;
	const { base } = one.value;
	const sheet = new Sheet(columns, moves.length);
	const found = swings.value.map((swing, i) => swung(sheet, swing, i, swings.value.length, base));
	const first = 2 * swings.value.length;
	let next = first;
	const results = cases.map(({ label, moves: own }) => {
		const set = own.map(({ value }): [number, number] => [next++, value]);
		return { label, result: sheet.add(set) };
	});
	const computed = sheet.run(checkFirst);
	if (!computed.ok) return computed;
	const reached = found.map((make) => make());
	return answer({
		kind: 'sensitivity',
		quantity: study.quantity,
		members: one.value.members,
		unit: quantityOf(plan.layout, one.value.cell)?.quantity.unit ?? '1',
		base,
		swings: reached.filter((swingResult) => !isIdle(swingResult)).sort((a, b) => b.reach - a.reach),
		idle: reached.filter(isIdle).map(({ label }) => label),
		cases: results.map(({ label, result }) => ({ label, result: result() })),
		check: computed.value
	});
}

function swung(
	sheet: Sheet,
	swing: LabelledSwing,
	place: number,
	swings: number,
	base: Outcome
): () => SwingResult {
	const [low, high] = [sheet.add([[place, swing.low]]), sheet.add([[place, swing.high]])];
	const factor = swings + place;
	const [less, more] = [sheet.add([[factor, 1 - STEP]]), sheet.add([[factor, 1 + STEP]])];
	return () => {
		const [atLow, atHigh] = [low(), high()];
		return {
			...swing,
			atLow,
			atHigh,
			reach: reachOf(atLow, atHigh, base),
			elasticity: elasticityOf(base, more(), sheet.columns.inputs[factor]!.base),
			elasticityLess: elasticityOf(base, less(), sheet.columns.inputs[factor]!.base)
		};
	};
}

const isIdle = ({ atLow, atHigh, reach }: SwingResult) =>
	reach === 0 && atLow.state === OK && atHigh.state === OK;

function reachOf(atLow: Outcome, atHigh: Outcome, base: Outcome): number {
	const there = [atLow, atHigh].filter(({ state }) => state === OK);
	if (there.length < 2 && base.state === OK) there.push(base);
	const values = there.map(({ value }) => value);
	return values.length === 0 ? 0 : Math.max(...values) - Math.min(...values);
}

function elasticityOf(base: Outcome, stepped: Outcome, inputs: readonly Outcome[]): number | null {
	if ([base, stepped].some(({ state }) => state !== OK) || base.value === 0) return null;
	if (inputs.every(({ value }) => value === 0)) return null;
	return (stepped.value - base.value) / (STEP * base.value);
}

/** Columns in which few inputs move, gathered first and run together. */
class Sheet {
	readonly #rows: (readonly (readonly [input: number, value: number])[])[] = [];
	readonly #values: Outcome[] = [];

	constructor(
		readonly columns: Columns,
		readonly cases: number
	) {}

	/** The draws of the inputs that move; gives the result once all has run. */
	add(moved: readonly (readonly [input: number, value: number])[]): () => Outcome {
		const row = this.#rows.push(moved) - 1;
		return () => this.#values[row]!;
	}

	/** All inputs but those of a batch share one list of draws that leave them as they stand. */
	run(checkFirst: CheckFirst): Answer<FirstDraw | null> {
		let check: Answer<FirstDraw | null> | null = null;
		const size = 4 * BATCH;
		const still = new Float64Array(size).fill(UNCHANGED);
		for (let from = 0; from < this.#rows.length; from += size) {
			const rows = this.#rows.slice(from, from + size);
			const draws: Float64Array[] = this.columns.inputs.map(() => still);
			rows.forEach((moved, column) => {
				for (const [input, value] of moved) {
					if (draws[input] === still) draws[input] = still.slice();
					draws[input]![column] = value;
				}
			});
			check ??= checkFirst(this.columns, draws);
			if (!check.ok) return check;
			const { values, states } = this.columns.run(draws, 0, rows.length);
			rows.forEach((_, i) => this.#values.push({ value: values[0]![i]!, state: states[0]![i]! }));
		}
		return check!;
	}
}

export const sensitivityTold: Told<SensitivityStudy, SensitivityResult> = {
	text(_study, { base, swings, cases, idle }, { name, unit }) {
		const value = ({ value, state }: Outcome) => (state === OK ? value : NaN);
		return [
			`${name}: ${figure(value(base))}${unit} as it stands\n`,
			columnsOf([
				['', 'from', 'to', 'at from', 'at to', 'reach'],
				...swings.map((swing) => [
					...[swing.label, swing.low, swing.high],
					...[value(swing.atLow), value(swing.atHigh), swing.reach]
				])
			]),
			cases.length > 0 ? columnsOf(cases.map(({ label, result }) => [label, value(result)])) : '',
			idle.length > 0 ? `Without any effect: ${idle.join(', ')}.\n` : ''
		].join('');
	},
	data: (_study, { base, swings, cases, idle }) => ({
		base: outcomeOrNull(base),
		swings: swings.map(
			({ label, mode, low, high, atLow, atHigh, reach, elasticity, elasticityLess }) => ({
				...{ label, mode, low, high },
				...{ at_low: outcomeOrNull(atLow), at_high: outcomeOrNull(atHigh) },
				...{ reach: orNull(reach), elasticity, elasticity_less: elasticityLess }
			})
		),
		cases: cases.map(({ label, result }) => ({ label, value: outcomeOrNull(result) })),
		without_effect: idle
	})
};
