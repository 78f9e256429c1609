/** The example of the reference page, written as a workbook: its formulas are those on the page, its figures come out. */
import { beforeAll, describe, expect, it } from 'vitest';
import { membersOf } from '$lib/engine/layout';
import { Model } from '$lib/engine/model';
import { Solver } from '$lib/programmes/highs';
import { Inquiry } from '$lib/programmes/inquiry/inquiry';
import type { Look } from '$lib/programmes/inquiry/questions';
import { planAll } from '$lib/programmes/plan-all';
import { guide } from '$lib/ui/programmes/guide-texts';
import { VERSION, type Quantity, type Workbook } from '$lib/workbook/schema';

let solver: Solver;
beforeAll(async () => {
	solver = await Solver.load();
});

const example = guide.sections.find(({ id }) => id === 'example')!.table!.rows;
const column = (place: number) =>
	Object.fromEntries(example.map((row, at) => [['c16', 'c25'][at]!, Number(row[place])]));
const formulas = new Map(
	guide.sections.flatMap(({ formulas = [] }) =>
		formulas.map((line) => {
			const [name = '', ...formula] = line.split(' = ');
			return [name, formula.join(' = ')] as const;
		})
	)
);
const given = (name: string, place: number): Quantity => ({
	...{ name, label: name, per: ['coil'] },
	value: column(place)
});
const stated = (name: string, rest: Partial<Quantity> = {}): Quantity => ({
	...{ name, label: name, formula: formulas.get(name)! },
	...rest
});

function workbook(held?: number): Workbook {
	return {
		...{ format: 'metrewright', version: VERSION, title: 'Forty hours' },
		sets: [{ name: 'coil', label: 'Coil', members: [{ id: 'c16' }, { id: 'c25' }] }],
		sheets: [
			{
				title: 'Week',
				quantities: [
					given('hours_per_coil', 1),
					given('brings', 2),
					given('asked_for', 3),
					{ name: 'hours', label: 'Hours', value: 40 },
					{
						...{ name: 'made', label: 'Made', per: ['coil'], range: { min: 0 } },
						...(held !== undefined && { value: { c25: held } })
					},
					{ name: 'hour_worth', label: 'Worth of an hour' },
					stated('hours_used'),
					stated('hours_hold', { type: 'yes_no' }),
					stated('asked_for_holds', { type: 'yes_no', per: ['coil'] }),
					stated('earned')
				]
			}
		],
		scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }],
		programmes: [
			{
				...{ name: 'week', title: 'The week', maximise: 'earned', decisions: ['made'] },
				constraints: ['hours_hold', 'asked_for_holds'],
				shadow_prices: { hour_worth: 'hours_hold' }
			}
		]
	};
}

function look(held?: number): { look: Look; made: Record<string, number> } {
	const model = Model.open(workbook(held));
	expect(model.problems).toEqual([]);
	for (const planned of planAll(solver, model)) expect(planned.proven).toBe(true);
	const where = { programme: 'week', scenario: 'base', members: [] };
	const reply = new Inquiry(model, solver).ask({ kind: 'look', where });
	if (!reply.ok) throw new Error(reply.problems.join(' '));
	const { base, count } = model.layout.byName.get('made')!;
	const made = Object.fromEntries(
		Array.from({ length: count }, (_, at) => [
			membersOf(model.layout, base + at)[0]!,
			model.column('base').values[base + at]!
		])
	);
	return { look: reply.answer as Look, made };
}
const text = (id: string) => guide.sections.find((one) => one.id === id)!.paragraphs.join(' ');

describe('the example of the reference page', () => {
	it('has the plan that the page says', () => {
		const { look: found, made } = look();
		expect(found.best).toBeCloseTo(2175, 6);
		expect([made.c16, made.c25]).toEqual([expect.closeTo(25, 6), expect.closeTo(7.5, 6)]);
		expect(text('plan')).toContain('25 × 60 + 7.5 × 90 = 2,175 EUR');
	});

	it('has the worth of an hour that the page says, as far as it says', () => {
		const [hour] = look().look.worth;
		expect([hour!.more, hour!.until]).toEqual([expect.closeTo(45, 6), expect.closeTo(5, 6)]);
		expect(text('worth')).toMatch(/bring 45 EUR\..* holds for 5 hours more/);
	});

	it('leaves out what the page says, and loses by it what the page says', () => {
		const [short] = look().look.unmet;
		expect(short!.most - short!.value).toBeCloseTo(2.5, 6);
		expect(short!.money).toBeCloseTo(225, 5);
		expect(text('why-not')).toContain('2.5 more coils of 25 mm, which would bring 225 EUR');
	});

	it('costs what the page says where a figure is held', () => {
		const { look: found, made } = look(10);
		expect(made.c16).toBeCloseTo(20, 6);
		expect(found.best).toBeCloseTo(2100, 6);
		expect(found.pins.each[0]!.cost).toBeCloseTo(75, 6);
		expect(text('hold')).toMatch(/brings 2,100 EUR, .* costs 75 EUR/);
	});
});
