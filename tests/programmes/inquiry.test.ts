/** What a reader asks about a plan, on a plant that is solved by hand. */
import { beforeAll, describe, expect, it } from 'vitest';
import { membersOf, quantityOf } from '$lib/engine/layout';
import { Model } from '$lib/engine/model';
import { Solver } from '$lib/programmes/highs';
import { Inquiry } from '$lib/programmes/inquiry/inquiry';
import type { AnswerTo, Question } from '$lib/programmes/inquiry/questions';
import { planAll } from '$lib/programmes/plan-all';
import type { Workbook } from '$lib/workbook/schema';
import { smallPlant, withQuantity } from './small-plant';

let solver: Solver;
beforeAll(async () => {
	solver = await Solver.load();
});

const where = { programme: 'allocation', scenario: 'base', members: [] };

function open(workbook: Workbook) {
	const model = Model.open(workbook);
	for (const planned of planAll(solver, model)) expect(planned.problems).toEqual([]);
	const inquiry = new Inquiry(model, solver);
	const { layout } = model;
	const nameOf = (cell: number) =>
		[quantityOf(layout, cell)!.quantity.name, ...membersOf(layout, cell)].join(' ');
	const cellOf = (name: string) =>
		Array.from({ length: layout.cells }, (_, cell) => cell).find((cell) => nameOf(cell) === name)!;
	function ask<K extends Question['kind']>(question: Extract<Question, { kind: K }>) {
		const reply = inquiry.ask(question) as AnswerTo<K>;
		if (!reply.ok) throw new Error(reply.problems.join(' '));
		return reply.answer;
	}
	return { inquiry, ask, nameOf, cellOf };
}

const pinned = (name: string, value: object) =>
	withQuantity(name, { value } as Parameters<typeof withQuantity>[1]);

describe('a look at a plan', () => {
	it('says of each requirement what is used, what is there, and by whom', () => {
		const { ask, nameOf } = open(smallPlant());
		const { rooms, best } = ask({ kind: 'look', where });
		expect(best).toBeCloseTo(7270, 6);
		const hours = rooms.find(({ cell }) => nameOf(cell) === 'hours_hold L1 feb')!;
		expect(hours).toMatchObject({ way: 'most', unit: 'h' });
		expect([hours.used, hours.there]).toEqual([expect.closeTo(100, 6), 100]);
		// 1,000 m at 10 m/h: A 400, B 600, as 300 m of A wait from January.
		expect(hours.shares.map(({ cell, amount }) => [nameOf(cell), Math.round(amount)])).toEqual([
			['made A L1 feb', 40],
			['made B L1 feb', 60]
		]);
		const stock = rooms.find(({ cell }) => nameOf(cell) === 'stock_holds A feb')!;
		// Sold 700 = 300 from January + 400 made.
		expect([stock.used, stock.there].map(Math.round)).toEqual([700, 700]);
	});

	it('finds what is not sold though it would pay, and what hours without end would bring', () => {
		const { ask, nameOf } = open(smallPlant());
		const { unmet } = ask({ kind: 'look', where });
		// February: 1,200 m of B asked for, 1,100 sold; the rest would bring 2 EUR/m.
		expect(unmet.map(({ cell }) => nameOf(cell))).toEqual(['sold B feb']);
		expect(unmet[0]!.most - unmet[0]!.value).toBeCloseTo(100, 5);
		expect(unmet[0]!.money).toBeCloseTo(200, 4);
	});

	it('gives the worth of an hour with how far it holds', () => {
		const { ask, nameOf } = open(smallPlant());
		const { worth } = ask({ kind: 'look', where });
		const january = worth.find(({ of }) => nameOf(of) === 'hours_hold L1 jan')!;
		// Ten metres an hour, kept a month: 10 × (2 − 0.1). Ten hours more serve all that is asked for.
		expect(january.more).toBeCloseTo(19, 6);
		expect(january.until).toBeCloseTo(10, 6);
		expect(january.less).toBeCloseTo(19, 6);
		expect(january.untilLess).toBeCloseTo(30, 6);
	});

	it('says what each held value costs, and all together', () => {
		const { ask, nameOf } = open(smallPlant(pinned('made', { B: { L2: { jan: 0 } } })));
		const { pins } = ask({ kind: 'look', where });
		// Without L2 in January, 500 m of B are not made and nothing waits: 3 × 1,300 + 2 × 1,200 = 6,300 of 7,270.
		expect(pins.each.map(({ cell, value }) => [nameOf(cell), value])).toEqual([
			['made B L2 jan', 0]
		]);
		expect(pins.each[0]!.cost).toBeCloseTo(970, 5);
		expect(pins.together).toBeCloseTo(970, 5);
		expect(pins.more).toBe(0);
	});

	it('is refused in words where there is no plan', () => {
		const { inquiry } = open(smallPlant());
		const model = Model.open(smallPlant(pinned('sold', { A: { jan: 5000 } })));
		const reply = new Inquiry(model, solver).ask({ kind: 'look', where });
		expect(reply).toEqual({ ok: false, problems: [expect.stringContaining('has no plan')] });
		expect(inquiry.ask({ kind: 'look', where: { ...where, programme: 'gone' } })).toEqual({
			ok: false,
			problems: ['The programme is not in the workbook any more.']
		});
	});
});

describe('more hours', () => {
	it('bring less and less', () => {
		const { ask, cellOf } = open(smallPlant());
		const gains = ask({
			kind: 'curve',
			where,
			cell: cellOf('hours_hold L1 jan'),
			amounts: [5, 10, 20, 100]
		});
		// 19 EUR an hour for ten hours; then February's demand is met.
		expect(gains.map((gain) => Math.round(gain! * 1e4) / 1e4)).toEqual([95, 190, 190, 190]);
	});
});

