import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import type { DecisionReason, RequirementReason } from '$lib/programmes/inquiry/questions';
import { amountsFor } from '$lib/ui/programmes/amounts';
import {
	amountText,
	fewestDecimals,
	lotFor,
	percentText,
	shareText
} from '$lib/ui/programmes/numbers';
import { perUnit, reasonView } from '$lib/ui/programmes/reason-view';
import { placeLabel } from '$lib/ui/programmes/labels';
import { statementView } from '$lib/ui/programmes/statement-view';
import { staleCells, stalePlans } from '$lib/ui/programmes/stale-plans';
import { planCounts, standingOf } from '$lib/ui/programmes/standing';
import { texts } from '$lib/ui/programmes/texts';
import { curvePoints, worthDecimals, worthText } from '$lib/ui/programmes/worth';
import type { PlanReport } from '$lib/browser/solver-messages';
import { smallPlant } from '../programmes/small-plant';

const workbook = smallPlant();
const layout = layOut(workbook);
const told = { layout, locale: 'en-GB', money: 'EUR', each: [] };
const cell = (name: string, at: string): number => {
	const { base, count } = layout.byName.get(name)!;
	return Array.from({ length: count }, (_, i) => base + i).find(
		(one) => placeLabel(layout, one) === at
	)!;
};

it('a plan brings what is largest, and comes to what is smallest', () => {
	expect(texts.finding('Base', '7 EUR', true, false)).toBe('Base: the best plan brings 7 EUR');
	expect(texts.finding('Base', '7 EUR', false, true)).toBe('Base: the plan comes to 7 EUR');
});

describe('figures of a plan', () => {
	it('have their unit, no decimals from a thousand on, and no zeros behind', () => {
		expect(amountText(1234.56, 'h', 'en-GB')).toBe('1,235 h');
		expect(amountText(12.345, 'EUR/h', 'en-GB', 3)).toBe('12.3 EUR/h');
		expect(amountText(299.9999999, 'm', 'en-GB')).toBe('300 m');
		expect(amountText(0.5, '1', 'en-GB')).toBe('0.5');
	});

	it('are told by the lot in which they can be read', () => {
		expect([lotFor(0.364, -0.25), lotFor(236), lotFor(0), lotFor(0.00052)]).toEqual([
			100, 1, 1, 100_000
		]);
	});

	it('are never rounded to all or to nothing', () => {
		expect([0.997, 0.9999, 0.004, 0, 0.5].map(shareText)).toEqual([
			'99 %',
			'100 %',
			'<1 %',
			'0 %',
			'50 %'
		]);
	});

	it('of how far a plan may be from the best are rounded upwards', () => {
		expect([0, 0.000012, 0.0101].map(percentText)).toEqual(['0 %', '0.01 %', '1.01 %']);
	});

	it('have the fewest decimals that all of them need', () => {
		expect(fewestDecimals([900.0000001, 300], 1)).toBe(0);
		expect(fewestDecimals([900.25, 300], 2)).toBe(2);
	});
});

describe('many more', () => {
	it('is asked in round amounts up to half of what is there', () => {
		expect(amountsFor(702)).toEqual([5, 50, 100, 500]);
		expect(amountsFor(100)).toEqual([1, 5, 20, 50]);
	});

	it('is drawn from nothing to the best, and leaves out what has no plan', () => {
		const points = [
			{ amount: 5, gain: 95 },
			{ amount: 10, gain: 190 },
			{ amount: 20, gain: null }
		];
		expect(curvePoints(points, 100, 50)).toEqual([
			{ x: 0, y: 50 },
			{ x: 50, y: 25 },
			{ x: 100, y: 0 }
		]);
	});

	it('has three digits for the largest of its table', () => {
		const cells = [16.04, 0.3].map((value) => ({
			...{ cell: 0, at: [], state: 0 },
			value,
			isPinned: false
		}));
		const decimals = worthDecimals([{ key: '', label: '', down: {}, cells }]);
		expect([16.04, 0.3, 0].map((value) => worthText(value, decimals, 'en-GB'))).toEqual([
			'16.0',
			'0.3',
			'0'
		]);
		// Too little for these decimals is told as such, not as nothing.
		expect(worthText(0.004, decimals, 'en-GB')).toBe('<\u00a00.1');
		expect(worthText(-0.004, decimals, 'en-GB')).toBe('>\u00a0−0.1');
		expect(worthText(0.05, decimals, 'en-GB')).toBe('0.1');
	});
});

