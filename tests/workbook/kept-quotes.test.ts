/** Quotes that a workbook keeps: numbered by person, merged, followed under new names, over the workbook and never in it. */
import { describe, expect, it } from 'vitest';
import { applyCommand } from '$lib/workbook/commands';
import { inputAt } from '$lib/workbook/scenario';
import { mergeWorkbooks } from '$lib/workbook/merge';
import { overlaid, withEntries } from '$lib/workbook/quote-overlay';
import {
	findQuote,
	forAnother,
	isExpired,
	nextNumber,
	nextVersion,
	numberedTwice,
	quoteName,
	signOf
} from '$lib/workbook/quotes';
import type { KeptQuote, QuoteEntry, Workbook } from '$lib/workbook/schema';
import { after, plant } from './plant';

const quote: KeptQuote = {
	...{ id: 'q_one', number: '28-AB-001', version: 1, state: 'sent', date: '2028-03-14' },
	...{ valid_until: '2028-04-04', to: 'Skerrow', by: 'Ada Byron' },
	items: [
		{
			id: 'one',
			entries: [
				{ quantity: 'resin_price', value: 2.4 },
				{ quantity: 'top_speed', at: ['PX15B', 'L1'], value: 21 }
			],
			grounds: {
				...{ date: '2028-03-14', of: 'Base' },
				sets: [{ name: 'line', members: [{ id: 'L1' }] }],
				figures: [
					{ name: 'resin_price', label: 'Resin price', unit: 'EUR/kg', value: 2.4 },
					{ name: 'shift_pattern', label: 'Pattern', per: ['line'], value: { L1: '5x24' } }
				],
				inputs: { resin_price: 1.95, top_speed: { PX15B: { L1: 20 } } }
			}
		}
	]
};
const holding = after(plant, { kind: 'put_quote', quote });

describe('the number of a quote', () => {
	it('is the next of its year and person, whatever others have reached', () => {
		const others = [{ ...quote, number: '28-CD-041' }, { ...quote, number: '27-AB-090' }, quote];
		expect(nextNumber(others, '2028-05-01', 'AB')).toBe('28-AB-002');
		expect(nextNumber([], '2028-05-01', 'AB')).toBe('28-AB-001');
		expect(nextNumber([{ ...quote, number: '28-AB-1x' }], '2028-05-01', 'AB')).toBe('28-AB-001');
	});

	it.each([
		['Ada Byron', 'AB'],
		['ada', 'AD'],
		['Élise de la Tour', 'ÉDL'],
		['', 'Q'],
		['  ', 'Q']
	])('bears the sign of %s: %s', (name, sign) => expect(signOf(name)).toBe(sign));

	it('that two quotes bear is told, and versions of one are not', () => {
		const second = { ...quote, id: 'q_two' };
		expect([...numberedTwice([quote, { ...second, version: 2 }])]).toEqual([]);
		expect([...numberedTwice([quote, second])]).toEqual(['28-AB-001']);
	});
});

describe('a quote made of another', () => {
	it('is the next version, asked again, and the old one stays', () => {
		const next = nextVersion([quote, { ...quote, id: 'q_two', version: 3 }], quote, {
			...{ id: 'q_new', date: '2028-05-01', by: 'Cy Dent' }
		});
		expect(quoteName(next)).toBe('28-AB-001, version 4');
		expect(next).toMatchObject({
			state: 'asked',
			date: '2028-05-01',
			by: 'Cy Dent',
			to: 'Skerrow'
		});
		expect(next.items[0]).not.toHaveProperty('grounds');
		expect(next.items[0]!.entries).toEqual(quote.items[0]!.entries);
		expect(next).not.toHaveProperty('valid_until');
		expect(quote.items[0]).toHaveProperty('grounds');
	});

	it('for another customer leaves the customer and what holds for that one behind', () => {
		const fresh = { id: 'q_new', date: '2028-05-01', number: '28-AB-002' };
		const made = forAnother(quote, fresh, ({ quantity }) => quantity === 'top_speed');
		expect(made).not.toHaveProperty('to');
		expect(made.items[0]!.entries).toEqual([{ quantity: 'resin_price', value: 2.4 }]);
		expect(made.number).toBe('28-AB-002');
	});
});

describe('the time of a quote', () => {
	it.each([
		['2028-04-04', 'sent', false],
		['2028-04-05', 'sent', true],
		['2028-04-05', 'won', false]
	] as const)('on %s, %s: run out %s', (today, state, expired) =>
		expect(isExpired({ ...quote, state }, today)).toBe(expired)
	);
});

