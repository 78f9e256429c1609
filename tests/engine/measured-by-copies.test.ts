/** Scenarios that are measured against a frozen copy: what `x[reference]` reads, in both engines and in studies. */
import { describe, expect, it } from 'vitest';
import { freeze } from '$lib/engine/frozen';
import { cellAt } from '$lib/engine/layout';
import { Model } from '$lib/engine/model';
import { Verifier } from '$lib/engine/second/verifier';
import { OK } from '$lib/engine/state';
import { sheetsOf } from '$lib/exchange/ooxml/file';
import { writeFile } from '$lib/exchange/ooxml/write';
import { openColumns } from '$lib/studies/columns/columns';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { loadWorkbook } from '$lib/workbook/load';
import { mergeWorkbooks } from '$lib/workbook/merge';
import { saveWorkbook } from '$lib/workbook/save';
import { readFile, Recalculation } from '../exchange/recalculate';
import { VERSION, type Quantity, type Workbook } from '$lib/workbook/schema';

const number = (name: string, unit: string, rest: Partial<Quantity>): Quantity => ({
	...{ name, label: name, unit },
	...rest
});
const quantities: Quantity[] = [
	number('price', 'EUR/kg', { per: ['resin'], value: { A: 1.5, B: 2, C: 4 } }),
	number('mass', 'kg', { per: ['resin'], value: { A: 10, B: 20, C: 1 } }),
	number('grade', 'EUR', { per: ['resin'], fixed: true, value: { A: 1, B: 2, C: 3 } }),
	{
		...{ name: 'there', label: 'there', type: 'yes_no', per: ['resin'] },
		value: { A: true, B: true, C: false }
	},
	number('cost', 'EUR', { per: ['resin'], formula: 'price * mass', where: 'there' }),
	number('total', 'EUR', { formula: 'SUM(cost over resin)' }),
	number('gain', 'EUR', { formula: 'total - total[reference]' }),
	number('dearer', 'EUR/kg', { per: ['resin'], formula: 'price - price[reference]' }),
	number('was', 'EUR', { formula: 'SUM(cost[reference] over resin)' }),
	number('graded', 'EUR', { formula: 'SUM(grade[reference] over resin)' }),
	number('most', 'EUR/kg', { formula: 'MAX(price[reference] over resin)' }),
	number('kinds', '1', { formula: 'COUNT(cost[reference] over resin)' })
];

const book: Workbook = {
	format: 'metrewright',
	version: VERSION,
	title: 'Measured',
	sets: [{ name: 'resin', label: 'Resin', members: [{ id: 'A' }, { id: 'B' }, { id: 'C' }] }],
	sheets: [{ title: 'One', quantities }],
	scenarios: [
		{ id: 'base', title: 'Base', parent: null, changes: [] },
		{
			...{ id: 'dear', title: 'Dear', parent: 'base' },
			changes: [{ quantity: 'price', value: { A: 3 } }]
		}
	]
};

const HEAD = { id: 'standard', title: 'Standard 2028', of: 'Base', date: '2027-11-30' };

function apply(model: Model, ...commands: Command[]) {
	const applied = model.apply({ kind: 'several', commands });
	if (!applied.ok) throw new Error(applied.problem.message);
	return applied;
}
const against = (reference?: string, id = 'dear'): Command => ({
	...{ kind: 'replace_scenario', id },
	scenario: {
		...{ id, title: 'Dear', parent: 'base' },
		...(reference !== undefined && { against: reference })
	}
});
const price = (value: number, at = 'A', scenario = 'base'): Command => ({
	...{ kind: 'set_inputs', scenario },
	entries: [{ quantity: 'price', at: [at], value }]
});

/** The copy is made, then the base moves on: A costs 2 instead of 1.5, so that total is 60 and not 55. */
function moved(more: readonly Command[] = []): Model {
	const model = Model.open(book);
	const frozen = freeze(model.layout, model.results('base'), HEAD)!;
	apply(model, { kind: 'add_frozen', frozen }, against('standard'), price(2), ...more);
	return model;
}

