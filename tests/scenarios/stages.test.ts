/** Load by stage and month in the shipped plant, drums in circulation, rounds of a line, and how the limit moves. */
import { describe, expect, it } from 'vitest';
import { enter, openShipped, read, wanted, type Entry } from '../reference/shipped';
import { modelOf } from './independent/model';
import { plant, productOf, products, sum } from './independent/plant';
import { chamberHours, rewindHours } from './independent/time';
import { at } from './independent/works';
import { WorkbookFigures } from './workbook-figures';
import { planOf } from './workbook-plan';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const STAGES = ['extrude', 'rewind', 'crosslink'];
/** Working weekdays of each month of 2027, counted in a calendar: holidays and 2 to 13 August taken out. */
const WEEKDAYS = [20, 20, 21, 22, 19, 22, 22, 12, 22, 20, 21, 21];

describe('load by month', () => {
	const model = openShipped('marram');
	const base = modelOf('base', planOf(new WorkbookFigures('scenarios/marram-coil-works.json')));
	const seasons: Record<string, number[]> = plant.seasonality;
	const sold = (product: string, month: number) => {
		const { demand_m, season } = productOf(product);
		return demand_m * seasons[season]![month]!;
	};

	it('counts 242 working weekdays', () => {
		expect(sum(WEEKDAYS)).toBe(242);
	});

	it.each(base.lines)(
		'%s carries its part of each month, over the net hours of the month',
		(line) => {
			const made = base.years[0]!.made;
			MONTHS.forEach((name, month) => {
				const due = sum(
					[...at(base.runs, line)].map(([product, run]) => {
						const own = made.find((made) => made.line === line && made.product === product);
						const share = (own?.metres ?? 0) / at(base.goodMetres, product);
						return sold(product, month) * share * run.hoursPerMetre;
					})
				);
				const offered = (5587 * WEEKDAYS[month]!) / 242;
				expect(read(model, 'line_load_by_month', line, name), name).toBeCloseTo(
					(100 * due) / offered,
					6
				);
			});
		}
	);

	it('of rewinders and chambers is that of all that is sold in the month', () => {
		MONTHS.forEach((name, month) => {
			const hours = (need: (product: string) => number) =>
				sum(products.map(({ id }) => sold(id, month) * need(id)));
			const rewinding = hours((id) => rewindHours(productOf(id)) ?? 0);
			const chambers = hours(
				(id) => chamberHours(productOf(id), at(base.pipes, id).wallSetPoint) ?? 0
			);
			const offered = 3 * 24 * WEEKDAYS[month]!;
			// the batch that runs on alone each weekend, of middling length
			const last = ((50 * WEEKDAYS[month]!) / 242) * read(model, 'mean_batch_time');
			expect(read(model, 'load_by_month', 'rewind', name)).toBeCloseTo(
				(100 * rewinding) / offered,
				6
			);
			expect(read(model, 'load_by_month', 'crosslink', name)).toBeCloseTo(
				(100 * chambers) / (3 * (24 * WEEKDAYS[month]! + last) * 0.97),
				6
			);
		});
	});

	it('is highest on L5, and in August, which has two weeks of shut-down', () => {
		for (const month of MONTHS) expect(read(model, 'limiting_line', month)).toBe(4);
		const loads = MONTHS.map((month) => read(model, 'load_by_month', 'extrude', month));
		expect(Math.max(...loads)).toBe(loads[7]);
	});

	it('leaves hours short that earlier months must make ahead', () => {
		const line = (name: string, month: string) => read(model, name, 'L7', month);
		// L7 is short in August and October only
		const short = MONTHS.filter((month) => line('line_hours_short', month) > 0);
		expect(short).toEqual(['Aug', 'Oct']);
		// what August lacks, and what October lacks beyond the room of September, is there by July
		const room = line('net_hours_of_month', 'Sep') - line('line_hours_due', 'Sep');
		expect(line('line_hours_ahead', 'Sep')).toBeCloseTo(line('line_hours_short', 'Oct'), 9);
		expect(line('line_hours_ahead', 'Jul')).toBeCloseTo(
			line('line_hours_short', 'Aug') + line('line_hours_short', 'Oct') - room,
			9
		);
		expect(line('line_hours_ahead', 'Dec')).toBe(0);
	});
});