describe('why not more of a decision', () => {
	const reason: DecisionReason = {
		kind: 'decision',
		cell: cell('sold', 'B, feb'),
		...{ value: 1100, lower: 0, upper: Infinity, isPinned: false, own: 2, gain: 0 },
		takes: [
			{
				cell: cell('stock_holds', 'B, feb'),
				...{ unit: 'm', amount: 1, price: 2, loss: 2 },
				ways: [
					{
						cell: cell('made', 'B, L2, feb'),
						...{ gain: -0.5, own: -0.5 },
						takes: [
							{ cell: cell('hours_hold', 'L2, feb'), unit: 'h', amount: 0.2, price: 10, loss: 2 }
						]
					}
				]
			}
		]
	};

	it('says what a lot more brings and takes, line by line, and what is left', () => {
		const view = reasonView(reason, told);
		expect(view.title).toBe('sold: B, feb');
		expect(view.lead).toBe(
			'1,100 m in the plan. 10 m more would bring just what it takes of scarce things: nothing is left over.'
		);
		expect(view.sum.map(({ label, amount }) => `${label}: ${amount}`)).toEqual([
			'10 m more, by itself: +20 EUR',
			'takes 10 m of stock_holds: B, feb, worth 2 EUR/m: −20 EUR',
			'In sum: 0 EUR'
		]);
	});

	it('says by which ways it could be had, and what would have to change', () => {
		const view = reasonView(reason, told);
		expect(view.others.map(({ label, amount }) => `${label}: ${amount}`)).toEqual([
			'made: B, L2, feb: −5 EUR'
		]);
		expect(view.others[0]!.lines.map(({ label }) => label)).toEqual([
			'by itself',
			'takes 2 h of hours_hold: L2, feb, worth 10 EUR/h'
		]);
		expect(view.change).toBe(
			'What would have to change: there must be more room in hours_hold: L2, feb (worth 10 EUR/h).'
		);
	});

	it('tells what does not pay by how much, and of what is held that it is held', () => {
		const idle = { ...reason, value: 0, gain: -0.3, takes: [] };
		expect(reasonView(idle, told).lead).toBe(
			'Not chosen. 10 m more would cost 3 EUR in sum: what it takes is worth more than it brings.'
		);
		expect(reasonView(idle, told).change).toBe(
			'What would have to change: 3 EUR more must be left of 10 m.'
		);
		const held = reasonView({ ...reason, isPinned: true }, told);
		expect(held.lead).toMatch(/^Held at 1,100 m by an entry\./);
		expect(held.change).toMatch(/let the figure go/);
	});
});

describe('why something is not used', () => {
	const reason: RequirementReason = {
		kind: 'requirement',
		cell: cell('hours_hold', 'L2, jan'),
		rows: [
			{
				room: {
					cell: cell('hours_hold', 'L2, jan'),
					...{ way: 'most', used: 60, there: 100, unit: 'h', shares: [] }
				},
				price: 0
			}
		],
		takers: [
			{ cell: cell('made', 'B, L2, jan'), value: 300, amount: 0.2, gain: -0.004, isPinned: false }
		]
	};

	it('says how much is free, and what each that could take it lacks', () => {
		const view = reasonView(reason, told);
		expect(view.lead).toBe('40 h of 100 h are free, so one more would be worth nothing.');
		expect(view.others.map(({ label, amount }) => `${label}: ${amount}`)).toEqual([
			'made: B, L2, jan, now 300 m: −40 EUR for 10,000 m more'
		]);
	});

	it('says of what is full what one more is worth', () => {
		const room = { ...reason.rows[0]!.room, used: 100 };
		const view = reasonView({ ...reason, rows: [{ room, price: 19 }] }, told);
		expect(view.lead).toBe('All 100 h are used: one more would be worth 19 EUR/h.');
	});

	it('has units of worth that can be read', () => {
		expect([perUnit('EUR', 'h'), perUnit('EUR', '1'), perUnit('EUR', 'kg/h')]).toEqual([
			'EUR/h',
			'EUR',
			'EUR/(kg/h)'
		]);
	});
});

