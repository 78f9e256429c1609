/**
 * The risk study: draws of uncertain inputs, the results that they give, and what that says.
 *
 * In three steps, so that workers can share the middle one: prepare (what is drawn, what is computed), run
 * (any part of the draws, anywhere), finish (the figures of all of them together).
 */
import { quantityOf } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';
import { OK } from '$lib/engine/state';
import type { Workbook } from '$lib/workbook/schema';
import type { StudyOf } from '$lib/workbook/study-schema';
import { STUDY_LIMITS } from '$lib/workbook/study-shapes';
import type { Columns } from './columns/columns';
import { openFollowing, type Replanning } from './following';
import type { ColumnsOut } from './columns/result-reader';
import { distributionFault, quantileOf, type Quantile } from './random/distributions';
import { drivesOf } from './drivers';
import { faultOrigins, spreadOver } from './fault-origins';
import { ranksOf } from './ordering';
import { answer, refuse, type Answer } from './problem';
import { correlatedGroups, MOST_CORRELATED, type CorrelatedGroup } from './random/rank-correlation';
import type { RiskResult, RiskSummary } from './risk-result';
import { summaryOf } from './risk-summary';
import { layOutGroups, Sampling, type LaidOut } from './random/sampling';

export type RiskStudy = StudyOf<'risk'>;

export interface PreparedRisk {
	readonly study: RiskStudy;
	readonly draws: number;
	readonly seed: number;
	readonly columns: Columns;
	readonly quantiles: readonly Quantile[];
	readonly groups: readonly CorrelatedGroup[];
	readonly notices: readonly string[];
}

export interface RiskOptions {
	readonly plan?: Plan | undefined;
	/** Instead of the study's own. */
	readonly draws?: number | undefined;
	readonly seed?: number | undefined;
	readonly replanning?: Replanning | undefined;
}

export function prepareRisk(
	workbook: Workbook,
	study: RiskStudy,
	options: RiskOptions = {}
): Answer<PreparedRisk> {
	const draws = options.draws ?? study.draws;
	const seed = options.seed ?? study.seed;
	if (!(Number.isInteger(draws) && draws >= 1 && draws <= STUDY_LIMITS.draws))
		return refuse(
			'bad-count',
			`The study draws ${draws} times. Enter a whole number from 1 to ${STUDY_LIMITS.draws.toLocaleString('en')}.`
		);
	for (const { label, quantity, distribution } of study.inputs) {
		const fault = distributionFault(distribution);
		if (fault) return refuse('bad-distribution', `${label}: ${fault}.`, quantity);
	}
	const correlated = correlatedGroups(
		study.inputs.map(({ label }) => label),
		study.correlations ?? []
	);
	if (!correlated.ok) return correlated;
	const { groups, notices } = correlated.value;
	const held = groups.reduce((sum, { inputs }) => sum + inputs.length, 0) * draws;
	if (held > MOST_CORRELATED)
		return refuse(
			'too-many',
			`${draws.toLocaleString('en')} draws of this many correlated inputs need too much memory. Take ${Math.floor((MOST_CORRELATED / held) * draws).toLocaleString('en')} draws or fewer.`
		);
	const result = { quantity: study.quantity, members: study.members };
	const opened = openFollowing(
		{
			workbook,
			plan: options.plan,
			scenario: study.scenario,
			vary: study.inputs,
			ask: [
				result,
				...(study.compare === undefined ? [] : [{ ...result, scenario: study.compare }])
			]
		},
		study,
		options.replanning
	);
	if (!opened.ok) return opened;
	const columns = opened.value;
	const asked = study.compare === undefined ? 1 : 2;
	if (columns.results.length !== asked)
		return refuse(
			'no-such-member',
			`${study.quantity} has ${columns.results.length / asked} values. Choose the members for which the study asks.`,
			study.quantity
		);
	return answer({
		study,
		draws,
		seed,
		columns,
		quantiles: study.inputs.map(({ distribution }) => quantileOf(distribution)),
		groups,
		notices: [...notices, ...keptNotices(columns, study)]
	});
}

/** An input that the compared scenario enters for itself does not follow the draws there. */
function keptNotices(columns: Columns, { compare, inputs }: RiskStudy): string[] {
	if (compare === undefined) return [];
	return columns.inputs.flatMap(({ keptIn }, i) =>
		keptIn.includes(compare)
			? [
					`${inputs[i]!.label} has a value of its own in ${compare}, which stays as it is there; the draws move it in ${columns.scenario} alone.`
				]
			: []
	);
}

/** The strata of the correlated inputs, which every part of the draws reads. */
export const layOutRisk = ({ groups, quantiles, draws, seed }: PreparedRisk): LaidOut =>
	layOutGroups(groups, quantiles.length, draws, seed);

