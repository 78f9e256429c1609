/** A tender as it is pasted: metres in all, per month, per year, by months; what is not known is named and kept. */
import { describe, expect, it } from 'vitest';
import { monthsCalled } from '$lib/ui/quotes/months-called';
import { callLines, metresIn, monthIn, numberIn, readTenderList } from '$lib/ui/quotes/tender-list';

const months = [
	['Jan', 'January'],
	['Feb', 'February'],
	['Mar', 'March'],
	['Apr', 'April'],
	['May'],
	['Jun', 'June'],
	['Jul', 'July'],
	['Aug', 'August'],
	['Sep', 'September'],
	['Oct', 'October'],
	['Nov', 'November'],
	['Dec', 'December']
];
const context = {
	goods: [
		{ choice: 'item', member: 'A-50', names: ['A-50', 'Pipe A, 50 m'] },
		{ choice: 'item', member: 'B-100', names: ['B-100', 'Pipe B, 100 m', 'twin'] },
		{ choice: 'item', member: 'C-25', names: ['C-25', 'twin'] }
	],
	decimal: '.' as const,
	date: '2027-11-29',
	months
};
const read = (text: string, more: Partial<typeof context> = {}) =>
	readTenderList(text, { ...context, ...more } as typeof context);

describe('numbers of a list', () => {
	it.each([
		['12,345', '.', 12345],
		['12.345', '.', 12.345],
		['12.345', ',', 12345],
		['0,285', '.', 0.285],
		['1.234,5', '.', 1234.5],
		['12 500 m', '.', 12500],
		['1,2', '.', 1.2],
		['twelve', '.', null]
	] as const)('%s with %s is %s', (text, decimal, value) => {
		expect(numberIn(text, decimal)).toBe(value);
	});
});

describe('metres of a list', () => {
	it.each([
		['15.000', '.', 15_000, true],
		['15.000 m', ',', 15_000, false],
		['15,000', '.', 15_000, false],
		['15,000', ',', 15_000, true],
		['20 km', '.', 20_000, false],
		['1.5 km', '.', 1500, false],
		['12,5', ',', 12.5, false],
		['0.500', '.', 0.5, false]
	] as const)('%s with %s are %s m', (text, decimal, value, asThousands) => {
		expect(metresIn(text, decimal)).toEqual({ value, asThousands });
	});

	it('that could be read otherwise are told', () => {
		const { lines } = read('A-50\t60.000\nB-100\t60,000');
		expect(lines.map(({ amount, remarks }) => [amount, remarks.length])).toEqual([
			[60_000, 1],
			[60_000, 0]
		]);
		expect(lines[0]!.remarks[0]).toContain('“60.000” is taken as 60000 m');
	});
});

describe('months of a list', () => {
	it.each([
		['2028-03', '2028-03'],
		['3/2028', '2028-03'],
		['March 2028', '2028-03'],
		['Mar 28', '2028-03'],
		// From 29 November 2027 on.
		['March', '2028-03'],
		['Nov', '2027-11'],
		['2028-13', null],
		['spring', null]
	])('%s is %s', (text, month) => expect(monthIn(text, context)).toBe(month));
});

describe('call-offs, a line each', () => {
	it('are months with metres, with either mark between thousands', () => {
		expect(callLines('2028-03 15.000\n\nApril: 5,000 m', context)).toEqual({
			calls: [
				{ month: '2028-03', amount: 15_000 },
				{ month: '2028-04', amount: 5000 }
			]
		});
	});
	it('are refused by the line that is none', () => {
		expect(callLines('2028-03 15000\nspring 5000', context)).toEqual({ bad: 'spring 5000' });
	});
});

describe('what months are called', () => {
	it('is their name in full and short, in English and in the reader’s language', () => {
		expect(monthsCalled(9, 'de-DE')).toEqual(['October', 'Oct', 'Oktober', 'Okt']);
	});
});

describe('a tender list', () => {
	it('takes a sheet with a heading: metres in all, over months, at a price that is asked', () => {
		const { lines, problem } = read(
			'Item\tMetres\tCall-off\tPrice asked\nA-50\t60,000\tMar–May 2028\t0.285\nPipe B, 100 m\t12,000\t2028-04: 4000, 2028-06: 8000\t'
		);
		expect(problem).toBeNull();
		expect(lines[0]).toMatchObject({
			...{ line: 2, goods: { choice: 'item', member: 'A-50' }, amount: 60_000, price: 0.285 },
			calls: ['2028-03', '2028-04', '2028-05'].map((month) => ({ month, amount: 20_000 })),
			remarks: []
		});
		expect(lines[1]).toMatchObject({
			goods: { member: 'B-100' },
			amount: 12_000,
			calls: [
				{ month: '2028-04', amount: 4000 },
				{ month: '2028-06', amount: 8000 }
			],
			price: null
		});
	});

	it('takes metres per month and per year', () => {
		const monthly = read('article;metres per month;months;price\nA-50;10000;2028-01..2028-03;0,285')
			.lines[0]!;
		expect(monthly.amount).toBe(30_000);
		expect(monthly.price).toBe(0.285);
		const yearly = read('article;metres;per;months\nA-50;120000;year;2028-01..2028-06').lines[0]!;
		expect(yearly.amount).toBe(60_000);
		// Without months: the twelve after the day of the quote, and it says so.
		const open = read('article;m/year\nA-50;120000').lines[0]!;
		expect(open.calls).toHaveLength(12);
		expect(open.calls![0]).toEqual({ month: '2027-12', amount: 10_000 });
		expect(open.remarks.join()).toContain('2027-12 to 2028-11');
	});

	it('takes a column for each month', () => {
		const { lines } = read('Item,2028-01,Feb 2028,2028-03,EUR/m\nA-50,5000,,7000,0.3');
		expect(lines[0]).toMatchObject({
			amount: 12_000,
			price: 0.3,
			calls: [
				{ month: '2028-01', amount: 5000 },
				{ month: '2028-03', amount: 7000 }
			]
		});
	});

	it('needs no heading', () => {
		expect(read('A-50;20000;2028-02;0.31').lines[0]).toMatchObject({
			...{ line: 1, amount: 20_000, price: 0.31 },
			calls: [{ month: '2028-02', amount: 20_000 }]
		});
	});

	it('names what it does not know, by line, and loses none', () => {
		const { lines } = read(
			'Item;Metres;When;Price\nFoo 16x2;5000;2028-02;0.3\ntwin;5000;2028-02;0.3\nA-50;some;spring;cheap\n'
		);
		expect(lines.map(({ line }) => line)).toEqual([2, 3, 4]);
		expect(lines[0]).toMatchObject({ text: 'Foo 16x2', goods: null, amount: 5000, price: 0.3 });
		expect(lines[0]!.remarks.join()).toContain('“Foo 16x2”');
		expect(lines[1]!.remarks.join()).toContain('Two things are called “twin”');
		expect(lines[2]).toMatchObject({ amount: null, calls: null, price: null });
		for (const word of ['“some”', '“spring”', '“cheap”'])
			expect(lines[2]!.remarks.join()).toContain(word);
	});

	it('says that nothing, or a heading alone, was pasted', () => {
		expect(read('  \n').problem).toContain('Nothing');
		expect(read('Item;Metres').problem).toContain('heading');
	});

	it('holds to the months where they come to another sum', () => {
		const line = read('Item;Metres;2028-01;2028-02\nA-50;9000;5000;5000').lines[0]!;
		expect(line.amount).toBe(10_000);
		expect(line.remarks.join()).toContain('9000');
	});
});