describe('a programme as sums', () => {
	const sum = (name: string, at: string, factor: number) => ({ cell: cell(name, at), factor });
	const view = statementView(
		{
			...{ decisions: 14, requirements: 12, factors: 26, whole: 0, apart: 1 },
			objective: {
				cell: layout.byName.get('contribution')!.base,
				constant: -40,
				terms: [sum('sold', 'A, jan', 3), sum('stock', 'A, jan', -0.1)],
				more: 6
			},
			samples: [
				{
					cell: cell('hours_hold', 'L1, jan'),
					constant: 0,
					terms: [sum('made', 'A, L1, jan', 0.1), sum('made', 'B, L1, jan', 1)],
					...{ more: 0, way: 'most', bound: 100, unit: 'h' }
				}
			]
		},
		layout,
		'en-GB',
		true
	);

	it('says how large it is, and each sum with its bound in its unit', () => {
		expect(view.size).toBe('14 decisions, 12 requirements, 26 factors.');
		expect(view.objective.label).toBe('As large as can be: contribution');
		expect(view.objective.terms.join(' ')).toBe(
			'3 × sold: A, jan − 0.1 × stock: A, jan and 6 more − 40'
		);
		expect(view.samples[0]!.terms.join(' ')).toBe('0.1 × made: A, L1, jan + made: B, L1, jan');
		expect(view.samples[0]!.bound).toBe('≤ 100 h');
	});
});

describe('how a plan stands', () => {
	const [programme] = workbook.programmes!;
	const plan = {
		programme: 'allocation',
		scenario: 'base',
		digest: 'd',
		objective: 7000,
		values: []
	};
	const report: PlanReport = { proven: 2, of: 2, unplanned: [], kept: [] };
	const standing = (book: typeof workbook, busy: boolean, heard: PlanReport | null) =>
		standingOf(book, programme!, 'base', { busy, report: heard });

	it('is best, being planned, or none', () => {
		const planned = { ...workbook, plans: [plan] };
		expect(standing(planned, false, report)).toEqual({ is: 'best', plan });
		expect(standing(planned, true, report)).toEqual({ is: 'planning', plan });
		expect(standing(workbook, false, report)).toEqual({ is: 'none', plan: null });
	});

	it('is refused with its reason, and keeps the plan of before', () => {
		const unplanned = [{ programme: 'allocation', scenario: 'base', message: 'It has no plan.' }];
		expect(standing({ ...workbook, plans: [plan] }, false, { ...report, unplanned })).toEqual({
			is: 'refused',
			plan,
			because: 'It has no plan.'
		});
	});

	it('is kept, with what that costs where the best has become better', () => {
		const kept = { ...plan, kept: '2027-05-06' };
		const book = { ...workbook, plans: [kept] };
		const since = { is: 'kept', plan: kept, since: '2027-05-06' };
		expect(standing(book, false, report)).toEqual({ ...since, short: 0, fits: true });
		const short = (best: number, fits: boolean) => ({
			...report,
			kept: [{ programme: 'allocation', scenario: 'base', best, kept: 7000, fits }]
		});
		const outdone = standing(book, false, short(7270, true));
		expect(outdone).toEqual({ ...since, short: 270, fits: true });
		// As good, by rounding.
		const even = standing(book, false, short(7000.000001, true));
		expect(even).toEqual({ ...since, short: 0, fits: true });
		expect(standing(book, false, short(6300, false))).toMatchObject({ fits: false });
	});

	it('marks what is refused, and what is kept and outdone; while it is being made, all', () => {
		const unplanned = [{ programme: 'allocation', scenario: 'base', message: '' }];
		const kept = (best: number) => [
			{ programme: 'allocation', scenario: 'more_hours', best, kept: 1, fits: true }
		];
		const of = (report: PlanReport, isSlow = false) =>
			stalePlans(workbook, { isSlow, report }).map(({ scenario, because }) => [scenario, because]);
		expect(of({ ...report, unplanned, kept: kept(2) })).toEqual([
			['base', 'refused'],
			['more_hours', 'kept']
		]);
		expect(of({ ...report, kept: kept(1) })).toEqual([]);
		expect(of(report, true)).toEqual(workbook.scenarios.map(({ id }) => [id, 'planning']));
		expect(staleCells(workbook, { isSlow: false, report, resting: new Map() })).toBeNull();
	});

	it('is counted over all programmes and scenarios', () => {
		const unplanned = [{ programme: 'allocation', scenario: 'base', message: '' }];
		const short = [{ programme: 'allocation', scenario: 'more', best: 2, kept: 1, fits: true }];
		expect(planCounts({ proven: 8, of: 8, unplanned, kept: short })).toEqual({
			proven: 6,
			kept: 1,
			stale: 1
		});
	});
});