function valueOf(model: Model, name: string, member?: string, scenario = 'dear') {
	const place = model.layout.byName.get(name)!;
	const set = model.layout.ordinals.get('resin')!;
	const cell = cellAt(place, member === undefined ? [] : [set.get(member)!]);
	const { values, states } = model.results(scenario);
	return states[cell] === OK ? values[cell] : -states[cell]!;
}

function checkSecond(model: Model) {
	const verifier = Verifier.open(model.workbook, model.plan);
	for (const _step of verifier.build());
	const ids = model.workbook.scenarios.map(({ id }) => id);
	const found = verifier.compare(ids.map((id) => model.results(id)));
	verifier.destroy();
	expect(found.disagreements).toEqual([]);
	expect(found.compared).toBe(ids.length * model.layout.cells);
}

describe('a scenario that is measured against a frozen copy', () => {
	it('reads its values where the base has moved on, and those of the base again once it names nothing', () => {
		const model = moved();
		// Dear: 3 × 10 + 40 = 70; the copy holds 1.5 × 10 + 40 = 55.
		expect(valueOf(model, 'gain')).toBe(15);
		expect(valueOf(model, 'dearer', 'A')).toBe(1.5);
		expect(valueOf(model, 'was')).toBe(55);
		expect(valueOf(model, 'most')).toBe(4);
		expect(valueOf(model, 'kinds')).toBe(2);
		expect(valueOf(model, 'gain', undefined, 'base')).toBe(0);
		apply(model, against());
		// The base: 2 × 10 + 40 = 60.
		expect(valueOf(model, 'gain')).toBe(10);
		apply(model, against('standard'));
		expect(valueOf(model, 'gain')).toBe(15);
	});

	it('stands still while the base and the scenario are edited', () => {
		const model = moved();
		valueOf(model, 'gain');
		apply(model, price(9));
		expect(valueOf(model, 'gain')).toBe(15);
		apply(model, price(4, 'A', 'dear'));
		expect(valueOf(model, 'gain')).toBe(25);
		apply(model, price(5, 'B'));
		// 4 × 10 + 5 × 20 − 55.
		expect(valueOf(model, 'gain')).toBe(85);
	});

	it('reads what no scenario changes as the copy holds it', () => {
		const model = moved();
		apply(model, {
			...{ kind: 'set_inputs', scenario: 'base' },
			entries: [{ quantity: 'grade', at: ['A'], value: 5 }]
		});
		expect(valueOf(model, 'graded')).toBe(6);
		expect(valueOf(model, 'graded', undefined, 'base')).toBe(10);
		checkSecond(model);
	});

	it('says which copy holds no value of what came later, and leaves it out of sums', () => {
		const model = moved([
			{
				...{ kind: 'add_member', set: 'resin', index: 3 },
				member: { id: 'D' }
			} as Command,
			{
				...{ kind: 'set_inputs', scenario: 'base' },
				entries: [
					{ quantity: 'price', at: ['D'], value: 7 },
					{ quantity: 'mass', at: ['D'], value: 1 },
					{ quantity: 'grade', at: ['D'], value: 1 },
					{ quantity: 'there', at: ['D'], value: true }
				]
			}
		]);
		const cell = model.layout.byName.get('dearer')!.base + 3;
		expect(model.results('dear').states[cell]).not.toBe(OK);
		expect(model.origin('dear', cell)!.reason).toBe(
			'There is no value of price of D in the frozen copy Standard 2028: it was not there on that day, or meant another thing. Leave it out with where, or measure against something else.'
		);
		expect(valueOf(model, 'was')).toBe(55);
		expect(valueOf(model, 'graded')).toBe(6);
		expect(valueOf(model, 'most')).toBe(4);
		expect(valueOf(model, 'kinds')).toBe(2);
		expect(valueOf(model, 'was', undefined, 'base')).toBe(67);
		checkSecond(model);
	});

	it('gives the same in the second engine, from its first build and after edits', () => {
		const model = moved();
		checkSecond(model);
		const verifier = Verifier.open(model.workbook, model.plan);
		for (const _step of verifier.build());
		const frozen = freeze(model.layout, model.results('dear'), { ...HEAD, id: 'other' })!;
		const { structural } = apply(model, { kind: 'add_frozen', frozen }, against('other'));
		expect(structural).toBe(false);
		for (const _step of verifier.update(model.workbook));
		const found = verifier.compare(['base', 'dear'].map((id) => model.results(id)));
		verifier.destroy();
		expect(found.disagreements).toEqual([]);
		expect(valueOf(model, 'gain')).toBe(0);
	});

	it('leaves with live formulas that hold the values of the copy, as it holds them', async () => {
		const model = moved();
		const results = model.workbook.scenarios.map(({ id }) => model.results(id));
		const bytes = await writeFile(sheetsOf(model.workbook, model.plan, results), 'Measured');
		const { sheets } = await readFile(bytes);
		const recalculated = new Recalculation(sheets);
		let compared = 0;
		for (const [address, { formula, value }] of sheets.get('Dear')!) {
			if (formula === null || typeof value !== 'number') continue;
			expect(Number(recalculated.value('Dear', address)), formula).toBeCloseTo(value, 9);
			compared++;
		}
		expect(compared).toBeGreaterThan(5);
	});

	it('is told with the values of the copy when asked why', () => {
		const model = moved();
		const cell = model.layout.byName.get('total')!.base;
		const why = model.why('dear', cell);
		expect(why.reference).toBe('standard');
		expect(why.there.value).toBe(55);
	});

	it('is measured against the copy in studies too, whose draws never move it', () => {
		const model = moved();
		const columns = openColumns({
			...{ workbook: model.workbook, plan: model.plan, scenario: 'dear' },
			vary: [{ quantity: 'price', members: ['B'] }],
			ask: [{ quantity: 'gain' }, { quantity: 'was' }]
		});
		if (!columns.ok) throw new Error(columns.problem.message);
		const out = columns.value.run([Float64Array.of(2, 3)]);
		expect([...out.values[0]!]).toEqual([15, 35]);
		expect([...out.values[1]!]).toEqual([55, 55]);
	});

	it('keeps the copy through files, and what its members and quantities are called', () => {
		const model = moved();
		apply(model, {
			...{ kind: 'replace_member', set: 'resin', id: 'A' },
			member: { id: 'PE' }
		} as Command);
		const loaded = loadWorkbook(saveWorkbook(model.workbook), 'measured.json');
		if (!loaded.ok) throw new Error('not loaded');
		expect(loaded.workbook.scenarios[1]!.against).toBe('standard');
		expect(valueOf(Model.open(loaded.workbook), 'gain')).toBe(15);
	});
});

