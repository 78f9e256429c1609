/**
 * The distributions that an input may have: whether one is possible, and its quantile function, which makes a
 * value of a probability. What they mean is in each case's own words; units and modes are the input's.
 */
import type { Distribution } from '$lib/workbook/study-shapes';
import { quickBetaQuantile } from './beta-quantile';
import { normalQuantile } from '$lib/engine/normal';

export interface Quantile {
	/** The value that is not passed with probability p, 0 < p < 1. */
	at(p: number): number;
	/** The middle of the probabilities that give the same value as p does; p itself where no others do. */
	tie(p: number): number;
}

/** The weight that a PERT distribution gives its likely value beside its two ends. */
export const PERT_WEIGHT = 4;

/** What is wrong, to follow the input's name, and what to do; null where nothing is. */
export function distributionFault(one: Distribution): string | null {
	const bad = (value: number) => !Number.isFinite(value);
	switch (one.kind) {
		case 'triangular':
		case 'pert':
			if ([one.min, one.likely, one.max].some(bad)) return notNumbers;
			if (one.min > one.max)
				return `its least value (${one.min}) is above its greatest (${one.max}). Exchange them`;
			if (one.likely < one.min || one.likely > one.max)
				return `its likely value (${one.likely}) is not between its least (${one.min}) and its greatest (${one.max}). Correct one of the three`;
			return null;
		case 'uniform':
			if ([one.min, one.max].some(bad)) return notNumbers;
			return one.min > one.max
				? `its least value (${one.min}) is above its greatest (${one.max}). Exchange them`
				: null;
		case 'normal':
			if ([one.mean, one.sd].some(bad)) return notNumbers;
			return one.sd < 0
				? `its standard deviation (${one.sd}) is below zero. Enter one of zero or more`
				: null;
		case 'lognormal':
			if ([one.median, one.sd_log].some(bad)) return notNumbers;
			if (one.median <= 0)
				return `the median of a lognormal distribution must be above zero, and it is ${one.median}. Enter another, or take a normal distribution`;
			return one.sd_log < 0
				? `its standard deviation of the logarithm (${one.sd_log}) is below zero. Enter one of zero or more`
				: null;
		case 'discrete':
			if (one.values.some(({ value, weight }) => bad(value) || bad(weight))) return notNumbers;
			if (one.values.some(({ weight }) => weight < 0))
				return 'one of its weights is below zero. Enter weights of zero or more';
			return one.values.some(({ weight }) => weight > 0)
				? null
				: 'none of its values has a weight. Give one of them a weight above zero';
		case 'data':
			if (one.values.length === 0) return 'it has no values. Enter some';
			return one.values.some(bad) ? notNumbers : null;
	}
}

const notNumbers = 'one of its figures is not a number. Enter it again';

/** Of a distribution without a fault. */
export function quantileOf(one: Distribution): Quantile {
	switch (one.kind) {
		case 'triangular':
			return smooth(triangular(one.min, one.likely, one.max));
		case 'pert':
			return smooth(pert(one.min, one.likely, one.max));
		case 'uniform':
			return smooth((p) => one.min + p * (one.max - one.min));
		case 'normal':
			return smooth((p) => one.mean + (one.sd === 0 ? 0 : one.sd * normalQuantile(p)));
		case 'lognormal':
			return smooth((p) =>
				one.sd_log === 0 ? one.median : one.median * Math.exp(one.sd_log * normalQuantile(p))
			);
		case 'discrete':
			return stepped(one.values);
		case 'data':
			return stepped(one.values.map((value) => ({ value, weight: 1 })));
	}
}

const smooth = (at: (p: number) => number): Quantile => ({ at, tie: (p) => p });

function triangular(min: number, likely: number, max: number): (p: number) => number {
	const width = max - min;
	if (width === 0) return () => min;
	const turn = (likely - min) / width;
	return (p) =>
		p < turn
			? min + Math.sqrt(p * width * (likely - min))
			: max - Math.sqrt((1 - p) * width * (max - likely));
}

function pert(min: number, likely: number, max: number): (p: number) => number {
	const width = max - min;
	if (width === 0) return () => min;
	const [a, b] = pertShape(min, likely, max);
	const quantile = quickBetaQuantile(a, b);
	return (p) => min + width * quantile(p);
}

/** The two parameters of the beta distribution that a PERT distribution is. */
export function pertShape(min: number, likely: number, max: number): [a: number, b: number] {
	const turn = (likely - min) / (max - min);
	return [1 + PERT_WEIGHT * turn, 1 + PERT_WEIGHT * (1 - turn)];
}

function stepped(values: readonly { readonly value: number; readonly weight: number }[]): Quantile {
	const sorted = values.filter(({ weight }) => weight > 0).sort((a, b) => a.value - b.value);
	const steps: number[] = [];
	const ends: number[] = [];
	let sum = 0;
	for (const { value, weight } of sorted) {
		sum += weight;
		if (steps.at(-1) === value) ends[ends.length - 1] = sum;
		else {
			steps.push(value);
			ends.push(sum);
		}
	}
	const stepAt = (p: number) => {
		let low = 0;
		let high = ends.length - 1;
		while (low < high) {
			const middle = (low + high) >> 1;
			if (ends[middle]! > p * sum) high = middle;
			else low = middle + 1;
		}
		return low;
	};
	return {
		at: (p) => steps[stepAt(p)]!,
		tie(p) {
			const step = stepAt(p);
			return ((ends[step - 1] ?? 0) + ends[step]!) / 2 / sum;
		}
	};
}

/** The lognormal distribution with this mean and standard deviation. */
export function lognormalOf(mean: number, sd: number): Distribution & { kind: 'lognormal' } {
	const variance = Math.log1p((sd / mean) ** 2);
	return { kind: 'lognormal', median: mean * Math.exp(-variance / 2), sd_log: Math.sqrt(variance) };
}
