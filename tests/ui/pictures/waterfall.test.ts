import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { lastClosed, monthsOf, scaleOf, waterfallOf } from '$lib/ui/pictures/waterfall/waterfall';
import {
	decimalsApart,
	sentencesOf,
	waterfallLine,
	waterfallTable,
	waterfallTitle
} from '$lib/ui/pictures/waterfall/waterfall-words';
import { findProblems } from '$lib/workbook/consistency';
import { loadWorkbook } from '$lib/workbook/load';
import { VERSION, type Picture, type Workbook } from '$lib/workbook/schema';

type Fall = Extract<Picture, { kind: 'waterfall' }>;
const picture: Fall = {
	...{ kind: 'waterfall', title: 'Close', month: 'period', closed: 'closed' },
	...{ entered: ['price_paid'], from: 'budget', steps: 'variance', to: 'result' },
	to_date: { from: 'budget_so_far', steps: 'variance_so_far', to: 'result_so_far' },
	behind: [
		{ explains: 'price', came: 'price_paid', meant: 'price_meant', weight: 'used' },
		{ explains: 'gone', came: 'price_paid', meant: 'price_meant' }
	]
};

function workbookOf(variance: Record<string, Record<string, number | null>>): Workbook {
	const periods = [
		{ id: '2027-01', label: 'January 2027' },
		{ id: '2027-02', label: 'February 2027' },
		{ id: '2027-03' }
	];
	const eur = (name: string, label: string, per: string[], value: unknown) => ({
		name,
		label,
		unit: 'EUR',
		per,
		value
	});
	const running = (name: string, of: string, per: string[]) => ({
		...{ name, label: `${of} to date`, unit: 'EUR', per },
		formula: `IF(closed; ${of}; 0[EUR]) + ${name}[period - 1 else 0[EUR]]`
	});
	const loaded = loadWorkbook(
		JSON.stringify({
			...{ format: 'metrewright', version: VERSION, title: 'Close' },
			sets: [
				{ name: 'period', label: 'Month', members: periods },
				{
					name: 'kind',
					label: 'Kind',
					members: Object.keys(variance).map((id) => ({ id, label: `Kind ${id}` }))
				},
				{ name: 'resin', label: 'Resin', members: [{ id: 'A' }, { id: 'B', label: 'resin B' }] }
			],
			sheets: [
				{
					title: 'Close',
					quantities: [
						{
							name: 'closed',
							label: 'Closed',
							type: 'yes_no',
							per: ['period'],
							value: { '2027-01': true, '2027-02': true, '2027-03': false }
						},
						eur('budget', 'Budget', ['period'], { '2027-01': 100, '2027-02': 1000, '2027-03': 50 }),
						eur('variance', 'Variance', ['kind', 'period'], variance),
						{
							name: 'result',
							label: 'Result',
							unit: 'EUR',
							per: ['period'],
							formula: 'budget + SUM(IFERROR(variance; 0[EUR]) over kind)',
							where: 'closed'
						},
						running('budget_so_far', 'budget', ['period']),
						running('variance_so_far', 'variance', ['kind', 'period']),
						{
							name: 'result_so_far',
							label: 'Result to date',
							unit: 'EUR',
							per: ['period'],
							formula: 'budget_so_far + SUM(variance_so_far over kind)'
						},
						{
							name: 'price_paid',
							label: 'Price paid',
							unit: 'EUR/kg',
							per: ['resin', 'period'],
							value: { A: { '2027-02': 1.96 }, B: { '2027-02': 2.115 } }
						},
						{
							name: 'price_meant',
							label: 'Price meant',
							unit: 'EUR/kg',
							per: ['resin'],
							value: { A: 2, B: 1.955 }
						},
						{
							name: 'used',
							label: 'Used',
							unit: 'kg',
							per: ['resin', 'period'],
							value: { A: { '2027-02': 900 }, B: { '2027-02': 1000 } }
						}
					]
				}
			],
			scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }],
			pictures: [picture]
		}),
		'close.json'
	);
	if (!loaded.ok) throw new Error(loaded.problem.line);
	return loaded.workbook;
}

const VARIANCES = {
	price: { '2027-01': -10, '2027-02': -124 },
	scrap: { '2027-01': 4, '2027-02': 30 },
	tape: { '2027-01': 0, '2027-02': 2 },
	glue: { '2027-01': 0, '2027-02': -1 }
};

