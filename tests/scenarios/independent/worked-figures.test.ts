/**
 * The independent model itself, held against figures worked by hand for the invented plant before any
 * program existed (printed digits, so each is held to half of its last one), against ranges that are
 * common practice without a source, and against the identities that a closed account must keep.
 */
import { describe, expect, it } from 'vitest';
import { crosslinkedKg } from './cost';
import { averageTariff, kWhPerMetre } from './energy';
import { crossing, rateOfReturn } from './investment';
import { modelOf, type Plan } from './model';
import { averagePremium, headsPerPost } from './people';
import { allYear, productOf, products, SCENARIOS, settingOf, sum } from './plant';
import { netLineHours, restarts, scheduledHours } from './time';
import { at, worksOf } from './works';

/**
 * The year for which the figures were worked: good metres by line and product, so that the cards weigh
 * the lines as the hand did.
 */
const WORKED: Readonly<Record<string, Readonly<Record<string, number>>>> = {
	L1: { PX10B: 4700000, PX15P: 1406073, PX15B: 415922 },
	L2: { PX15P: 3524844, PX15B: 5202716 },
	L3: { PX15B: 7781362, PX22B: 540573 },
	L4: { PX22B: 3559427, PX28B: 1550000 },
	L5: { PB10B: 3287779, PB15B: 5362986 },
	L6: { PB15B: 2737014, PB22B: 2700000, PB28B: 850000 },
	L7: { RT15B: 7400000 }
};
const asWorked: Plan = () => ({
	made: Object.entries(WORKED).flatMap(([line, products]) =>
		Object.entries(products).map(([product, metres]) => ({ line, product, metres }))
	),
	holding: 0
});

const base = modelOf('base', asWorked);
const today = base.years[0]!;
const card = at(base.cards, 'PX15B');
const pipe = at(base.pipes, 'PX15B');
const run = at(at(base.runs, 'L2'), 'PX15B');

describe('hours and people', () => {
	it('schedules 242 days of 24 h for a resource on three shifts, five days', () => {
		// 261 weekdays − 10 shutdown − 9 holidays = 242 days; × 24 h
		expect(scheduledHours(allYear('5x24'))).toBe(5808);
	});

	it('leaves 5,587 h after maintenance and restarts', () => {
		// 5808 − 12 × 8 − 50 × 2.5
		expect(netLineHours({ roster: allYear('5x24') })).toBe(5587);
	});

	it('adds the weekends outside the shutdown, and takes away the restarts, round the clock', () => {
		// 104 Saturdays and Sundays − 2 in the shutdown = 102 days; 5808 + 102 × 24
		expect(scheduledHours(allYear('7x24'))).toBe(8256);
		expect(netLineHours({ roster: allYear('7x24') })).toBe(8256 - 96);
	});

	it('adds the weekends of July to November alone where the crews come then', () => {
		const l2 = settingOf('weekend_crews_jul_nov').lines.find(({ id }) => id === 'L2')!;
		// 22 Saturdays and 22 Sundays from July to November, less one each in the shut-down: 42 days × 24 h
		expect(scheduledHours(l2.roster)).toBe(5808 + 42 * 24);
		// 97 of the 242 working weekdays fall in these months, and no week of theirs has a start
		expect(restarts(l2.roster)).toBeCloseTo(50 * (1 - 97 / 242), 9);
	});

	it('needs 3.55 heads for a post and 39 for the eleven', () => {
		// 5808 × (1 + 0.25 / 8) ÷ (2080 − 393)
		expect(headsPerPost).toBeCloseTo(3.55, 2);
		expect(Math.round(base.pools.people.heads)).toBe(39);
	});

	it('pays the highest premium of an hour and stacks none', () => {
		expect(averagePremium('5x24')).toBeCloseTo((8 / 24) * 0.25, 12);
		// Saturday night stays at 25 %, Sunday night at 50 %.
		expect(averagePremium('weekend-48')).toBeCloseTo((0.25 + 0.5) / 2, 12);
	});

	it('buys power cheaper round the clock than on weekdays', () => {
		// (6 × 0.198 + 10 × 0.162 + 8 × 0.118) ÷ 24
		expect(averageTariff('5x24')).toBeCloseTo(3.752 / 24, 12);
		expect(averageTariff('7x24')).toBeCloseTo((5 * 3.752 + 48 * 0.112) / 168, 12);
	});
});

describe('PX15B on L2', () => {
	it('is set at a wall of 1.650 mm and weighs 0.0659 kg/m', () => {
		// 1.5 + 0.055 + 3 × √(0.030² + 0.010²)
		expect(pipe.wallSetPoint).toBeCloseTo(1.65, 3);
		expect(pipe.massPerMetre).toBeCloseTo(0.0659, 4);
	});

	it('runs at 30.3 m/min, 120 kg/h, limited by cooling', () => {
		// 60 × 11 ÷ (8 × 1.65²)
		expect(run.speed).toBeCloseTo(30.3, 1);
		expect(run.limitedBy).toBe('cooling');
		expect(Math.round(60 * run.speed * pipe.massPerMetre)).toBe(120);
	});

	it('makes 1,640 good metres a running hour, 1,617 after breakdowns', () => {
		expect(Math.round(run.goodPerRunningHour)).toBe(1640);
		expect(Math.round(run.goodPerHour)).toBe(1617);
	});
});

