/** Cautions that name the figures which mislead without them: who is warned, of whom, and where it is mended. */
import { describe, expect, it } from 'vitest';
import { cellAt } from '$lib/engine/layout';
import { NO_ANSWER } from '$lib/engine/state';
import { saidBeside } from '$lib/ui/said-beside';
import { saidOf } from '$lib/ui/pictures/said';
import { casesOf } from '$lib/ui/pictures/payback/payback';
import { ranked } from '$lib/ui/pictures/payback/payback-rank';
import { rowFigure } from '$lib/ui/pictures/payback/payback-table';
import { paybackSummary, paybackTitle } from '$lib/ui/pictures/payback/payback-words';
import {
	cases as workbook,
	openWith,
	paybackPicture as picture,
	type Written
} from './pictures/hand';

const unlike = (...at: number[]) =>
	Object.fromEntries([0, 1, 2, 3, 4].map((year) => [`y${year}`, at.includes(year) ? 1 : 0]));
const line: Written = {
	cash: { y0: -10, y1: 0, y2: 10, y3: 20, y4: 30 },
	cash_discounted: { y0: -10, y1: -1, y2: 8, y3: 16, y4: 24 },
	...{ payback: 1, discounted_payback: 1.1, outlay: 10, npv: 24, irr: 90, annual: 7, life: 4 },
	...{ small: 0, unlike: unlike() }
};
const base: Written = { outlay: 0, payback: { state: NO_ANSWER }, npv: 0, unlike: unlike() };
const doubtful = { ...line, payback: 0.5, unlike: unlike(1, 2) };
const open = openWith(workbook, { base, line, both: doubtful, rewinder: line }, 'both');
const { layout, results } = open;
const payback = new Set(['payback']);

describe('a caution that names its figures', () => {
	it('is said beside them where it holds, and beside no other', () => {
		expect(saidBeside(layout, results.get('both'), payback)).toHaveLength(1);
		expect(saidBeside(layout, results.get('both'), new Set(['irr', 'outlay']))).toEqual([]);
		expect(saidBeside(layout, results.get('line'), payback)).toEqual([]);
		expect(saidBeside(layout, undefined, payback)).toEqual([]);
		expect(saidBeside(layout, results.get('both'))).toHaveLength(1);
	});

	it('names whom it holds for, a few of many, and nobody where it holds for all of many', () => {
		const textOf = (...at: number[]) => {
			const here = openWith(workbook, { base: { ...base, unlike: unlike(...at) } });
			return saidBeside(here.layout, here.results.get('base'), payback)[0]?.text;
		};
		expect(textOf(1, 2)).toBe('Demand is not the same: y1, y2');
		expect(textOf(0, 1, 2, 3)).toBe('Demand is not the same: y0, y1, y2 and 1 more');
		expect(textOf(0, 1, 2, 3, 4)).toBe('Demand is not the same');
	});

	it('leads to the inputs that mend it, at the member that it holds for, in its scenario', () => {
		const [said] = saidBeside(layout, results.get('both'), payback);
		const at = (name: string, ...ordinals: number[]) => cellAt(layout.byName.get(name)!, ordinals);
		// What a formula gives cannot be entered.
		expect(said?.ways).toEqual([
			{
				...{ quantity: 'demand', text: 'Demand of the year' },
				...{ cell: at('demand', 1), scenario: 'both' }
			},
			{ quantity: 'outlay', text: 'outlay', cell: at('outlay'), scenario: 'both' }
		]);
	});

	it('is said over a picture that draws them, of every scenario that it shows', () => {
		expect(saidOf(picture, open).map(({ text }) => text)).toEqual([
			'Line and rewinder: Demand is not the same: y1, y2. No comparison.'
		]);
		const other = { ...open, results: new Map([...results, ['both', results.get('line')!]]) };
		expect(saidOf(picture, other)).toEqual([]);
	});
});

describe('the payback picture', () => {
	const all = casesOf({ picture, ...open });
	const scale = { factor: 1, unit: 'EUR' };

	it('makes no finding of a case that is no comparison', () => {
		expect(paybackTitle(all, 'en')).toBe('Line and rewinder: demand is not the same: y1, y2');
		expect(paybackSummary(all, scale, 'en')).toContain(
			'Line and rewinder, investment 10.00 EUR, is no case to read: demand is not the same: y1, y2'
		);
		// It would be back soonest, but for what is cautioned.
		const others = casesOf({ picture, ...open, selectedScenario: 'base' });
		expect(paybackTitle(others, 'en')).toBe('New line would pay back soonest, in 1.0 years');
	});

	it('ranks it last', () => {
		expect(ranked(all.cases, 'payback').map(({ id }) => id)).toEqual(['line', 'rewinder', 'both']);
	});

	it('tells of the scenario in hand why it has no case, and not of the best of the others', () => {
		const none = { ...base, unlike: unlike(3) };
		const here = openWith(workbook, { base, line, both: line, rewinder: none }, 'rewinder');
		const found = casesOf({ picture, ...here });
		expect(found.without).toContain('New rewinder');
		expect(paybackTitle(found, 'en')).toBe('New rewinder: demand is not the same: y3');
	});

	it('says none, not never, where there is no payback to a case that is none', () => {
		const one = { ...doubtful, payback: { state: NO_ANSWER } };
		const here = openWith(workbook, { base, line, both: one, rewinder: line }, 'both');
		const case_ = casesOf({ picture, ...here }).cases.find(({ id }) => id === 'both')!;
		expect(rowFigure(case_, 'payback', scale, 'en').text).toBe('none');
	});
});