function sourceOf(workbook: Workbook) {
	const model = Model.open(workbook);
	return { layout: model.layout, results: model.results('base'), faults: undefined };
}
const source = sourceOf(workbookOf(VARIANCES));
const ofMonth = (month: string, toDate = false) => waterfallOf(picture, source, month, toDate)!;

describe('a month from its budget to its result', () => {
	it('is the last that is closed, unless somebody chooses', () => {
		expect(lastClosed(monthsOf(picture, source))).toBe('2027-02');
	});

	it('goes by the largest first, what is hardly anything together, and arrives', () => {
		const { steps, from, to } = ofMonth('2027-02');
		expect(steps.map(({ id, amount }) => [id, amount])).toEqual([
			['price', -124],
			['scrap', 30],
			[null, 1]
		]);
		expect(steps.at(-1)!.holds.map(({ label }) => label)).toEqual(['Kind tape', 'Kind glue']);
		expect(steps[0]!.before).toBe(from.value);
		expect(steps.at(-1)!.after).toBe(to.value);
		expect(to.value).toBe(907);
	});

	it('says so in a title, a line, a sentence for each of the largest, with a sign beside each word', () => {
		const fall = ofMonth('2027-02');
		expect(waterfallTitle(fall, 'en')).toBe('February 2027: 93\u00a0EUR adverse');
		expect(waterfallLine(fall, 'en')).toBe('Budget 1,000\u00a0EUR, Result 907\u00a0EUR');
		expect(sentencesOf(fall, 'en')).toEqual([
			'Kind price took 124\u00a0EUR off the result: Price paid of resin B at 2.115 instead of 1.955\u00a0EUR/kg.'
				.replace('2.115', '2.12')
				.replace('1.955', '1.96'),
			'Kind scrap added 30\u00a0EUR to the result.'
		]);
		const { rows } = waterfallTable(fall);
		expect(rows.map(([label]) => label)).toEqual([
			'Budget',
			'Kind price',
			'Kind scrap',
			'Kind tape',
			'Kind glue',
			'Result'
		]);
		expect(rows.map((row) => row[2])).toEqual([
			'',
			'adverse',
			'favourable',
			'favourable',
			'adverse',
			''
		]);
	});

	it('to date names the month that most of a step came in', () => {
		expect(sentencesOf(ofMonth('2027-02', true), 'en')[0]).toBe(
			'Kind price took 134\u00a0EUR off the result: the largest part in February 2027, -124\u00a0EUR.'.replace(
				'-',
				'\u2212'
			)
		);
	});

	it('that is open has no result, and says what to do', () => {
		const fall = ofMonth('2027-03');
		expect(fall.to.kind).toBe('absent');
		expect(waterfallTitle(fall, 'en')).toBe('2027-03 is open');
		expect(waterfallLine(fall, 'en')).toMatch(/^An open month has no result/);
	});

	it('without a value in one step is drawn without it, and names it', () => {
		const holed = { ...VARIANCES, scrap: { '2027-01': 4 } } as Record<
			string,
			Record<string, number>
		>;
		const fall = waterfallOf(picture, sourceOf(workbookOf(holed)), '2027-02', false)!;
		expect(fall.without.map(({ label }) => label)).toEqual(['Kind scrap']);
		expect(fall.steps.at(-1)!.after).toBe(fall.to.value);
	});
});

describe('what is drawn', () => {
	it('lies within the picture, and nothing is cut off at its edge', () => {
		const fall = ofMonth('2027-02');
		const scale = scaleOf(fall);
		const places = [fall.from.value, fall.to.value, ...fall.steps.map(({ after }) => after)].map(
			scale.at
		);
		for (const place of places) {
			expect(place).toBeGreaterThan(0);
			expect(place).toBeLessThan(100);
		}
		expect(scale.zero).toBeNull();
	});

	it('tells two figures apart by two digits of their difference', () => {
		expect(decimalsApart(2.115, 1.955)).toBe(2);
		expect(decimalsApart(0.06625, 0.06594)).toBe(5);
		expect(decimalsApart(1200, 900)).toBe(0);
	});
});

describe('a picture whose quantities are of no month', () => {
	it('is a problem that names the field', () => {
		const workbook = workbookOf(VARIANCES);
		const bad = { ...workbook, pictures: [{ ...picture, to: 'price_meant' }] } as Workbook;
		expect(findProblems(bad).map(({ code }) => code)).toContain('picture-axes');
	});
});
