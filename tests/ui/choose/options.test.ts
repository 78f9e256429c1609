/** What a long list finds, and where it lies on the screen. */
import { describe, expect, it } from 'vitest';
import { foundOptions, quantityOptions, type ListOption } from '$lib/ui/choose/options';
import { listPlace } from '$lib/ui/choose/place';
import { openShipped } from '../../reference/shipped';

const { workbook } = openShipped('marram');
const quantities = quantityOptions(workbook, () => true);
const names = (typed: string, of: readonly ListOption[] = quantities) =>
	foundOptions(of, typed).flatMap(({ options }) => options.map(({ option }) => option.value));

describe('a list of quantities', () => {
	it('stands under its sheets, in their order, where nothing is typed', () => {
		const groups = foundOptions(quantities, '');
		expect(groups.map(({ label }) => label)).toEqual(
			workbook.sheets.filter(({ quantities }) => quantities.length > 0).map(({ title }) => title)
		);
		const indexes = groups.flatMap(({ options }) => options.map(({ index }) => index));
		expect(indexes).toEqual(quantities.map((_, i) => i));
	});

	it('is found by label, by name and by other names, which are said', () => {
		expect(names('line speed')[0]).toBe('line_speed');
		expect(names('mttr')[0]).toBe('mttr');
		const [group] = foundOptions(quantities, 'capex');
		expect(group?.options[0]).toMatchObject({
			option: { value: 'outlay_amount', group: 'Investment' },
			also: 'capex'
		});
	});

	it('has nothing to show where no entry has the words', () => {
		expect(foundOptions(quantities, 'no such thing')).toEqual([]);
	});
});

it('entries that are not found by a name are found by their text alone', () => {
	const options = [
		{ value: '{"is":"nothing"}', text: 'left out' },
		{ value: '{"is":"value"}', text: 'Price', group: 'Values' }
	];
	expect(names('is', options)).toEqual([]);
	expect(names('price', options)).toEqual(['{"is":"value"}']);
});

describe('the list of a chooser lies', () => {
	const field = { left: 40, top: 100, bottom: 130, width: 200 };

	it('below its field where there is room', () => {
		expect(listPlace(field, { width: 1000, height: 800 })).toEqual({
			...{ left: 40, top: 132, bottom: null, width: 360, height: 380 }
		});
	});

	it('above it near the foot of the window', () => {
		const low = { ...field, top: 700, bottom: 730 };
		// 800 - 700 + 2 from the foot; 700 - 8 - 2 above it, of which 380 are taken.
		expect(listPlace(low, { width: 1000, height: 800 })).toMatchObject({
			...{ top: null, bottom: 102, height: 380 }
		});
	});

	it('within the window, however narrow', () => {
		const right = { ...field, left: 300 };
		// 390 - 2 × 8 are 374; 360 of them, so that it ends 8 before the edge.
		expect(listPlace(right, { width: 390, height: 800 })).toMatchObject({ left: 22, width: 360 });
		expect(listPlace(right, { width: 320, height: 800 })).toMatchObject({ left: 8, width: 304 });
	});
});
