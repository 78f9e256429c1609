/**
 * Overall equipment effectiveness written as a workbook would write it, with the terms of ISO 22400-2, against
 * worked numbers; each carries its source and standing in published/oee-and-set-point.json.
 */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { loadWorkbook } from '$lib/workbook/load';
import { VERSION } from '$lib/workbook/schema';
import { read } from './shipped';
import published from './published/oee-and-set-point.json';

const cases = published.filter(({ topic }) => topic === 'OEE') as unknown as readonly {
	id: string;
	basis: string;
	inputs: Record<string, { value: number; unit: string }>;
	expected: Record<string, { value: number; tolerance: number }>;
}[];

function workbookOf(
	inputs: Record<string, number>,
	units: Record<string, string>,
	formulas: object
) {
	const quantities = [
		...Object.entries(inputs).map(([name, value]) => ({
			name,
			label: name,
			unit: units[name] ?? '1',
			value
		})),
		...Object.entries(formulas).map(([name, formula]) => ({
			name,
			label: name,
			unit: '1',
			formula
		}))
	];
	const text = JSON.stringify({
		format: 'metrewright',
		version: VERSION,
		title: 'OEE',
		sets: [],
		sheets: [{ title: 'OEE', quantities }],
		scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }]
	});
	const loaded = loadWorkbook(text, 'oee.json');
	if (!loaded.ok) throw new Error(loaded.problem.line);
	const model = Model.open(loaded.workbook);
	expect(model.problems).toEqual([]);
	return model;
}

const UNITS = {
	busy: 'min',
	producing: 'min',
	runtime_per_item: 's/piece',
	made: 'piece',
	good: 'piece',
	calendar: 'h/year',
	planned: 'h/year'
};
const FORMULAS = {
	availability: 'producing / busy',
	effectiveness: 'runtime_per_item * made / producing',
	quality_ratio: 'good / made',
	oee: 'availability * effectiveness * quality_ratio'
};

describe('OEE', () => {
	it.each(cases.filter(({ expected }) => 'availability' in expected))(
		'$id ($basis): the units bring minutes and seconds together',
		({ inputs, expected }) => {
			const of = (...names: string[]) =>
				names.map((name) => inputs[name]?.value).find((value) => value !== undefined)!;
			const model = workbookOf(
				{
					busy: of('planned_time', 'planned_busy_time'),
					producing: of('run_time', 'actual_production_time'),
					// 1 min = 60 s
					runtime_per_item: 60 * of('ideal_cycle', 'planned_runtime_per_item'),
					made: of('total_count', 'produced_quantity'),
					good: of('good_count', 'good_quantity')
				},
				UNITS,
				FORMULAS
			);
			const names: Record<string, string> = {
				performance: 'effectiveness',
				quality: 'quality_ratio',
				oee_index: 'oee'
			};
			for (const [name, { value, tolerance }] of Object.entries(expected))
				expect(Math.abs(read(model, names[name] ?? name) - value), name).toBeLessThan(tolerance);
		}
	);

	it('oee-teep (derived): against the calendar it is OEE times the share that was planned', () => {
		const { inputs, expected } = cases.find(({ id }) => id === 'oee-teep')!;
		const model = workbookOf(
			{
				calendar: inputs['calendar_hours']!.value,
				planned: inputs['planned_hours']!.value,
				oee: inputs['oee']!.value
			},
			UNITS,
			{ utilisation: 'planned / calendar', teep: 'oee * utilisation' }
		);
		expect(read(model, 'utilisation')).toBeCloseTo(expected['utilisation']!.value, 6);
		expect(read(model, 'teep')).toBeCloseTo(expected['teep']!.value, 6);
	});
});