/** Draws made at a time: their inputs are in memory together. */
const PIECE = 4096;

/** The results of draws `from` to `from + count`; `laidOut` starts at draw `start`. */
export function runRisk(
	{ columns, quantiles, draws, seed }: PreparedRisk,
	laidOut: LaidOut,
	start: number,
	from: number,
	count: number
): ColumnsOut {
	const sampling = new Sampling(quantiles, draws, seed, laidOut, start);
	const values = columns.results.map(() => new Float64Array(count));
	const states = columns.results.map(() => new Uint8Array(count));
	for (let done = 0; done < count; done += PIECE) {
		const size = Math.min(PIECE, count - done);
		const piece = columns.run(sampling.values(from + done, size), 0, size);
		piece.values.forEach((value, i) => values[i]!.set(value, done));
		piece.states.forEach((state, i) => states[i]!.set(state, done));
	}
	return { values, states };
}

/** Its inputs in the first draw, for the second engine. */
export function firstDrawOf(
	{ quantiles, draws, seed }: PreparedRisk,
	laidOut: LaidOut
): readonly Float64Array[] {
	return new Sampling(quantiles, draws, seed, laidOut).values(0, 1);
}

/** The figures of all draws, unchecked. */
export function finishRisk(
	prepared: PreparedRisk,
	laidOut: LaidOut,
	{ values, states }: ColumnsOut
): RiskResult {
	const { study, columns, seed, draws, quantiles, groups, notices } = prepared;
	const sampling = new Sampling(quantiles, draws, seed, laidOut);
	const summaries = columns.results.map(({ scenario, base }, i): RiskSummary => {
		const drawn = { values: values[i]!, states: states[i]! };
		const summary = summaryOf(scenario, drawn, base.value, study.target);
		return { ...summary, ...tracedFaults(prepared, sampling, i, states[i]!) };
	});
	const drivers = driversOf(prepared, sampling, values[0]!, states[0]!);
	const alone = drivers.reduce((sum, { share }) => sum + share, 0);
	const [first] = columns.results;
	const unit = quantityOf(columns.plan.layout, first!.cell)?.quantity.unit;
	return {
		...summaries[0]!,
		kind: 'risk',
		quantity: study.quantity,
		members: first!.members,
		unit: unit ?? '1',
		seed,
		drivers,
		together: groups.length > 0 ? null : Math.max(0, 1 - alone),
		compare: summaries[1] ? comparison(prepared, values, states, summaries[1]) : null,
		notices,
		check: null
	};
}

function tracedFaults(
	{ columns }: PreparedRisk,
	sampling: Sampling,
	result: number,
	states: Uint8Array
) {
	const failing = Uint32Array.from(states.keys()).filter((draw) => states[draw] !== OK);
	const looked = spreadOver(failing);
	const inputs = looked.map((draw) => sampling.values(draw, 1));
	const draws = columns.inputs.map((_, input) =>
		Float64Array.from(inputs, (one) => one[input]![0]!)
	);
	return {
		origins: faultOrigins(columns, result, draws, looked),
		lookedAt: looked.length
	};
}

function driversOf(
	{ study, quantiles, draws }: PreparedRisk,
	sampling: Sampling,
	values: Float64Array,
	states: Uint8Array
) {
	const kept = values.filter((_, draw) => states[draw] === OK);
	if (kept.length < 2) return [];
	const ranks = (input: number) => {
		const own = new Float64Array(kept.length);
		let place = 0;
		for (let draw = 0; draw < draws; draw++)
			if (states[draw] === OK)
				own[place++] = quantiles[input]!.tie((sampling.stratum(input, draw) + 0.5) / draws);
		return ranksOf(own);
	};
	return drivesOf(kept, study.inputs.length, ranks)
		.map((drive, input) => ({ input, label: study.inputs[input]!.label, ...drive }))
		.sort((a, b) => b.share - a.share || Math.abs(b.rank) - Math.abs(a.rank));
}

function comparison(
	{ draws, columns }: PreparedRisk,
	values: readonly Float64Array[],
	states: readonly Uint8Array[],
	summary: RiskSummary
): NonNullable<RiskResult['compare']> {
	const [one, two] = [values[0]!, values[1]!];
	const difference = two.map((value, draw) => value - one[draw]!);
	const both = states[0]!.map((state, draw) => (state === OK ? states[1]![draw]! : state));
	let greater = 0;
	both.forEach((state, draw) => state === OK && difference[draw]! > 0 && greater++);
	const base = columns.results[1]!.base.value - columns.results[0]!.base.value;
	return {
		summary,
		difference: summaryOf(summary.scenario, { values: difference, states: both }, base, undefined),
		greater: greater / draws
	};
}
