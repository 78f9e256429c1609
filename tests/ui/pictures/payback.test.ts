import { describe, expect, it } from 'vitest';
import { CIRCULAR, DIVIDES_BY_ZERO, NO_ANSWER } from '$lib/engine/state';
import {
	cashRange,
	casesOf,
	largestCash,
	nothingDrawn,
	outcomeOf,
	whyNoRate,
	yearsShown
} from '$lib/ui/pictures/payback/payback';
import { cautionsOf } from '$lib/ui/pictures/payback/payback-cautions';
import { paybackChart, paybackFrame } from '$lib/ui/pictures/payback/payback-chart';
import type { Colours } from '$lib/ui/figure/colour-tokens';
import { lineOf } from '$lib/ui/figure/open';
import { coloured, colouringFrom, colourOf, markOf } from '$lib/ui/figure/scenario-colours';
import {
	FIGURE_COLUMNS,
	paybackTable,
	rowFigure,
	subLine
} from '$lib/ui/pictures/payback/payback-table';
import { paybackLine, paybackSummary, paybackTitle } from '$lib/ui/pictures/payback/payback-words';
import { cases as workbook, openWith, paybackPicture as picture, type Written } from './hand';

const none = { state: NO_ANSWER };
const years = (values: readonly number[]) =>
	Object.fromEntries(values.map((value, at) => [`y${at}`, value]));

/** 1,000,000 out, 400,000 back a year: after 2.5 years it is back, and 600,000 ahead at the end. */
const line: Written = {
	cash: years([-1e6, -6e5, -2e5, 2e5, 6e5]),
	cash_discounted: years([-1e6, -6.4e5, -3e5, 0, 2.8e5]),
	...{ payback: 2.5, discounted_payback: 3, outlay: 1e6, npv: 2.8e5, irr: 21.9, annual: 9e4 },
	...{ life: 4, small: 0 }
};
/** 1,200,000 out, 800,000 back a year: 1.5 years. */
const both: Written = {
	...line,
	cash: years([-1.2e6, -4e5, 4e5, 1.2e6]),
	cash_discounted: years([-1.2e6, -5e5, 1.5e5, 7e5]),
	...{ payback: 1.5, discounted_payback: 1.77, outlay: 1.2e6, life: 3 }
};
const rewinder: Written = {
	cash: years([-4e5, -4.2e5, -4.4e5, -4.6e5, -4.8e5]),
	cash_discounted: years([-4e5, -4.2e5, -4.3e5, -4.4e5, -4.5e5]),
	...{ payback: none, discounted_payback: none, outlay: 4e5, npv: -4.5e5, irr: none },
	...{ annual: -1.4e5, life: 4, small: 0 }
};
const base: Written = { outlay: 0, payback: none, discounted_payback: none, npv: 0, life: 4 };
const all = { base, line, both, rewinder };

function casesWith(written: Readonly<Record<string, Written>>, selectedScenario = 'base') {
	const open = openWith(workbook, written, selectedScenario);
	return { open, found: casesOf({ picture, ...open }) };
}
const titleOf = (written: Readonly<Record<string, Written>>, selectedScenario = 'base') =>
	paybackTitle(casesWith(written, selectedScenario).found, 'en');

