import { describe, expect, it } from 'vitest';
import { OK } from '$lib/engine/state';
import { runBridge } from '$lib/studies/bridge';
import { askStudy } from '$lib/studies/ask-study';
import type { SwingResult } from '$lib/studies/sensitivity';
import type { RiskResult } from '$lib/studies/risk-result';
import { VERSION, type Workbook } from '$lib/workbook/schema';
import type { Study, StudyOf } from '$lib/workbook/study-schema';
import { UnitSystem } from '$lib/units/system';
import {
	bridgeRows,
	bridgeTitle,
	changeOf,
	stepSentences
} from '$lib/ui/studies/kinds/bridge/words';
import {
	breakEvenNotes,
	breakEvenSummary,
	breakEvenTitle
} from '$lib/ui/studies/kinds/break-even/words';
import { histogramOf } from '$lib/ui/studies/kinds/risk/histogram';
import { mapPicture, mapTable, mapTitle } from '$lib/ui/studies/kinds/map/words';
import { separation } from '$lib/ui/studies/kinds/optimise/words';
import { inSentence } from '$lib/ui/studies/names';
import { movedText } from '$lib/ui/studies/range-words';
import {
	faultSentences,
	riskFacts,
	riskTitle,
	shareAtLeast,
	sharedWords
} from '$lib/ui/studies/kinds/risk/words';
import {
	elasticityText,
	mostElastic,
	sensitivityTable,
	sensitivityTitle,
	swingRows
} from '$lib/ui/studies/kinds/sensitivity/words';
import { percentText, shownFor } from '$lib/ui/studies/shown';

const { system: units } = UnitSystem.create([]);
const workbook: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Shop',
	sets: [{ name: 'line', label: 'Line', members: [{ id: 'L1' }, { id: 'L2' }] }],
	sheets: [
		{
			title: 'One',
			quantities: [
				{ name: 'price', label: 'Price', unit: 'EUR/m', value: 10 },
				{ name: 'metres', label: 'Metres', unit: 'm', per: ['line'], value: { L1: 60, L2: 40 } },
				{ name: 'rent', label: 'Rent', unit: 'EUR', value: 400 },
				{
					name: 'profit',
					label: 'Profit',
					unit: 'EUR',
					formula: 'price * SUM(metres over line) - rent'
				},
				{ name: 'root', label: 'Root of profit', formula: 'SQRT(profit / rent)' }
			]
		}
	],
	scenarios: [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{
			id: 'dear',
			title: 'Dear',
			parent: 'base',
			changes: [
				{ quantity: 'price', value: 12 },
				{ quantity: 'metres', value: { L1: 50 } }
			]
		}
	]
};
const shown = shownFor(units, { unit: 'EUR' }, 1000, 'en');
const head = { name: 's', title: 'S', quantity: 'profit', scenario: 'base' } as const;
function answered<S extends Study>(study: S) {
	const found = askStudy(workbook, study);
	if (!found.ok) throw new Error(found.problem.message);
	return found.value;
}

describe('figures', () => {
	it('are in thousands where they are long, and rounded to what the quantity bears', () => {
		const large = shownFor(units, { unit: 'EUR' }, 1_105_216, 'en');
		expect(large.whole(1_105_215.6)).toBe('1,105 kEUR');
		expect(large.signedWhole(-248_477)).toBe('−248 kEUR');
		expect(large.whole(NaN)).toBe('no value');
		expect(large.number(0.00001)).toBe('0');
	});

	it('are percentages that never say all or nothing where it is not so', () => {
		expect([0, 0.0004, 0.031, 0.65, 0.9999, 1].map((share) => percentText(share, 'en'))).toEqual([
			...['0 %', 'less than 0.1 %', '3.1 %', '65 %', 'more than 99.9 %', '100 %']
		]);
	});

	it('of an input are values, percentages of a factor, or signed amounts', () => {
		expect(movedText({ mode: 'set' }, 2.7426, 'en')).toBe('2.7426');
		expect(movedText({ mode: 'scale' }, 1.118907, 'en')).toBe('+11.891 %');
		expect(movedText({ mode: 'add' }, -0.5, 'en')).toBe('−0.5');
	});

	it('go with names that begin small in a sentence, unless they are more than a word', () => {
		expect(['Net present value', 'EBIT', 'PX15B'].map(inSentence)).toEqual([
			...['net present value', 'EBIT', 'PX15B']
		]);
	});
});