describe('the limit moves', () => {
	it('to the chambers when the plant sells thick cross-linked pipe', () => {
		const model = openShipped('marram');
		expect(STAGES[read(model, 'limiting_stage', 'Oct')]).toBe('extrude');
		const before = read(model, 'load_by_month', 'crosslink', 'Oct');
		enter(model, ['mix_change', ['PX22B'], 100]);
		expect(read(model, 'load_by_month', 'crosslink', 'Oct')).toBeGreaterThan(before + 20);
	});

	it('to the rewinders when coils are short', () => {
		const model = openShipped('marram');
		// 15 mm pipe in coils of 25 m instead of 100: four times the fixed seconds
		const short = (item: string): Entry => ['length_of_item', [item], 25];
		enter(
			model,
			...['PB15B-50', 'PB15B-100', 'PB15B-100-U', 'PB15B-200', 'PX15B-50', 'PX15B-50-T'].map(short),
			...['PX15B-100', 'PX15B-200', 'PB10B-50', 'PB10B-100', 'PB10B-200'].map(short),
			...['PX10B-50', 'PX10B-100', 'PX10B-200'].map(short)
		);
		expect(STAGES[read(model, 'limiting_stage', 'Oct')]).toBe('rewind');
	});

	it('away from the rewinders when a product is coiled in line', () => {
		const model = openShipped('marram');
		const before = read(model, 'load_by_month', 'rewind', 'Oct');
		const drums = read(model, 'drums_in_circulation', 'Oct');
		enter(model, ['route_of_product', ['PB15B'], 'inline']);
		expect(read(model, 'load_by_month', 'rewind', 'Oct')).toBeLessThan(before);
		expect(read(model, 'drums_in_circulation', 'Oct')).toBeLessThan(drums);
		expect(() => read(model, 'coil_cycle', 'PB15B')).toThrow('state 1');
	});

	it('with the product: each has the stage that would hold it back alone', () => {
		const model = openShipped('marram');
		// PB10B on L5 alone: 5,587 h over its hours a metre, in millions
		const alone = 5587 / read(model, 'hours_per_metre', 'PB10B', 'L5') / 1000;
		expect(read(model, 'sole_capacity', 'PB10B', 'extrude')).toBeCloseTo(alone, 6);
		expect(STAGES[read(model, 'limiting_stage_of_product', 'PB10B')]).toBe('extrude');
		enter(model, ['chambers', [], 1]);
		expect(STAGES[read(model, 'limiting_stage_of_product', 'PX22B')]).toBe('crosslink');
	});
});

describe('drums in circulation', () => {
	it('are those filled in an hour times the hours each is away', () => {
		const model = openShipped('marram');
		// Only PB28B: 850,000 m × 9.2 % in October ÷ 500 m, over 730 h
		for (const { id } of products) if (id !== 'PB28B') enter(model, ['mix_change', [id], -100]);
		const filled = (850_000 * 0.092) / 500 / 730;
		const wind = 0.5 * read(model, 'line_hours_of_product', 'PB28B'); // 0.5 km a drum
		const rewind = 0.5 * read(model, 'rewind_need', 'PB28B');
		expect(read(model, 'drum_turn_round', 'PB28B')).toBeCloseTo(wind + 96 + rewind, 9);
		expect(read(model, 'drums_in_circulation', 'Oct')).toBeCloseTo(
			filled * (wind + 96 + rewind),
			9
		);
	});

	it('limit the month when there are too few of them', () => {
		const model = openShipped('marram');
		expect(read(model, 'bottleneck_of_month', 'Oct')).toBe(0);
		enter(model, ['drums_owned', [], 200]);
		expect(read(model, 'bottleneck_of_month', 'Oct')).toBe(3);
	});
});

describe('a round of a line', () => {
	it('goes from thin to thick and back, each set-up from the matrix', () => {
		const model = openShipped('marram');
		const setup = (from: string, to: string) => read(model, 'setup_between', from, to);
		expect(setup('PB15B', 'PB15B')).toBe(0.5); // print or coil
		expect(setup('PB15B', 'PB22B')).toBe(2.2); // size
		expect(setup('PB22B', 'PB15B')).toBeCloseTo(2.2 + 0.4, 12); // and from thick to thin
		expect(setup('PX15P', 'PX15B')).toBe(1.5); // the barrier comes on
		expect(setup('PX15B', 'PB15B')).toBe(4.5); // another polymer; the colour goes with it
		expect(setup('PB15B', 'PX15B')).toBeCloseTo(4.5 + 0.7, 12); // and from dark to light
		// L6: 15, 22, 28 mm and back to 15
		expect(read(model, 'wheel_setup', 'L6')).toBeCloseTo(2.2 + 2.2 + (2.2 + 0.4), 12);
		// L7 runs one product: what changes is print or coil
		expect(read(model, 'wheel_setup', 'L7')).toBe(0.5);
	});

	it('takes a set-up that the plant knows better before the rule', () => {
		const model = openShipped('marram');
		enter(model, ['entered_setup', ['PB28B', 'PB15B'], 5]);
		expect(read(model, 'setup_between', 'PB28B', 'PB15B')).toBe(5);
		expect(read(model, 'wheel_setup', 'L6')).toBeCloseTo(2.2 + 2.2 + 5, 12);
	});

	it('leaves out what is too little for campaigns, and follows another order', () => {
		const model = openShipped('marram');
		enter(model, ...wanted(model, 'PB22B', 100_000));
		expect(read(model, 'in_campaign', 'PB22B', 'L6')).toBe(0);
		expect(read(model, 'wheel_setup', 'L6')).toBeCloseTo(2.2 + 2.6, 12);
		const turned = openShipped('marram');
		enter(turned, ['campaign_order', ['PB28B', 'L6'], 2], ['campaign_order', ['PB22B', 'L6'], 3]);
		// 15, 28, 22 mm and back to 15: twice from thick to thin
		expect(read(turned, 'wheel_setup', 'L6')).toBeCloseTo(2.2 + 2.6 + 2.6, 12);
		enter(turned, ['campaign_order', ['PB22B', 'L6'], 2]);
		// Which of them is first matters once one of them runs in campaigns.
		expect(read(turned, 'place_is_clear', 'PB22B', 'L6')).toBe(1);
		enter(turned, ['campaign_chosen', ['PB22B', 'L6', '12 a year'], true]);
		expect(read(turned, 'place_is_clear', 'PB22B', 'L6')).toBe(0);
	});
});
