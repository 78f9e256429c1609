/** The figures of one list of results: moments, percentiles, the bars of a histogram, how they settled. */
import { ERROR_CODES, NOTHING_KINDS, OK } from '$lib/engine/state';
import type { Target } from '$lib/workbook/study-shapes';
import { momentsOf } from './random/moments';
import { percentileOf } from './ordering';
import type { FaultCount, Histogram, RiskPoint, RiskSummary } from './risk-result';

const PERCENTILES = [1, 5, 10, 25, 50, 75, 90, 95, 99] as const;
const BARS = 40;
/** Shares of the draws after which the figures are looked at; each twice the one before. */
const LOOKS = 9;

export interface Drawn {
	readonly values: Float64Array;
	readonly states: Uint8Array;
}

export function summaryOf(
	scenario: string,
	{ values, states }: Drawn,
	base: number,
	target: Target | undefined
): RiskSummary {
	const kept = values.filter((_, i) => states[i] === OK);
	const sorted = kept.slice().sort();
	const { mean, sd } = momentsOf(sorted);
	const draws = values.length;
	return {
		scenario,
		draws,
		errors: draws - kept.length,
		faults: faultsOf(states),
		origins: [],
		lookedAt: 0,
		mean,
		sd,
		min: sorted[0] ?? NaN,
		max: sorted.at(-1) ?? NaN,
		percentiles: Object.fromEntries(
			PERCENTILES.map((share) => [String(share), percentileOf(sorted, share / 100)])
		),
		cumulative: Array.from({ length: 101 }, (_, share) => percentileOf(sorted, share / 100)),
		histogram: histogramOf(sorted),
		target: target ? chanceOf(kept, draws, target) : null,
		convergence: convergenceOf(kept),
		base
	};
}

/** By kind, the most frequent first. */
function faultsOf(states: Uint8Array): FaultCount[] {
	const found = new Map<number, { count: number; first: number }>();
	states.forEach((state, draw) => {
		if (state === OK) return;
		const known = found.get(state);
		if (known) known.count++;
		else found.set(state, { count: 1, first: draw });
	});
	return [...found]
		.map(([state, one]) => ({ code: NOTHING_KINDS[state] ?? ERROR_CODES[state]!, ...one }))
		.sort((a, b) => b.count - a.count);
}

function chanceOf(kept: Float64Array, draws: number, target: Target) {
	let met = 0;
	for (const value of kept)
		if ('at_least' in target ? value >= target.at_least : value <= target.at_most) met++;
	const chance = draws === 0 ? 0 : met / draws;
	return { chance, standardError: Math.sqrt((chance * (1 - chance)) / Math.max(1, draws)) };
}

/** Bars over all but the outermost thousandths, whose draws are counted beside them. */
export function histogramOf(sorted: Float64Array): Histogram {
	const from = percentileOf(sorted, 0.001);
	const to = percentileOf(sorted, 0.999);
	if (!(to > from)) {
		const at = percentileOf(sorted, 0.5);
		const equal = sorted.filter((value) => value === at).length;
		const below = sorted.filter((value) => value < at).length;
		const above = sorted.length - equal - below;
		return { from: at, width: 0, counts: sorted.length === 0 ? [] : [equal], below, above };
	}
	const width = (to - from) / BARS;
	const counts = new Array<number>(BARS).fill(0);
	let below = 0;
	let above = 0;
	for (const value of sorted) {
		if (value < from) below++;
		else if (value > to) above++;
		else counts[Math.min(BARS - 1, Math.floor((value - from) / width))]!++;
	}
	return { from, width, counts, below, above };
}

/** In the order in which they were drawn: what the first part of the draws would have said. */
function convergenceOf(kept: Float64Array): RiskPoint[] {
	const points: RiskPoint[] = [];
	for (let look = LOOKS - 1; look >= 0; look--) {
		const draws = Math.floor(kept.length / 2 ** look);
		if (draws < 20 || draws === points.at(-1)?.draws) continue;
		const sorted = kept.slice(0, draws).sort();
		const { mean, sd } = momentsOf(sorted);
		const at = (share: number) => percentileOf(sorted, share);
		// One standard deviation of how many draws lie below, either way.
		const error = (share: number) => {
			const off = Math.sqrt((share * (1 - share)) / draws);
			return (at(Math.min(1, share + off)) - at(Math.max(0, share - off))) / 2;
		};
		points.push({
			draws,
			mean,
			meanError: sd / Math.sqrt(draws),
			percentiles: { '5': at(0.05), '50': at(0.5), '95': at(0.95) },
			percentileErrors: { '5': error(0.05), '50': error(0.5), '95': error(0.95) }
		});
	}
	return points;
}
