import { describe, expect, it } from 'vitest';
import { hasSameStructure } from '$lib/engine/structure';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { findProblems } from '$lib/workbook/consistency';
import { problemLine } from '$lib/workbook/consistency/findings';
import { workbookJsonSchema } from '$lib/workbook/json-schema';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { studyGaps } from '$lib/workbook/study-gaps';
import type { Study, StudyOf } from '$lib/workbook/study-schema';
import type { Distribution } from '$lib/workbook/study-shapes';
import { plant, quantityOf } from './plant';

const bridge: Study = {
	name: 'why_cost',
	title: 'Why the cost differs',
	kind: 'bridge',
	quantity: 'material_cost',
	members: ['PX20'],
	from: 'base',
	to: 'weekend',
	groups: [
		{
			label: 'Speed',
			changes: [{ quantity: 'top_speed', members: ['PX20', null] }, { quantity: 'resin_price' }]
		}
	]
};
const risk: StudyOf<'risk'> = {
	name: 'spread',
	title: 'How sure the cost is',
	kind: 'risk',
	quantity: 'material_cost',
	members: ['PX20'],
	scenario: 'weekend',
	inputs: [
		{
			label: 'Resin',
			quantity: 'resin_price',
			mode: 'set',
			distribution: { kind: 'pert', min: 1.7, likely: 1.95, max: 2.5 }
		},
		{
			label: 'Mass',
			quantity: 'mass_per_metre',
			mode: 'scale',
			distribution: { kind: 'normal', mean: 1, sd: 0.02 }
		}
	],
	correlations: [{ between: ['Resin', 'Mass'], rank: -0.2 }],
	draws: 1000,
	seed: 7
};
const best: Study = {
	name: 'best',
	title: 'The best of both',
	kind: 'optimise',
	quantity: 'material_cost',
	members: ['PX15B'],
	scenario: 'base',
	direction: 'lowest',
	options: [
		{
			label: 'Speed of L1',
			alternatives: [
				{ label: 'as it is', changes: [] },
				{ label: 'faster', changes: [{ quantity: 'top_speed', value: { PX20: { L1: 31 } } }] }
			]
		}
	]
};
const withStudies = (...studies: Study[]): Workbook => ({ ...plant, studies });

function after(workbook: Workbook, command: Command): Workbook {
	const result = applyCommand(workbook, command);
	if (!result.ok) throw new Error(result.problem.message);
	return result.workbook;
}
const refusal = (workbook: Workbook, command: Command) => {
	const result = applyCommand(workbook, command);
	return result.ok ? null : result.problem.message;
};

describe('studies in a file', () => {
	it('come back as they were saved, fields in the order of the schema', () => {
		const jumbled = Object.fromEntries(Object.entries(risk).reverse()) as Study;
		const text = saveWorkbook(withStudies(bridge, jumbled, best));
		expect(text).toBe(saveWorkbook(withStudies(bridge, risk, best)));
		const loaded = loadWorkbook(text, 'shop.json');
		expect(loaded.ok && loaded.workbook.studies).toEqual([bridge, risk, best]);
		expect(text.indexOf('"draws"')).toBeGreaterThan(text.indexOf('"correlations"'));
	});

	it('are described by the JSON Schema, every kind', () => {
		const text = JSON.stringify(workbookJsonSchema());
		for (const kind of ['bridge', 'sensitivity', 'map', 'break_even', 'risk', 'optimise'])
			expect(text).toContain(`"const":"${kind}"`);
	});

	it('have names that differ, ranges that are ones and correlations of inputs that are there', () => {
		const wrong = withStudies(
			bridge,
			{ ...bridge, kind: 'bridge' },
			{
				...risk,
				inputs: [risk.inputs[0]!, { ...risk.inputs[1]!, label: 'Resin' }],
				correlations: [
					{ between: ['Resin', 'Tariff'], rank: 0.1 },
					{ between: ['Resin', 'Resin'], rank: 0.1 }
				]
			},
			{
				name: 'even',
				title: 'Even',
				kind: 'break_even',
				quantity: 'resin_price',
				scenario: 'base',
				input: { quantity: 'resin_price', mode: 'set', from: 2, to: 2 },
				target: 0
			}
		);
		expect(findProblems(wrong).map(problemLine)).toEqual([
			'study why_cost, name: there are two studies named why_cost. Give one of them another name.',
			'study spread, input Resin, label: two inputs are called Resin. Call one of them otherwise: correlations go by this name.',
			'study spread, correlation number 1: no input of the study is called Tariff. Correct the name, or take the correlation out.',
			'study spread, correlation number 2: Resin is correlated with itself. Name two inputs.',
			'study even, input: both ends of the range are 2. Give two different values.'
		]);
	});

	it.each<[Distribution, string]>([
		[
			{ kind: 'triangular', min: 3, likely: 2, max: 1 },
			'the lowest value 3 is above the highest, 1. Swap the two.'
		],
		[
			{ kind: 'pert', min: 1, likely: 5, max: 3 },
			'the likely value 5 is not between 1 and 3. Put it between them.'
		],
		[
			{ kind: 'uniform', min: 1, max: 0 },
			'the lowest value 1 is above the highest, 0. Swap the two.'
		],
		[{ kind: 'normal', mean: 1, sd: -1 }, 'the standard deviation is -1. Give one of 0 or more.'],
		[{ kind: 'lognormal', median: 0, sd_log: 1 }, 'the median is 0. Give one above 0.'],
		[
			{ kind: 'discrete', values: [{ value: 1, weight: 0 }] },
			'all weights are 0. Give at least one value a weight.'
		]
	])('refuse %j', (distribution, words) => {
		const study = { ...risk, inputs: [{ ...risk.inputs[0]!, distribution }], correlations: [] };
		expect(refusal(plant, { kind: 'put_study', study })).toBe(
			`Study spread, input Resin, distribution: ${words}`
		);
	});
});