describe('the finding', () => {
	it('names what is back soonest while the base is in hand', () => {
		expect(titleOf(all)).toBe(
			'Line and rewinder would pay back soonest, in 1.5 years; New rewinder never would'
		);
	});
	it('compares the scenario in hand with the one that it stands on', () => {
		expect(titleOf(all, 'both')).toBe(
			'Line and rewinder would pay back in 1.5 years, sooner than New line alone at 2.5'
		);
		expect(titleOf({ ...all, both: { ...both, payback: 2.9 } }, 'both')).toBe(
			'Line and rewinder would pay back in 2.9 years, later than New line alone at 2.5'
		);
		expect(titleOf({ ...all, line: { ...rewinder } }, 'both')).toBe(
			'Line and rewinder would pay back in 1.5 years, which New line alone never would'
		);
	});
	it('says of the scenario in hand that it never would, and which one does', () => {
		expect(titleOf(all, 'rewinder')).toBe(
			'New rewinder would not pay back within its life of 4 years; Line and rewinder would in 1.5'
		);
	});
	it('says of money that is back too late for what capital costs that it does not earn that', () => {
		const late = { ...line, npv: -1e5 };
		expect(titleOf({ base, line: late }, 'line')).toBe(
			'New line would pay back in 2.5 years, and would not earn its cost of capital'
		);
		expect(titleOf({ ...all, both: { ...both, npv: -1 } }, 'both')).toBe(
			'Line and rewinder would pay back in 1.5 years, sooner than New line alone at 2.5, and would not earn its cost of capital'
		);
	});
	it('says when none would', () => {
		expect(titleOf({ base, line: rewinder, both: rewinder, rewinder })).toBe(
			'No scenario would pay back within its life'
		);
		expect(titleOf({ base, line, both: rewinder, rewinder }, 'line')).toBe(
			'New line would pay back in 2.5 years; two others never would'
		);
	});
	it('says that no scenario has an outlay, or that they are being computed', () => {
		expect(titleOf({ base, line: base, both: base, rewinder: base })).toBe(
			'No scenario has an investment'
		);
		expect(titleOf({ base })).toBe('The scenarios are being computed');
	});
	it('makes no finding of an error', () => {
		const broken = { ...line, payback: { state: DIVIDES_BY_ZERO } };
		expect(titleOf({ ...all, line: broken }, 'line')).toBe('New line has no payback to show');
	});
	it('says what is drawn, in which unit', () => {
		const { open } = casesWith(all);
		expect(paybackLine(open.layout, picture, { factor: 0.001, unit: 'kEUR' })).toBe(
			'Cumulative cash by year of the case, kEUR, for each scenario that has an investment'
		);
	});
});

describe('the line under a finding', () => {
	it('names the scenario whose figures stand there, where there are several', () => {
		const { open } = casesWith(all);
		expect(lineOf(open, 'both', 'in EUR')).toBe('In Line and rewinder. in EUR');
		const { workbook: own } = open.layout;
		const alone = { ...open.layout, workbook: { ...own, scenarios: own.scenarios.slice(0, 1) } };
		expect(lineOf({ layout: alone }, 'base', 'In EUR')).toBe('In EUR');
	});
});