describe('a bridge in words', () => {
	const study: StudyOf<'bridge'> = {
		...{ name: 's', title: 'S', kind: 'bridge', quantity: 'profit' },
		...{ from: 'base', to: 'dear' }
	};
	const found = runBridge(workbook, study);
	if (!found.ok) throw new Error(found.problem.message);
	const result = found.value;

	it('names the difference and the step that makes most of it', () => {
		// 12 × 90 − 400 = 680 against 600; price 2 × (100 + 90) / 2, metres −10 × (10 + 12) / 2.
		expect(bridgeTitle(workbook, study, result, shown)).toBe(
			'Profit rises by 80 EUR, most of all through price'
		);
	});

	it('has one sentence for each step', () => {
		expect(stepSentences(workbook, study, result, shown).map(({ text }) => text)).toEqual([
			'Price (10 to 12 EUR/m) raises profit by 190 EUR.',
			'Metres of L1 (60 to 50 m) lowers profit by 110 EUR.'
		]);
	});

	it('says of a frozen copy what no input of it explains', () => {
		const since = { label: 'Other formulas since Budget', cells: [], since: 'Budget' };
		const step = { ...since, value: -20, standardError: null };
		const held = { ...result, parts: [step, ...result.parts] };
		expect(stepSentences(workbook, study, held, shown)[0]!.text).toBe(
			"Other formulas since Budget: today's model, with all inputs that Budget holds, makes 20 EUR of a difference to the profit that it holds, and this step lowers it by as much."
		);
		const none = { ...result, parts: [{ ...step, value: 0 }] };
		expect(stepSentences(workbook, study, none, shown)[0]!.text).toBe(
			"Other formulas since Budget: today's model, with all inputs that Budget holds, makes the profit that it holds."
		);
		expect(changeOf(workbook, step, 'en')).toBe('no input');
	});

	it('runs from one scenario to the other, each bar where the one before it ended', () => {
		const rows = bridgeRows(workbook, study, result, shown);
		expect(rows.map(({ name, bars }) => [name, bars[0]!.from, bars[0]!.to])).toEqual([
			['Base', 0, 600],
			['Price', 600, 790],
			['Metres', 790, 680],
			['Dear', 0, 680]
		]);
	});
});

