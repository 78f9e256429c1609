/** A distribution as a form shows it: its numbers with their names, and another kind with the same middle. */
import type { Distribution } from '$lib/workbook/study-shapes';
import { readEntry, type FieldSpec } from '../../../entry';
import { texts } from './texts';

export type DistributionKind = Distribution['kind'];

export const DISTRIBUTION_WORDS: Readonly<Record<DistributionKind, string>> = {
	triangular: 'low, likely, high: straight sides',
	pert: 'low, likely, high: rounded',
	uniform: 'anything between two values',
	normal: 'normal',
	lognormal: 'lognormal',
	discrete: 'a few values with weights',
	data: 'measured values'
};

/** The plain numbers of a distribution, by field. */
const FIELDS: Readonly<Record<DistributionKind, readonly (readonly [string, string])[]>> = {
	triangular: [
		['min', 'Low'],
		['likely', 'Likely'],
		['max', 'High']
	],
	pert: [
		['min', 'Low'],
		['likely', 'Likely'],
		['max', 'High']
	],
	uniform: [
		['min', 'Low'],
		['max', 'High']
	],
	normal: [
		['mean', 'Mean'],
		['sd', 'Standard deviation']
	],
	lognormal: [
		['median', 'Middle'],
		['sd_log', 'Deviation of the logarithm']
	],
	discrete: [],
	data: []
};

export interface NumberOfForm {
	readonly field: string;
	readonly label: string;
	readonly value: number;
	/** In the unit of the input; the deviation of a logarithm has none. */
	readonly hasUnit: boolean;
}

export const numbersOf = (distribution: Distribution): NumberOfForm[] =>
	FIELDS[distribution.kind].map(([field, label]) => ({
		...{ field, label, hasUnit: field !== 'sd_log' },
		value: (distribution as unknown as Readonly<Record<string, number>>)[field] ?? 0
	}));

export const withNumber = (
	distribution: Distribution,
	field: string,
	value: number
): Distribution => ({ ...distribution, [field]: value }) as Distribution;

/** Another kind that lies about where this one does. */
export function asKind(distribution: Distribution, kind: DistributionKind): Distribution {
	const [low, middle, high] = spanOf(distribution);
	switch (kind) {
		case 'triangular':
		case 'pert':
			return { kind, min: low, likely: middle, max: high };
		case 'uniform':
			return { kind, min: low, max: high };
		case 'normal':
			return { kind, mean: middle, sd: tidy((high - low) / 4) };
		case 'lognormal': {
			const median = middle > 0 ? middle : 1;
			return { kind, median, sd_log: tidy(Math.max(0.01, (high - low) / 4 / median)) };
		}
		case 'discrete':
			return {
				kind,
				values: [low, middle, high].map((value, i) => ({ value, weight: i === 1 ? 2 : 1 }))
			};
		case 'data':
			return { kind, values: [low, middle, high] };
	}
}

/** Low, middle and high: for shapes without ends, two deviations either way. */
function spanOf(one: Distribution): [number, number, number] {
	switch (one.kind) {
		case 'triangular':
		case 'pert':
			return [one.min, one.likely, one.max];
		case 'uniform':
			return [one.min, tidy((one.min + one.max) / 2), one.max];
		case 'normal':
			return [tidy(one.mean - 2 * one.sd), one.mean, tidy(one.mean + 2 * one.sd)];
		case 'lognormal': {
			const wide = Math.exp(2 * one.sd_log);
			return [tidy(one.median / wide), one.median, tidy(one.median * wide)];
		}
		case 'discrete':
			return ends(one.values.map(({ value }) => value));
		case 'data':
			return ends(one.values);
	}
}

function ends(values: readonly number[]): [number, number, number] {
	const sorted = [...values].sort((a, b) => a - b);
	const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
	return [at(0), at(0.5), at(1)];
}

const tidy = (value: number): number => Number(value.toPrecision(6));

/** Numbers parted by spaces, semicolons or line ends; a sentence where one of them cannot be taken. */
export function readList(
	text: string,
	spec: FieldSpec
): { ok: true; values: number[] } | { ok: false; message: string } {
	const values: number[] = [];
	for (const word of text.split(/[\s;]+/)) {
		const entry = readEntry(word, spec);
		if (!entry.ok) return entry;
		if (typeof entry.value === 'number') values.push(entry.value);
	}
	return values.length > 0 ? { ok: true, values } : { ok: false, message: texts.mustBeNumbers };
}