describe('the cases', () => {
	it('are those with an outlay; the others are named', () => {
		const { found } = casesWith(all);
		expect(found.cases.map((case_) => case_.id)).toEqual(['line', 'both', 'rewinder']);
		expect(found.without).toEqual(['Base']);
	});
	it('have their colours in order, whichever is in hand', () => {
		const colours = (selectedScenario: string) =>
			casesWith(all, selectedScenario).found.cases.map((case_) => case_.colour);
		expect(colours('both')).toEqual([1, 2, 3]);
		expect(colours('base')).toEqual([1, 2, 3]);
	});
	it('keep their colours when another goes or comes, and a newcomer takes one that is free', () => {
		const open = openWith(workbook, all, 'base');
		const { colours } = casesOf({ picture, ...open });
		const without = openWith(workbook, { ...all, line: base }, 'base');
		const fewer = casesOf({ picture, ...without, colours });
		expect(fewer.cases.map(({ id, colour }) => [id, colour])).toEqual([
			['both', 2],
			['rewinder', 3]
		]);
		const kept = colouringFrom(JSON.parse(JSON.stringify(fewer.colours)));
		expect(coloured(kept, ['new', 'both', 'rewinder'])).toMatchObject({ new: 1, both: 2 });
		expect(coloured({}, ['a', 'b', 'c', 'd', 'e', 'f', 'g'])).toMatchObject({ e: 5, f: 6, g: 7 });
		expect(colouringFrom({ a: 1, b: 0, c: 'red' })).toEqual({ a: 1 });
		expect(colouringFrom(null)).toEqual({});
	});
	it('are told apart twenty times over: five colours, then the same with marks on their lines', () => {
		const looks = Array.from({ length: 20 }, (_, i) => `${colourOf(i + 1)} ${markOf(i + 1)}`);
		expect(new Set(looks).size).toBe(20);
		expect(looks.slice(4, 6)).toEqual(['5 null', '1 rect']);
		const open = openWith(workbook, all, 'base');
		const { cases } = casesOf({ picture, ...open, colours: { line: 1, both: 6 } });
		const { datasets } = paybackChart(
			cases,
			{ factor: 1, unit: 'EUR' },
			paybackFrame(1000),
			{ scenario1: 'vermilion', scenario2: 'blue' } as Colours,
			'en'
		).data;
		expect(
			datasets.map((line) => [line.label, line.borderColor, line.pointStyle, line.pointRadius])
		).toEqual(
			[
				['line', 'vermilion', 'circle', 0],
				['both', 'vermilion', 'rect', 4],
				['rewinder', 'blue', 'circle', 0]
			].flatMap(([id, ...look]) => {
				const { title } = cases.find((one) => one.id === id)!;
				return [title, `${title}, discounted`].map((label) => [label, ...look]);
			})
		);
	});
	it('stand under heads that have room for their words', () => {
		// Common practice, no source: a letter of a bold grotesque is on average under half its size wide.
		for (const { label, width } of Object.values(FIGURE_COLUMNS))
			expect(width, label).toBeGreaterThan(8 * label.length);
	});
	it('end their lines with their life', () => {
		const [first, second] = casesWith(all).found.cases;
		expect(first!.simple.points).toHaveLength(5);
		expect(second!.simple.points.at(-1)).toEqual({ x: 3, y: 1.2e6 });
		expect(second!.simple.broken).toBeNull();
		expect(yearsShown(casesWith(all).found.cases)).toBe(4);
	});
	it('break off at a year without a value, and do not jump over it', () => {
		const cash = { ...years([-1e6, -6e5, 0, 2e5, 6e5]), y2: { state: CIRCULAR } };
		const [first] = casesWith({ ...all, line: { ...line, cash } }).found.cases;
		expect(first!.simple.points.map((point) => point.x)).toEqual([0, 1]);
		expect(first!.simple.broken?.kind).toBe('error');
	});
	it('stay in the picture when their outlay is an error', () => {
		const broken = { ...line, outlay: { state: CIRCULAR } };
		expect(casesWith({ ...all, line: broken }).found.cases[0]!.outlay.kind).toBe('error');
	});
	it('tell never from nothing to pay back', () => {
		const cash = years([0, 1e5, 2e5, 3e5, 4e5]);
		const [first] = casesWith({ ...all, line: { ...line, cash, payback: none } }).found.cases;
		expect(outcomeOf(first!)).toBe('nothing-to-pay');
		expect(outcomeOf(casesWith(all).found.cases[2]!)).toBe('never');
	});
	it('span from the lowest to the highest amount', () => {
		const { cases } = casesWith(all).found;
		expect(cashRange(cases)).toEqual({ low: -1.2e6, high: 1.2e6 });
		expect(largestCash(cases.slice(2))).toBe(4.8e5);
	});
});

describe('the figures of a row', () => {
	const scale = { factor: 0.001, unit: 'kEUR' };
	const figure = (id: string, name: Parameters<typeof rowFigure>[1], written = all) =>
		rowFigure(
			casesWith(written).found.cases.find((case_) => case_.id === id)!,
			name,
			scale,
			'en'
		);
	it('give years, thousands and signs', () => {
		expect(figure('line', 'payback').text).toBe('2.5');
		expect(figure('line', 'outlay').text).toBe('1,000');
		expect(figure('line', 'npv').text).toBe('+280');
		expect(figure('rewinder', 'annualValue').text).toBe('−140');
	});
	it('say never and none where there is no answer', () => {
		expect(figure('rewinder', 'payback')).toMatchObject({
			...{ text: 'never', kind: 'answer', isMissing: false }
		});
		expect(figure('rewinder', 'irr')).toMatchObject({
			...{ text: 'none', kind: 'answer', isMissing: true }
		});
	});
	it('say No value with whose error', () => {
		const broken = { ...all, line: { ...line, npv: { state: DIVIDES_BY_ZERO } } };
		expect(figure('line', 'npv', broken)).toEqual({
			...{ text: 'No value', kind: 'error', because: 'error of npv itself', isMissing: false }
		});
	});
	it('say what the scenario stands on and how long it lives', () => {
		const [, second] = casesWith(all).found.cases;
		expect(subLine(second!, 'en')).toBe('on New line, 3 years');
	});
});