describe('swings in words', () => {
	const study: StudyOf<'sensitivity'> = {
		...{ ...head, kind: 'sensitivity' },
		inputs: [
			{ quantity: 'rent', mode: 'scale', low: 0.9, high: 1.1 },
			{ quantity: 'price', mode: 'set', low: 9, high: 12 }
		]
	};

	it('name what decides, the widest first, the lower result to the left', () => {
		const result = answered(study);
		if (result.kind !== 'sensitivity') throw new Error(result.kind);
		expect(sensitivityTitle(workbook, study, result, shown)).toBe(
			'Price decides: it moves profit by 300 EUR'
		);
		// 100 m × 9 − 400 and × 12 − 400; rent dearer by 10 % is the lower end.
		expect(
			swingRows(workbook, study, result, shown).map(({ name, note, end }) => [name, note, end])
		).toEqual([
			['Price', '9 to 12 EUR/m', '300'],
			['Rent', '+10 to −10 %', '80']
		]);
	});

	it('say what one per cent less does only where it is not about the opposite of one per cent more', () => {
		const words = (elasticity: number | null, elasticityLess: number | null) =>
			elasticityText({ elasticity, elasticityLess }, 'en');
		expect(words(1.3, -1.3)).toBe('+1.30 %');
		expect(words(1, -1.09)).toBe('+1.00 %');
		expect(words(1, -1.11)).toBe('+1.00 %; one per cent less: −1.11 %');
		expect(words(16.6, -46.5)).toBe('+16.6 %; one per cent less: −46.5 %');
		expect(words(0, 0.001)).toBe('0.00 %');
		expect(words(null, -2)).toBe('no value; one per cent less: −2.00 %');
	});

	it('are listed by what one per cent of them does, either way', () => {
		const result = answered(study);
		if (result.kind !== 'sensitivity') throw new Error(result.kind);
		const [rent, price] = ['Rent', 'Price'].map((label) =>
			result.swings.find((swing) => swing.label.toLowerCase() === label.toLowerCase())!
		) as [SwingResult, SwingResult];
		const dull = { ...price, elasticity: 1, elasticityLess: -1 };
		const kinked = { ...rent, elasticity: 0, elasticityLess: 4 };
		const idle = { ...rent, elasticity: null, elasticityLess: null };
		expect(mostElastic([dull, idle, kinked])).toEqual([kinked, dull]);
		// A case has as many columns in the table as a swing.
		const table = sensitivityTable(workbook, study, {
			...result,
			cases: [{ label: 'Bad', result: result.base }]
		});
		expect(table.rows.map((row) => row.length)).toEqual([9, 9, 9]);
	});
});

it('a runner-up is so much lower or higher than the best, never "at" the difference', () => {
	const study: StudyOf<'optimise'> = {
		...{ ...head, kind: 'optimise', direction: 'highest' },
		options: [
			{
				label: 'Price',
				alternatives: [
					{ label: 'as now', changes: [] },
					{ label: 'dear', changes: [{ quantity: 'price', value: 12 }] }
				]
			}
		]
	};
	const [now, dear] = [600, 800].map((value, i) => ({
		...{ choice: [i], value, state: OK, limits: [], isWithin: true }
	}));
	expect(separation(study, dear!, now!, shown)).toBe('200 EUR lower: Price as now, not dear');
	expect(separation(study, now!, dear!, shown)).toBe('200 EUR higher: Price dear, not as now');
	expect(separation(study, { ...now!, value: 800 }, dear!, shown)).toBe(
		'as good, to the digits shown: Price dear, not as now'
	);
});

it('a map says where it is highest, and marks where the inputs stand', () => {
	const study: StudyOf<'map'> = {
		...{ ...head, kind: 'map' },
		across: { quantity: 'price', mode: 'set', from: 8, to: 12, steps: 3 },
		down: { quantity: 'rent', mode: 'scale', from: 0.5, to: 1.5, steps: 3 }
	};
	const result = answered(study);
	if (result.kind !== 'map') throw new Error(result.kind);
	expect(mapTitle(workbook, study, result, shown)).toBe(
		'Profit goes from 200 to 1,000 EUR, highest at price 12 EUR/m and rent −50 %'
	);
	const picture = mapPicture(workbook, study, result, shown);
	expect(picture.rows.map(({ cells }) => cells.map(({ isToday }) => isToday))).toEqual([
		[false, false, false],
		[false, true, false],
		[false, false, false]
	]);
	expect(picture.rows[1]!.cells[1]).toMatchObject({ text: '600', shade: 2 });
	const odd = { ...result, across: [0.85 + 1e-16, 1, 1.15], down: [0.1 + 0.2, 1, 1.5] };
	const table = mapTable(workbook, study, odd, { locale: 'de' });
	expect(table.columns).toEqual(['Rent', '0,85', '1', '1,15']);
	expect(table.rows.map(([row]) => row)).toEqual(['−70 %', '0 %', '+50 %']);
});