describe('a study that outlives what it asks about', () => {
	it('is named before a quantity that it asks about or moves is removed', () => {
		const remove: Command = { kind: 'remove_quantity', name: 'mass_per_metre' };
		const words = (...studies: Study[]) => refusal(withStudies(...studies), remove);
		expect(words(risk)).toContain('the study How sure the cost is');
		// The bridge moves the speed and the price of resin alone.
		expect(words(risk, bridge)).not.toContain('Why the cost differs');
		expect(refusal(withStudies(bridge, risk), { ...remove, name: 'resin_price' })).toContain(
			'is used by the studies Why the cost differs and How sure the cost is, the formula of'
		);
		expect(refusal(withStudies(bridge), { ...remove, name: 'material_cost' })).toContain(
			'the study Why the cost differs'
		);
	});

	it('stays when its quantity is removed, and says what is missing', () => {
		const workbook = after(withStudies(risk), {
			kind: 'remove_quantity',
			name: 'resin_price',
			also: true
		});
		expect(workbook.studies).toEqual([risk]);
		expect(studyGaps(workbook, risk).map(({ message }) => message)).toEqual([
			'There is no quantity resin_price any more. Choose another, or bring it back.'
		]);
		expect(loadWorkbook(saveWorkbook(workbook), 'shop.json').ok).toBe(true);
	});

	it('says which scenario or member is gone', () => {
		const less = after(withStudies(bridge), { kind: 'remove_scenario', id: 'weekend' });
		expect(studyGaps(less, bridge)[0]).toEqual({
			code: 'unknown-scenario',
			message: 'There is no scenario "weekend" any more. Choose another, or bring it back.'
		});
		const gone = after(withStudies(bridge), {
			kind: 'remove_member',
			set: 'product',
			id: 'PX20',
			also: true
		});
		expect(studyGaps(gone, bridge)[0]?.message).toBe(
			'Product has no member PX20 any more. Choose another, or bring it back.'
		);
	});

	it('has nothing to say where all is there', () => {
		for (const study of [bridge, risk, best])
			expect(studyGaps(withStudies(study), study)).toEqual([]);
	});

	it('cannot move what follows a formula, nor ask for a quantity of all members at once', () => {
		const study: Study = {
			...risk,
			members: undefined as never,
			inputs: [{ ...risk.inputs[0]!, quantity: 'material_cost' }]
		};
		expect(studyGaps(plant, study).map(({ code }) => code)).toEqual([
			'which-member',
			'not-an-input'
		]);
	});
});

describe('renaming carries over into studies', () => {
	const workbook = withStudies(bridge, risk, best);

	it('for a quantity', () => {
		const speed = { ...quantityOf(plant, 'top_speed'), name: 'pace' };
		const { studies } = after(workbook, {
			kind: 'replace_quantity',
			name: 'top_speed',
			quantity: speed
		});
		expect(JSON.stringify(studies)).toBe(
			JSON.stringify(workbook.studies).replaceAll('top_speed', 'pace')
		);
	});

	it('for a member, in cells and in the values of alternatives', () => {
		const { studies } = after(workbook, {
			kind: 'replace_member',
			set: 'product',
			id: 'PX20',
			member: { id: 'PX21' }
		});
		expect(JSON.stringify(studies)).toBe(
			JSON.stringify(workbook.studies).replaceAll('PX20', 'PX21')
		);
	});

	it('for a scenario', () => {
		const { changes: _changes, ...header } = plant.scenarios[1]!;
		const { studies } = after(workbook, {
			kind: 'replace_scenario',
			id: 'weekend',
			scenario: { ...header, id: 'crew' }
		});
		expect(JSON.stringify(studies)).toBe(
			JSON.stringify(workbook.studies).replaceAll('"weekend"', '"crew"')
		);
	});
});

describe('commands on studies', () => {
	it('add, replace in place, rename, note a run and remove, without planning anew', () => {
		const two = after(after(plant, { kind: 'put_study', study: bridge }), {
			kind: 'put_study',
			study: best
		});
		const renamed = after(two, {
			kind: 'put_study',
			name: 'why_cost',
			study: { ...bridge, name: 'why' }
		});
		expect(renamed.studies?.map(({ name }) => name)).toEqual(['why', 'best']);
		const ran = { stood_on: 'x', headline: [{ label: 'Total', value: null }] };
		const noted = applyCommand(renamed, { kind: 'set_ran', name: 'why', ran });
		expect(noted.ok && noted.workbook.studies?.[0]?.ran).toEqual(ran);
		expect(noted.ok && hasSameStructure(renamed, noted.workbook)).toBe(true);
		const less = after(renamed, { kind: 'remove_study', name: 'why' });
		expect(less.studies).toEqual([best]);
		expect(after(less, { kind: 'remove_study', name: 'best' })).toEqual(plant);
	});

	it('refuse a name that is taken and a study that is not there', () => {
		expect(refusal(withStudies(bridge), { kind: 'put_study', study: bridge })).toBe(
			'There is already a study named why_cost. Choose another name.'
		);
		expect(refusal(plant, { kind: 'remove_study', name: 'gone' })).toBe(
			'There is no study "gone". Choose one of the workbook\'s studies.'
		);
	});
});