describe('cautions', () => {
	const cautions = (written: Readonly<Record<string, Written>>) => {
		const { open, found } = casesWith(written);
		return cautionsOf(found, { picture, ...open });
	};
	it('say why there is no rate of return', () => {
		expect(cautions(all)).toContainEqual({
			about: 'New rewinder:',
			text: 'no rate of return: no year brings money back, so no rate fits.'
		});
	});
	it('count the turns of cash where more than one rate could fit', () => {
		// Out 100, in 230, out 132: two turns.
		const points = [
			{ x: 0, y: -100 },
			{ x: 1, y: 130 },
			{ x: 2, y: -2 }
		];
		expect(whyNoRate({ points, broken: null })).toContain('turns between in and out 2 times');
	});
	it('bring the workbook’s own, by scenario or for all', () => {
		const small = { about: 'New line:', text: 'A small outlay says little.' };
		expect(cautions({ ...all, line: { ...line, small: 1 } })).toContainEqual(small);
		const every = Object.fromEntries(
			Object.entries(all).map(([id, one]) => [id, { ...one, small: 1 }])
		);
		expect(cautions(every)).toContainEqual({ ...small, about: '' });
	});
	it('say once what holds of all', () => {
		const broken = { ...line, cash: { y0: { state: CIRCULAR } } };
		const same = { base, line: broken, both: broken, rewinder: broken };
		const found = casesWith(same).found.cases;
		expect(nothingDrawn(found)?.because).toBe('error of cumulative cash itself');
		expect(nothingDrawn(casesWith(all).found.cases)).toBeNull();
		expect(cautions(same)).toEqual([
			{ about: '', text: 'not drawn in full: error of cumulative cash itself. Fix that first.' }
		]);
	});
	it('warn of lives that differ', () => {
		expect(cautions(all).at(-1)!.text).toMatch(/^The lives differ, 3 to 4 years/);
		expect(
			cautions({ base, line, both: line, rewinder }).some((caution) => /lives/.test(caution.text))
		).toBe(false);
	});
	it('say which case is not drawn in full', () => {
		const broken = { ...line, payback: { state: DIVIDES_BY_ZERO } };
		expect(cautions({ ...all, line: broken })).toContainEqual({
			about: 'New line:',
			text: 'not drawn in full: error of payback itself. Fix that first.'
		});
	});
});

describe('what goes along', () => {
	it('holds every figure in its own unit and the totals by year, empty after the end of life', () => {
		const { open, found } = casesWith(all);
		const table = paybackTable(found, open.layout, picture);
		expect(table.columns.slice(0, 10)).toEqual([
			...['Scenario', 'Built on', 'Life, year', 'Payback, year', 'Payback, discounted, year'],
			...['Investment, EUR', 'Net present value, EUR', 'Rate of return, % a year'],
			...['Annual value, EUR/year', 'Cumulative, year 0, EUR']
		]);
		expect(table.rows[1]!.slice(9, 14)).toEqual([-1.2e6, -4e5, 4e5, 1.2e6, null]);
		expect(table.rows[2]!.slice(3, 9)).toEqual(['never', 'never', 4e5, -4.5e5, 'none', -1.4e5]);
	});
	it('says the cases in words, in the conditional', () => {
		const text = paybackSummary(casesWith(all).found, { factor: 0.001, unit: 'kEUR' }, 'en');
		expect(text).toBe(
			'New line, investment 1,000 kEUR, would pay back after 2.5 years, discounted 3.0, and would end at +600 kEUR after 4 years. ' +
				'Line and rewinder, investment 1,200 kEUR, would pay back after 1.5 years, discounted 1.8, and would end at +1,200 kEUR after 3 years. ' +
				'New rewinder, investment 400 kEUR, would not pay back within its life, and would end at −480 kEUR after 4 years. ' +
				'Without an investment: Base.'
		);
	});
});