it('a break-even says where the target is met', () => {
	const study: StudyOf<'break_even'> = {
		...{ ...head, kind: 'break_even', target: 0 },
		input: { quantity: 'price', mode: 'set', from: 1, to: 10 }
	};
	const result = answered(study);
	if (result.kind !== 'break_even') throw new Error(result.kind);
	expect(breakEvenTitle(workbook, study, result, shown)).toBe(
		'Profit meets 0 EUR at price 4 EUR/m'
	);
	const none = { ...study, target: 5000 };
	const other = answered(none);
	if (other.kind !== 'break_even') throw new Error(other.kind);
	expect(breakEvenTitle(workbook, none, other, shown)).toBe(
		'No price from 1 to 10 EUR/m brings profit to 5,000 EUR'
	);
	const still = { ...other, steady: 600 };
	expect(breakEvenTitle(workbook, none, still, shown)).toBe(
		'Profit stays at 600 EUR whatever price is from 1 to 10 EUR/m: choose an input that it depends on'
	);
	const spans = [
		{ from: 1, to: 2.5 },
		{ from: 4, to: 4 }
	];
	const gaps = { ...result, without: { spans, reason: 'It divides by zero.' } };
	const notes = breakEvenNotes(workbook, study, gaps, shown);
	expect(notes).toEqual([
		'As it stands: 600 EUR at price 10 EUR/m.',
		'With price from 1 to 2.5 EUR/m, at 4 EUR/m the result has no value: the curve has a gap there. It divides by zero.'
	]);
	expect(breakEvenSummary('Profit meets 0 EUR', notes.slice(0, 1))).toBe(
		'Profit meets 0 EUR. As it stands: 600 EUR at price 10 EUR/m.'
	);
});

describe('a risk study in words', () => {
	const study: StudyOf<'risk'> = {
		...{ ...head, kind: 'risk', quantity: 'root', draws: 400, seed: 1 },
		inputs: [
			{
				...{ label: 'Price', quantity: 'price', mode: 'set' },
				distribution: { kind: 'uniform', min: 3.5, max: 8.5 }
			}
		],
		target: { at_least: 0.5 }
	};
	const result = answered(study) as RiskResult;
	const plain = shownFor(units, undefined, 1, 'en');

	it('counts the draws that meet the target among all', () => {
		// Met from 100 × price − 400 = 0.25 × 400 on: price 5 of 3.5 to 8.5, 70 %.
		expect(riskTitle(workbook, study, result, plain)).toBe('70 chances in 100 of at least 0.500');
		expect(riskFacts(study, result, plain)[0]).toMatchObject({ value: '70 %', strong: true });
	});

	it('says how many draws have no answer, where that arose and why', () => {
		// No root below price 4: a tenth of the draws.
		const [first, second] = faultSentences(workbook, study, result, 'en');
		expect(first).toContain('Root of profit has no answer in 10 % of draws (40 of 400).');
		expect(second).toMatch(/^40 arose in Root of profit\. Draw \d+: .*\.$/);
	});

	it('draws columns that miss the target hatched, and the chance where the target stands', () => {
		const drawn = histogramOf(result, null, study.target, 1, {
			width: 600,
			height: 300,
			right: 60
		})!;
		const level = drawn.target!;
		expect(level.share).toBeCloseTo(0.7, 2);
		for (const bar of drawn.bars)
			if (bar.height > 8) expect(bar.hatch !== '').toBe(bar.x + bar.width / 2 < level.x - 0.5);
		expect(drawn.y(level.share)).toBe(level.y);
	});

	it('says why shares can add up to more than all of it, where inputs go together', () => {
		const pair = { between: ['Price', 'Rent'] as [string, string], rank: 0.5 };
		expect(sharedWords({ correlations: [pair] })).toContain('can add up to more than 100 %');
		expect(sharedWords({})).toBe('');
		expect(sharedWords({ correlations: [{ ...pair, rank: 0 }] })).toBe('');
	});

	it('reads the share of draws at or above a value from the curve', () => {
		const even = Array.from({ length: 101 }, (_, i) => i);
		expect([-1, 0, 25.5, 100, 101].map((value) => shareAtLeast(even, value))).toEqual([
			...[1, 1, 0.745, 0, 0]
		]);
		expect(shareAtLeast(even, NaN)).toBeNull();
	});
});