describe('why not', () => {
	it('says what a unit more brings, what it takes, and by which ways it could be had', () => {
		const { ask, cellOf, nameOf } = open(smallPlant());
		const reason = ask({ kind: 'reason', where, cell: cellOf('sold B feb') });
		if (reason.kind !== 'decision') throw new Error('no decision');
		expect(reason).toMatchObject({ own: 2, gain: 0, isPinned: false });
		expect(reason.takes.map(({ cell, loss }) => [nameOf(cell), loss])).toEqual([
			['stock_holds B feb', expect.closeTo(2, 9)]
		]);
		const way = reason.takes[0]!.ways.find(({ cell }) => nameOf(cell) === 'made B L2 feb')!;
		// A metre on L2 takes a fifth of an hour, and an hour there is worth 5 × 2 EUR: nothing is left.
		expect(way).toMatchObject({ gain: 0, own: 0 });
		expect(
			way.takes.map((take) => [nameOf(take.cell), take.amount, take.price, take.loss])
		).toEqual([
			['hours_hold L2 feb', expect.closeTo(0.2, 9), expect.closeTo(10, 9), expect.closeTo(2, 9)]
		]);
	});

	it('tells of an idle resource what could run there, and by how much it does not pay', () => {
		// B brings less than it costs to keep A's customers: on L2 only B runs, and nobody asks for it.
		const idle = withQuantity('demand', {
			value: { A: { jan: 600, feb: 700 }, B: { jan: 0, feb: 0 } }
		});
		const { ask, cellOf, nameOf } = open(smallPlant(idle));
		const reason = ask({ kind: 'reason', where, cell: cellOf('hours_hold L2 jan') });
		if (reason.kind !== 'requirement') throw new Error('no requirement');
		expect(reason.rows.map(({ room, price }) => [room.used, room.there, price])).toEqual([
			[0, 100, 0]
		]);
		expect(reason.takers.map(({ cell, value, gain }) => [nameOf(cell), value, gain])).toEqual([
			['made B L2 jan', 0, 0]
		]);
		const sold = ask({ kind: 'reason', where, cell: cellOf('sold B jan') });
		if (sold.kind !== 'decision') throw new Error('no decision');
		expect(sold.takes.map(({ cell, loss }) => [nameOf(cell), loss])).toEqual([
			['sold_holds B jan', 2]
		]);
	});
});

describe('a programme that is not in the workbook yet', () => {
	const draft = smallPlant().programmes![0]!;

	it('is told as sums', () => {
		const { ask, nameOf } = open(smallPlant((book) => ({ ...book, programmes: [] })));
		const told = ask({ kind: 'examine', programme: draft, scenario: 'base' });
		// Three pairs, two months: 6 made, 4 sold, 4 in stock; 4 rows of each of three requirements.
		expect(told).toMatchObject({ decisions: 14, requirements: 12, apart: 1, whole: 0 });
		const sample = told.samples.find(({ cell }) => nameOf(cell).startsWith('hours_hold'))!;
		expect(nameOf(sample.cell)).toBe('hours_hold L1 jan');
		expect(sample).toMatchObject({ way: 'most', bound: 100, unit: 'h' });
		expect(sample.terms.map(({ cell, factor }) => [nameOf(cell), factor])).toEqual([
			['made A L1 jan', 0.1],
			['made B L1 jan', 0.1]
		]);
		expect(told.objective.terms[0]).toMatchObject({ factor: 3 });
	});

	it('is refused with the place that is not linear', () => {
		const bent = withQuantity('contribution', {
			formula: 'SUM(sold * sold over product × month) * 1[EUR/m^2]'
		});
		const { inquiry } = open(smallPlant((book) => ({ ...bent(book), programmes: [] })));
		const reply = inquiry.ask({ kind: 'examine', programme: draft, scenario: 'base' });
		expect(reply).toEqual({ ok: false, problems: [expect.stringContaining('multiplies sold of')] });
	});
});

describe('taking hours for an order', () => {
	it('costs what the plan made again around them brings less, and says what is done less', () => {
		const { ask, nameOf, cellOf } = open(smallPlant());
		const taking = (amount: number) =>
			ask({ kind: 'taking', where, cell: cellOf('hours_hold L1 jan'), amount });
		// 10 h of L1 in January are 100 m of B that waited for February: 2 − 0.1 EUR each.
		const ten = taking(10);
		expect(ten.cost).toBeCloseTo(190, 4);
		expect(ten.gives.map(({ cell, amount }) => [nameOf(cell), Math.round(amount)])).toEqual([
			['sold B feb', 100]
		]);
		expect(ten.gives[0]!.money).toBeCloseTo(200, 2);
		// There are 100.
		expect(taking(101)).toEqual({ cost: null, gives: [] });
	});

	it('costs nothing where they are free, and is refused where nothing is required', () => {
		const { ask, inquiry, cellOf } = open(
			smallPlant(
				withQuantity('demand', { value: { A: { jan: 10, feb: 10 }, B: { jan: 10, feb: 10 } } })
			)
		);
		const free = ask({ kind: 'taking', where, cell: cellOf('hours_hold L1 feb'), amount: 50 });
		expect(free.cost).toBeCloseTo(0, 4);
		expect(free.gives).toEqual([]);
		const made = cellOf('made A L1 jan');
		expect(inquiry.ask({ kind: 'taking', where, cell: made, amount: 1 })).toMatchObject({
			ok: false
		});
	});
});