describe('the cost card of PX15B, weighted over its lines', () => {
	it.each([
		['material', 0.1624],
		['scrap', 0.0067],
		['energy', 0.0096],
		['packaging', 0.0162],
		['variable', 0.1949],
		['lineLabour', 0.0177],
		['lineOverhead', 0.0377],
		['crosslinking', 0.0139],
		['rewindLabour', 0.0177],
		['rewindOverhead', 0.0145],
		['perMetre', 0.2965]
	] as const)('%s is %f EUR/m', (item, eur) => {
		expect(card[item]).toBeCloseTo(eur, 4);
	});

	it('comes to 14.82 EUR for a coil of 50 m', () => {
		expect(card.perCoil).toBeCloseTo(14.82, 2);
	});
});

describe('the year', () => {
	it('earns about 9 % of revenue before rebate', () => {
		const revenue = base.results[0]!.revenue;
		expect(base.ebit / revenue).toBeGreaterThan(0.085);
		expect(base.ebit / revenue).toBeLessThan(0.095);
	});

	it.each(SCENARIOS.map((id) => modelOf(id, asWorked)))(
		'$scenario closes both ways',
		({ ebit, fullCost }) => {
			expect(Math.abs(fullCost.ebit - ebit)).toBeLessThan(0.01);
			expect(Math.abs(fullCost.absorbed + fullCost.idle - fullCost.pools)).toBeLessThan(0.01);
		}
	);

	it('leaves no idle cost at cross-linking, whose pool is divided by the planned kilograms', () => {
		const { fullCost } = base;
		expect(fullCost.idle).toBeCloseTo(fullCost.idleLine + fullCost.idleRewind, 6);
		expect(crosslinkedKg(worksOf('base'), today)).toBeGreaterThan(0);
	});
});

describe('what is plausible in the trade (common practice, no source)', () => {
	it.each(products.map((product) => product.id))(
		'%s carries 7 to 9 % more than its thinnest wall',
		(id) => {
			const { giveaway } = at(base.pipes, id);
			expect(giveaway).toBeGreaterThan(0.07);
			expect(giveaway).toBeLessThan(0.09);
		}
	);

	it.each(products.map((product) => product.id))(
		'%s needs about 2 %% less material when gauged',
		(id) => {
			const gauged = at(modelOf('better_gauging', asWorked).pipes, id);
			const saved = 1 - gauged.materialCost / at(base.pipes, id).materialCost;
			expect(saved).toBeGreaterThan(0.015);
			expect(saved).toBeLessThan(0.025);
		}
	);

	it('spends about 60 % of factory cost on material', () => {
		const spent = (of: 'material' | 'perMetre') =>
			sum(today.made.map((made) => made.metres * at(base.cards, made.product)[of]));
		expect(spent('material') / spent('perMetre')).toBeCloseTo(0.6, 1);
	});

	it('scraps 3 to 6 % of what it extrudes', () => {
		const extruded = sum(
			today.made.map((made) => made.metres * at(at(base.runs, made.line), made.product).kgExtruded)
		);
		const good = sum(
			today.made.map((made) => made.metres * at(base.pipes, made.product).massPerMetre)
		);
		expect(1 - good / extruded).toBeGreaterThan(0.03);
		expect(1 - good / extruded).toBeLessThan(0.06);
	});

	it('burns 10 to 40 % of its power as base load', () => {
		const process = sum(
			today.made.map((made) => {
				const ran = at(at(base.runs, made.line), made.product);
				const line = settingOf('base').lines.find(({ id }) => id === made.line)!;
				const kWh = kWhPerMetre(productOf(made.product), at(base.pipes, made.product), ran, line);
				return made.metres * kWh;
			})
		);
		const { baseKWh } = base.pools.site;
		expect(baseKWh / (baseKWh + process)).toBeGreaterThan(0.1);
		expect(baseKWh / (baseKWh + process)).toBeLessThan(0.4);
	});

	it.each(base.lines)('%s is 75 to 88 % effective over its planned busy time', (line) => {
		const made = today.made.filter((made) => made.line === line);
		const ran = (one: { product: string }) => at(at(base.runs, line), one.product);
		const ideal = sum(made.map((made) => made.metres / (60 * ran(made).speed)));
		// Planned busy: the hours its metres take, set-up and breakdowns included, and 125 h of restarts.
		const busy = sum(made.map((made) => made.metres * ran(made).hoursPerMetre)) + 125;
		expect(restarts(allYear('5x24')) * 2.5).toBeCloseTo(125, 9);
		expect(ideal / busy).toBeGreaterThan(0.75);
		expect(ideal / busy).toBeLessThan(0.88);
	});
});

describe('rates and paybacks', () => {
	it('finds 10 % where 100 grows to 121 in two years', () => {
		expect(rateOfReturn([-100, 0, 121])).toBeCloseTo(0.1, 9);
	});

	it('finds no rate where nothing comes back, and none where two would do', () => {
		expect(rateOfReturn([-100, -10])).toBeNull();
		// −100 + 230 ÷ 1.1 − 132 ÷ 1.1² = 0, and the same at 20 %
		expect(rateOfReturn([-100, 230, -132])).toBeNull();
	});

	it('crosses in the middle of the year that brings twice what is missing', () => {
		expect(crossing([-100, 60, 80])).toBeCloseTo(1.5, 12);
		expect(crossing([-100, 60])).toBeNull();
		expect(crossing([10, 20])).toBeNull();
	});
});
