/** What columns of a file are taken to mean: by heading, by what stands in them, and never by a guess among several. */
import { describe, expect, it } from 'vitest';
import { readCsv } from '$lib/exchange/csv/rows';
import { proposeMapping } from '$lib/exchange/table/propose';
import { memberNamed } from '$lib/exchange/table/member-named';
import type { Meaning } from '$lib/exchange/table/mapping';
import { openShipped } from '../../reference/shipped';

const { workbook } = openShipped('marram');
const shop = openShipped('shop').workbook;

function columnsOf(text: string, of = workbook) {
	const read = readCsv(text, 'f.csv');
	if (!read.ok) throw new Error(read.message);
	return proposeMapping(read.grid, of).columns;
}
const said = (meaning: Meaning) =>
	meaning.is === 'value' ? meaning.quantity : meaning.is === 'asked' ? meaning.between : meaning.is;
const meanings = (text: string, of = workbook) =>
	columnsOf(text, of).map(({ meaning }) => said(meaning));

describe('the columns of a table with one row a thing', () => {
	it('are matched to quantities by label and by name, several in one file', () => {
		expect(
			meanings(
				'Product,Outside diameter,minimum wall,coil_length\nR16,16,1.8,100\nR20,20,1.9,50\n',
				shop
			)
		).toEqual(['member', 'outside_diameter', 'wall_minimum', 'coil_length']);
	});

	it('are asked about where a heading fits several: a price is one of five', () => {
		const [thing, price, list] = meanings('product,price,list_price\nPX15B,0.36,0.42\n');
		expect([thing, list]).toEqual(['member', 'list_price']);
		expect(price).toContain('price');
		expect(price).toContain('list_price');
	});

	it('are not matched to what is per the pipe where the pipe of an item is a choice', () => {
		const head = 'Item;Pipe;Coil length (m/coil)';
		expect(meanings(`${head}\nPX15B-50;PX15B;50\nPX22B-25;PX22B;25\n`)).toEqual([
			'member',
			'pipe_of_item',
			'length_of_item'
		]);
	});

	it('are matched by another name of a quantity where neither label nor name fits', () => {
		expect(meanings('product,packing cost\nPX15B,4\n')).toEqual(['member', 'packaging_per_coil']);
	});

	it('are asked about where two of them claim one quantity', () => {
		expect(meanings('product,List price,list_price\nPX15B,0.36,0.42\n')).toEqual([
			'member',
			['list_price'],
			['list_price']
		]);
	});

	it('are left out where nothing tells what they hold, and asked about where none of them is told', () => {
		expect(meanings('product,List price,maker,weight of box\nPX15B,0.4,Smith,3\n')).toEqual([
			'member',
			'list_price',
			'nothing',
			'nothing'
		]);
		expect(meanings('product,boxes\nPX15B,4\n')).toEqual(['member', []]);
	});

	it('are asked about where one word of many fits: metres are not at once those sold as short coils', () => {
		expect(meanings('product,metres\nPX15B,4\n')).toEqual([
			'member',
			// metres invoiced are asked for by month besides, which this table does not name
			['short_coil_share']
		]);
	});

	it('name things by labels as well, whatever the heading says', () => {
		const labels = workbook.sets.find(({ name }) => name === 'line_energy_use')!.members;
		const rows = labels.map(({ label }) => `${label},1`).join('\n');
		expect(columnsOf(`where,x\n${rows}\n`)[0]!.meaning).toEqual({
			is: 'member',
			of: 'line_energy_use'
		});
	});

	it('name nothing by a label that two have, but by an id in whatever case', () => {
		const members = [
			{ id: 'A1', label: 'Pipe' },
			{ id: 'A2', label: 'pipe' },
			{ id: 'B1', label: 'B1' }
		];
		const set = { name: 'item', label: 'Item', members };
		expect(['Pipe', 'a1', 'A2', 'b1', 'C'].map((text) => memberNamed(set, text))).toEqual([
			null,
			'A1',
			'A2',
			'B1',
			null
		]);
	});

	it('may take three columns to name a value: a quantity by product, line and month has all', () => {
		expect(meanings('product;line;Dated month;Good metres made\nPX15B;L1;May 2027;1200\n')).toEqual(
			['member', 'member', 'member', 'actual_metres']
		);
	});

	it('hold units by heading or by what stands in them, and words for new things', () => {
		expect(meanings('product;List price;ME\nPX15B;26,90;EUR/100 m\n')[2]).toBe('unit');
		expect(meanings('product;List price;by\nPX15B;26,90;EUR/100 m\n')[2]).toBe('unit');
		expect(meanings('product;Bezeichnung;List price\nPX15B;Rohr 15;0,5\n')[1]).toBe('label');
	});

	it('hold choices and yes or no where the quantity does', () => {
		expect(meanings('customer,Freight zone of the customer\nSkerrow,near\n')).toEqual([
			'member',
			'zone_of_customer'
		]);
		expect(meanings('option,Chosen in this scenario\nnew_line,yes\nnew_rewinder,no\n')).toEqual([
			'member',
			'chosen'
		]);
	});
});

describe('a heading', () => {
	it.each([
		['List price (EUR/100 m)', 'EUR/100 m'],
		['List price (EUR/(100 m))', 'EUR/100 m'],
		['List price [ct/m]', 'ct/m'],
		['List price, EUR/km', 'EUR/km'],
		['List price in EUR per 100 m', 'EUR per 100 m'],
		['List price EUR/100 m', 'EUR/100 m'],
		['list_price_per_1000', 'per 1000'],
		['List price per 100 m (EUR)', 'EUR/100 m'],
		['List price je 100 m (€)', '€/100 m'],
		['List price / 100 m', '/ 100 m'],
		['List price', '']
	])('%s is of the quantity and says its unit', (heading, unit) => {
		const [, column] = columnsOf(
			`product;${heading.includes(';') ? `"${heading}"` : heading}\nPX15B;26,90\n`
		);
		expect([said(column!.meaning), column!.unit]).toEqual(['list_price', unit]);
	});

	it('keeps a unit in brackets that does not fit, for the column to say why', () => {
		const [, column] = columnsOf('product;List price (USDX/m)\nPX15B;26,90\n');
		expect([said(column!.meaning), column!.unit]).toEqual(['list_price', 'USDX/m']);
	});
});

describe('the sign before decimals', () => {
	const sign = (cells: readonly string[], parter = ';') =>
		columnsOf(
			['product', 'List price'].join(parter) +
				'\n' +
				cells.map((cell, i) => [`PX1${i}B`, cell].join(parter)).join('\n')
		)[1]!.decimal;

	it('is told by the whole column: 26,90 says what 1,234 leaves open', () => {
		expect(sign(['1,234', '26,90'])).toBe(',');
		expect(sign(['1.234', '26.90'])).toBe('.');
		expect(sign(['1.234,5', '1.234'])).toBe(',');
		expect(sign(['1.234.567', '1.234'])).toBe(',');
		expect(sign(['1,234', '7'])).toBeNull();
	});

	it('is told by the other columns, and by the mark that parts them, where the column leaves it open', () => {
		expect(columnsOf('product;List price;x\nPX15B;1,234;0,5\n')[1]!.decimal).toBe(',');
		expect(sign(['"1,234"'], ',')).toBe('.');
	});
});
