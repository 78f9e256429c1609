import { describe, expect, it } from 'vitest';
import { findProblems } from '$lib/workbook/consistency';
import { problemLine } from '$lib/workbook/consistency/findings';
import { loadWorkbook } from '$lib/workbook/load';
import { pictureQuantities, pictureSets } from '$lib/workbook/picture-names';
import { saveWorkbook } from '$lib/workbook/save';
import type { Picture, Start, Workbook } from '$lib/workbook/schema';
import { after, plant, quantityOf, refusal } from './plant';

const manager: Start = {
	id: 'manager',
	title: 'Manager',
	facts: [{ quantity: 'resin_price', title: 'Resin', below: '{material_cost} a metre' }],
	findings: [
		{ kind: 'figures', title: 'At {resin_price}', quantities: ['resin_price', 'material_cost'] },
		{ kind: 'picture', picture: 'build_up' },
		{ kind: 'figures', title: 'Speeds', quantities: ['speed_limit'] }
	]
};
const withStarts: Workbook = { ...plant, starts: [manager] };
const lines = (workbook: Workbook) => findProblems(workbook).map(problemLine);

describe('a starting view', () => {
	it('is sound where all it names exists', () => {
		expect(lines(withStarts)).toEqual([]);
	});

	it('shows quantities and pictures that exist, and has an id of its own', () => {
		const broken: Start = {
			...manager,
			facts: [{ quantity: 'resin_prise', title: 'Resin' }],
			findings: [
				{ kind: 'figures', title: '{price_of_glue}', quantities: ['material_costs'] },
				{ kind: 'picture', picture: 'buildup' }
			]
		};
		expect(lines({ ...plant, starts: [manager, broken] })).toEqual([
			'start manager, id: there are two starting views with the id manager. Rename one of the two.',
			'start manager, fact number 1, quantity: there is no quantity named "resin_prise". Did you mean resin_price? Correct the name, or take it out.',
			'start manager, finding {price_of_glue}, title: there is no quantity named "price_of_glue". Correct the name, or take it out.',
			'start manager, finding {price_of_glue}, quantity number 1: there is no quantity named "material_costs". Did you mean material_cost? Correct the name, or take it out.',
			'start manager, finding number 2, picture: the workbook has no picture of the kind "buildup". Did you mean build_up? Add the picture, or take this out.'
		]);
	});

	it('survives saving and opening, its fields in the order of the schema', () => {
		const shuffled = { findings: manager.findings, title: 'Manager', id: 'manager' };
		const text = saveWorkbook({ ...plant, starts: [shuffled] });
		expect(text.indexOf('"id": "manager"')).toBeLessThan(text.indexOf('"findings"'));
		const loaded = loadWorkbook(text, 'plant.json');
		expect(loaded.ok && loaded.workbook.starts).toEqual([shuffled]);
	});

	it('calls a renamed quantity by its new name', () => {
		const next = after(withStarts, {
			kind: 'replace_quantity',
			name: 'resin_price',
			quantity: { ...quantityOf(plant, 'resin_price'), name: 'price_of_resin' }
		});
		expect(next.starts?.[0]?.facts?.[0]?.quantity).toBe('price_of_resin');
		expect(next.starts?.[0]?.findings[0]).toEqual({
			kind: 'figures',
			title: 'At {price_of_resin}',
			quantities: ['price_of_resin', 'material_cost']
		});
		expect(lines(next)).toEqual([]);
	});

	it('keeps a quantity from being removed by oversight, and goes on without it', () => {
		const command = { kind: 'remove_quantity', name: 'speed_limit' } as const;
		expect(refusal(withStarts, command).message).toContain('the starting view Manager');
		const next = after(withStarts, { ...command, also: true });
		// The picture of the speeds goes with them.
		expect(next.starts?.[0]?.findings.map(({ kind }) => kind)).toEqual(['figures']);
		const without = after(withStarts, { kind: 'remove_quantity', name: 'resin_price', also: true });
		expect(without.starts?.[0]?.facts).toEqual([]);
		expect(lines(without).filter((line) => line.startsWith('start'))).toEqual([]);
	});
});

const capacity: Picture = {
	kind: 'capacity',
	title: 'Capacity',
	month: 'year',
	loads: [{ load: 'speed_limit', hours_short: 'material_cost' }]
};

describe('a picture with parts', () => {
	it('names its sets and quantities wherever they stand', () => {
		expect(pictureSets(capacity)).toEqual([[['month'], 'year']]);
		expect(pictureQuantities(capacity)).toEqual([
			[['loads', 0, 'load'], 'speed_limit'],
			[['loads', 0, 'hours_short'], 'material_cost']
		]);
	});

	it('draws loads per month and one other set', () => {
		expect(lines({ ...plant, pictures: [capacity] })).toEqual([
			'picture Capacity, load speed_limit, load: speed_limit is not per year and one other set. Name a load per resource and year.'
		]);
	});

	it('compares patterns by quantities per pattern alone', () => {
		const picture: Picture = {
			kind: 'patterns',
			title: 'Shifts',
			pattern: 'pattern',
			against: '6x24',
			metres: 'material_cost',
			cost: 'speed_limit',
			rows: ['speed_limit', 'no_such']
		};
		const codes = findProblems({ ...plant, pictures: [picture] }).map(({ code }) => code);
		expect(codes).toEqual([
			'unknown-quantity',
			'unknown-member',
			'picture-axes',
			'picture-axes',
			'picture-axes'
		]);
	});

	it('calls a renamed quantity by its new name', () => {
		const next = after(
			{ ...plant, pictures: [...plant.pictures!, capacity] },
			{
				kind: 'replace_quantity',
				name: 'speed_limit',
				quantity: { ...quantityOf(plant, 'speed_limit'), name: 'limit_of_speed' }
			}
		);
		expect(next.pictures?.[1]).toEqual({
			...capacity,
			loads: [{ load: 'limit_of_speed', hours_short: 'material_cost' }]
		});
	});
});