describe('a quote in its workbook', () => {
	it('is followed under new names of quantities and members, its grounds as well', () => {
		const resin = plant.sheets
			.flatMap(({ quantities }) => quantities)
			.find(({ name }) => name === 'resin_price')!;
		const named = after(holding, {
			...{ kind: 'replace_quantity', name: 'resin_price' },
			quantity: { ...resin, name: 'compound_price' }
		});
		const renamed = after(named, {
			...{ kind: 'replace_member', set: 'line', id: 'L1' },
			member: { id: 'Line one' }
		});
		const [item] = findQuote(renamed, 'q_one')!.items;
		expect(item!.entries).toEqual([
			{ quantity: 'compound_price', value: 2.4 },
			{ quantity: 'top_speed', at: ['PX15B', 'Line one'], value: 21 }
		]);
		expect(item!.grounds!.figures.map(({ name }) => name)).toEqual([
			'compound_price',
			'shift_pattern'
		]);
		expect(item!.grounds!.figures[1]!.value).toEqual({ 'Line one': '5x24' });
		expect(item!.grounds!.inputs).toEqual({
			compound_price: 1.95,
			top_speed: { PX15B: { 'Line one': 20 } }
		});
	});

	it('forgets what an input was that is counted in another unit from now on', () => {
		const resin = plant.sheets
			.flatMap(({ quantities }) => quantities)
			.find(({ name }) => name === 'resin_price')!;
		const other = applyCommand(holding, {
			...{ kind: 'replace_quantity', name: 'resin_price', also: true },
			quantity: { ...resin, unit: 'EUR/t' }
		});
		expect(other.ok && findQuote(other.workbook, 'q_one')!.items[0]!.grounds!.inputs).toEqual({
			top_speed: { PX15B: { L1: 20 } }
		});
	});

	it('stays when what it speaks of is removed', () => {
		const gone = after(holding, { kind: 'remove_member', set: 'line', id: 'L1', also: true });
		expect(findQuote(gone, 'q_one')).toEqual(quote);
	});

	it('of two people who were not in step are both there, under one number or not', () => {
		const put = (id: string, state: KeptQuote['state']): Workbook =>
			after(plant, { kind: 'put_quote', quote: { ...quote, id, state } });
		const merged = mergeWorkbooks({
			base: plant,
			mine: put('q_mine', 'won'),
			theirs: put('q_theirs', 'sent')
		});
		expect(merged.conflicts).toEqual([]);
		expect(merged.workbook.quotes!.map(({ id }) => id).sort()).toEqual(['q_mine', 'q_theirs']);
	});
});

describe('a quote over its workbook', () => {
	it('enters into a scenario that is not in the workbook, and nothing else differs', () => {
		const { workbook, id, gone } = overlaid(plant, quote.items[0]!.entries, 'weekend');
		expect(gone).toEqual([]);
		expect(inputAt(workbook, id, 'resin_price', []).value).toBe(2.4);
		expect(inputAt(workbook, 'base', 'resin_price', [])).toEqual(
			inputAt(plant, 'base', 'resin_price', [])
		);
		expect({ ...workbook, scenarios: plant.scenarios }).toEqual(plant);
		expect(workbook.scenarios.at(-1)).toMatchObject({ id, parent: 'weekend' });
	});

	it.each<[string, QuoteEntry, string]>([
		['a quantity', { quantity: 'gone', value: 1 }, 'gone'],
		['a member', { quantity: 'top_speed', at: ['PX15B', 'L9'], value: 1 }, 'L9'],
		['a chosen member', { quantity: 'shift_pattern', at: ['L1'], value: '9x99' }, '9x99']
	])('names %s that is gone, and enters the others', (_what, entry, name) => {
		const over = overlaid(plant, [entry, { quantity: 'resin_price', value: 3 }]);
		expect(over.gone).toEqual([name]);
		expect(inputAt(over.workbook, over.id, 'resin_price', []).value).toBe(3);
	});

	it('takes an entry in place of the one at its cell', () => {
		const entries = withEntries(quote.items[0]!.entries, [
			{ quantity: 'resin_price', value: 2 },
			{ quantity: 'top_speed', at: ['PX15B', 'L2'], value: 4 }
		]);
		expect(entries.map(({ value }) => value)).toEqual([2, 21, 4]);
	});
});
