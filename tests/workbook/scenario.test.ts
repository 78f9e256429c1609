import { describe, expect, it } from 'vitest';
import {
	changedCells,
	countChanges,
	inputAt,
	inputValues,
	referenceOf,
	scenarioChain
} from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import { plant } from './plant';

describe('a scenario', () => {
	it('starts from the base, by way of its parents', () => {
		expect(scenarioChain(plant, 'dear_resin').map(({ id }) => id)).toEqual([
			'base',
			'weekend',
			'dear_resin'
		]);
		expect(scenarioChain(plant, 'base').map(({ id }) => id)).toEqual(['base']);
		expect(scenarioChain(plant, 'nobody')).toEqual([]);
	});

	it('does not hang where parents go round in a circle', () => {
		const circle: Workbook = {
			...plant,
			scenarios: plant.scenarios.map((scenario) =>
				scenario.id === 'weekend' ? { ...scenario, parent: 'dear_resin' } : scenario
			)
		};
		expect(scenarioChain(circle, 'weekend')).toHaveLength(2);
	});

	it('sees its own change', () => {
		expect(inputAt(plant, 'dear_resin', 'resin_price', [])).toEqual({
			value: 2.1,
			from: 'dear_resin'
		});
	});

	it("sees its parent's change, and says whose it is", () => {
		expect(inputAt(plant, 'dear_resin', 'shift_pattern', ['L1'])).toEqual({
			value: '7x24',
			from: 'weekend'
		});
	});

	it('sees the base where neither changes anything', () => {
		expect(inputAt(plant, 'dear_resin', 'top_speed', ['PX15B', 'L2'])).toEqual({
			value: 25,
			from: 'base'
		});
	});

	it('sees nothing entered where nobody entered anything', () => {
		expect(inputAt(plant, 'weekend', 'setup_time', ['PX15B', 'PX15B'])).toEqual({
			value: null,
			from: 'base'
		});
	});

	it('may clear a value, which is not the same as following the parent', () => {
		const cleared: Workbook = {
			...plant,
			scenarios: plant.scenarios.map((scenario) =>
				scenario.id === 'weekend'
					? { ...scenario, changes: [{ quantity: 'resin_price', value: null }] }
					: scenario
			)
		};
		expect(inputAt(cleared, 'weekend', 'resin_price', [])).toEqual({
			value: null,
			from: 'weekend'
		});
	});

	it('has all values of a quantity at once', () => {
		expect(inputValues(plant, 'dear_resin', 'top_speed')).toEqual({
			PX15B: { L1: 21, L2: 25 },
			PX20: { L1: 18 }
		});
	});

	it('counts and lists only what it changes itself', () => {
		expect(countChanges(plant, 'dear_resin')).toBe(2);
		expect(countChanges(plant, 'base')).toBe(0);
		expect(changedCells(plant, 'dear_resin', 'top_speed')).toEqual([
			{ at: ['PX15B', 'L1'], value: 21 }
		]);
		expect(changedCells(plant, 'dear_resin', 'shift_pattern')).toEqual([]);
	});

	it('is measured against the base unless it names another', () => {
		expect(referenceOf(plant, 'weekend').id).toBe('base');
		expect(referenceOf(plant, 'dear_resin').id).toBe('weekend');
	});
});