describe('the copy that a scenario is measured against', () => {
	it('is not taken away unasked; then the scenario is measured against the base', () => {
		const model = moved();
		const refused = model.apply({ kind: 'remove_frozen', id: 'standard' });
		expect(!refused.ok && refused.problem.message).toBe(
			'Dear is compared with Standard 2028. Change these first, or remove it anyway.'
		);
		const gone = model.apply({ kind: 'remove_frozen', id: 'standard', also: true });
		expect(valueOf(model, 'gain')).toBe(10);
		expect('against' in model.workbook.scenarios[1]!).toBe(false);
		if (gone.ok) model.apply(gone.inverse);
		expect(valueOf(model, 'gain')).toBe(15);
	});

	it('is refused under a name that nothing has', () => {
		const answer = applyCommand(book, against('budget'));
		expect(!answer.ok && answer.problem.message).toContain(
			'there is no scenario and no frozen copy with the id "budget"'
		);
	});

	it('is asked about where one person takes it away and another measures against it', () => {
		const model = Model.open(book);
		const frozen = freeze(model.layout, model.results('base'), HEAD)!;
		apply(model, { kind: 'add_frozen', frozen });
		const base = model.workbook;
		const step = (command: Command) => {
			const done = applyCommand(base, command);
			if (!done.ok) throw new Error(done.problem.message);
			return done.workbook;
		};
		const mine = step(against('standard'));
		const theirs = step({ kind: 'remove_frozen', id: 'standard' });
		const { conflicts } = mergeWorkbooks({ base, mine, theirs });
		expect(conflicts.map(({ reason }) => reason)).toEqual(['unsound']);
		expect(mergeWorkbooks({ base, mine, theirs }, () => 'mine').workbook).toEqual(mine);
	});
});
