import { describe, expect, it } from 'vitest';
import { applyCommand } from '$lib/workbook/commands';
import { distributionProblem } from '$lib/workbook/risk-study';
import { studyGaps } from '$lib/workbook/study-gaps';
import type { StudyKind, StudyOf } from '$lib/workbook/study-schema';
import type { Distribution } from '$lib/workbook/study-shapes';
import { plainSpec } from '$lib/ui/field';
import { freshStudy } from '$lib/ui/studies/fresh-study';
import {
	asKind,
	DISTRIBUTION_WORDS,
	numbersOf,
	readList,
	withNumber,
	type DistributionKind
} from '$lib/ui/studies/kinds/risk/distribution-form';
import { freeLabel } from '$lib/ui/studies/settings/lists';
import { alternativeFrom, changeWords } from '$lib/ui/studies/kinds/optimise/option-form';
import { freePair, relabelled, withoutInput } from '$lib/ui/studies/kinds/risk/risk-form';
import { plant } from '../../workbook/plant';

const KINDS: readonly StudyKind[] = [
	...(['bridge', 'sensitivity', 'map', 'break_even', 'risk', 'optimise'] as const)
];

describe('a new study', () => {
	it.each(KINDS)('of the kind %s can be kept at once, and asks what is there', (kind) => {
		const study = freshStudy(plant, kind, 'My question', 'weekend');
		expect(study.name).toBe('my_question');
		expect(studyGaps(plant, study)).toEqual([]);
		const added = applyCommand(plant, { kind: 'put_study', study });
		expect(added.ok || added.problem).toBe(true);
	});

	it('gets a name that is free', () => {
		const first = freshStudy(plant, 'risk', 'Spread', 'base');
		const next = freshStudy({ ...plant, studies: [first] }, 'risk', 'Spread', 'base');
		expect([first.name, next.name]).toEqual(['spread', 'spread_2']);
	});
});

describe('the form of a distribution', () => {
	const kinds = Object.keys(DISTRIBUTION_WORDS) as DistributionKind[];
	const starts: Distribution[] = [
		{ kind: 'pert', min: 1.7, likely: 1.95, max: 2.5 },
		{ kind: 'normal', mean: 1, sd: 0.1 },
		{ kind: 'lognormal', median: 2, sd_log: 0.2 },
		{ kind: 'uniform', min: -3, max: 5 },
		{ kind: 'data', values: [3, 1, 2] }
	];

	it.each(kinds)('turns any other shape into a sound one of the kind %s', (kind) => {
		for (const start of starts) {
			const turned = asKind(start, kind);
			expect(turned.kind).toBe(kind);
			expect(distributionProblem(turned)).toBeNull();
		}
	});

	it('keeps low, likely and high where the new kind has them', () => {
		expect(asKind(starts[0]!, 'triangular')).toEqual({ ...starts[0], kind: 'triangular' });
		expect(asKind(starts[1]!, 'uniform')).toEqual({ kind: 'uniform', min: 0.8, max: 1.2 });
	});

	it('names the numbers and changes one of them', () => {
		expect(numbersOf(starts[2]!)).toEqual([
			{ field: 'median', label: 'Middle', value: 2, hasUnit: true },
			{ field: 'sd_log', label: 'Deviation of the logarithm', value: 0.2, hasUnit: false }
		]);
		expect(withNumber(starts[1]!, 'sd', 0.3)).toEqual({ kind: 'normal', mean: 1, sd: 0.3 });
	});

	it('reads measured values, and says when one of them is none', () => {
		const spec = plainSpec({ locale: 'en', unit: 'kg', otherUnit: () => 'This is in kg.' });
		expect(readList(' 1.5 2\n3,25;−4', spec)).toEqual({ ok: true, values: [1.5, 2, 3.25, -4] });
		expect(readList('1 two', spec)).toMatchObject({
			ok: false,
			message: expect.stringContaining('"two"') as string
		});
		expect(readList('1 2 m', spec)).toMatchObject({ ok: false });
		expect(readList('', spec)).toMatchObject({
			ok: false,
			message: expect.stringContaining('numbers') as string
		});
	});
});

describe('the inputs of a risk study', () => {
	const input = (label: string): StudyOf<'risk'>['inputs'][number] => ({
		...{ label, quantity: 'resin_price', mode: 'scale' },
		distribution: { kind: 'uniform', min: 1, max: 2 }
	});
	const study: StudyOf<'risk'> = {
		...{ name: 's', title: 'S', kind: 'risk', quantity: 'material_cost', scenario: 'base' },
		inputs: [input('A'), input('B'), input('C')],
		correlations: [{ between: ['A', 'B'], rank: 0.5 }],
		...{ draws: 10, seed: 1 }
	};

	it('take their correlations along when they are renamed, and with them when they go', () => {
		expect(relabelled(study, 1, 'Price').correlations).toEqual([
			{ between: ['A', 'Price'], rank: 0.5 }
		]);
		expect(withoutInput(study, 0)).not.toHaveProperty('correlations');
		expect(withoutInput(study, 2).correlations).toEqual(study.correlations);
	});

	it('offer a pair that is not correlated yet', () => {
		expect(freePair(study)).toEqual(['A', 'C']);
		expect(freePair({ ...study, inputs: [input('A'), input('B')] })).toBeNull();
	});

	it('get names of their own', () => {
		expect(freeLabel(['Input', 'Input 2'], 'Input')).toBe('Input 3');
	});
});

describe('an alternative', () => {
	it('is made of all that a scenario changes against the base', () => {
		const made = alternativeFrom(plant, 'weekend');
		expect(made.label).toBe('Weekend crew');
		expect(made.changes).toEqual(
			plant.scenarios[1]!.changes.map(({ quantity, value }) => ({ quantity, value }))
		);
	});

	it('is said in words, a quantity that is gone included', () => {
		expect(changeWords(plant, [])).toBe('no changes');
		expect(
			changeWords(plant, [
				{ quantity: 'resin_price', value: 2 },
				{ quantity: 'top_speed', value: { PX15B: { L1: 1, L2: 2 } } },
				{ quantity: 'long_gone', value: 1 }
			])
		).toBe('Resin price: 1 value; Top speed: 2 values; long_gone (gone): 1 value');
	});
});
