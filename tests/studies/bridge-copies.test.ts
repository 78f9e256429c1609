/** Bridges with a frozen copy at an end: its inputs in today's model step by step, and what no input explains. */
import { beforeAll, describe, expect, it } from 'vitest';
import { freeze } from '$lib/engine/frozen';
import { Model } from '$lib/engine/model';
import { Solver } from '$lib/programmes/highs';
import { Memory } from '$lib/programmes/memory';
import { planAll } from '$lib/programmes/plan-all';
import { runBridge, type BridgeResult } from '$lib/studies/bridge';
import type { BridgeStudy } from '$lib/studies/bridge-groups';
import { fingerprintOf } from '$lib/studies/fingerprint';
import { runStudyHere } from '$lib/studies/run';
import { applyCommand, type Command } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';
import { studyGaps } from '$lib/workbook/study-gaps';
import { smallPlant } from '../programmes/small-plant';
import { metre } from './small-book';

const edited = (workbook: Workbook, ...commands: Command[]): Workbook => {
	const done = applyCommand(workbook, { kind: 'several', commands });
	if (!done.ok) throw new Error(done.problem.message);
	return done.workbook;
};
const enter = (quantity: string, at: string[], value: number | null): Command => ({
	...{ kind: 'set_inputs', scenario: 'base' },
	entries: [{ quantity, at, value }]
});

/** The metre frozen (cost 0.1 × 1.5 + 0.05 × 2 = 0.25), then PE dearer by a third and PX lighter by a fifth. */
function moved(...more: Command[]): Workbook {
	const book = metre([
		{
			...{ id: 'light', title: 'Light', parent: 'base' },
			changes: [{ quantity: 'mass', value: { PE: 0.08 } }]
		}
	]);
	const model = Model.open(book);
	const frozen = freeze(model.layout, model.results('base'), {
		...{ id: 'budget', title: 'Budget', of: 'As it stands', date: '2027-11-30' }
	})!;
	return edited(
		book,
		{ kind: 'add_frozen', frozen },
		enter('price', ['PE'], 2),
		enter('mass', ['PX'], 0.04),
		...more
	);
}

const study = (from: string, to: string, more: Partial<BridgeStudy> = {}): BridgeStudy => ({
	...{ name: 'why', title: 'Why', kind: 'bridge', quantity: 'cost', from, to },
	...more
});
function run(workbook: Workbook, one: BridgeStudy): BridgeResult {
	const found = runBridge(workbook, one);
	if (!found.ok) throw new Error(found.problem.message);
	return found.value;
}
const parts = ({ parts }: BridgeResult) =>
	Object.fromEntries(parts.map(({ label, value }) => [label, value]));
function closes({ start, end, total, parts }: BridgeResult) {
	expect(total).toBeCloseTo(end - start, 12);
	expect(parts.reduce((sum, { value }) => sum + value, start)).toBeCloseTo(end, 12);
}
const SINCE = 'Other formulas and members since Budget';

describe('a bridge from a frozen copy', () => {
	it('enters its inputs in the model of today, cause by cause, and closes on what it holds', () => {
		const result = run(moved(), study('budget', 'base'));
		// 0.1 × (2 − 1.5); (0.04 − 0.05) × 2; no formula has changed.
		expect(parts(result)).toEqual({
			[SINCE]: 0,
			price: expect.closeTo(0.05, 12),
			mass: expect.closeTo(-0.02, 12)
		});
		expect(result.start).toBe(0.25);
		closes(result);
	});

	it('goes to a copy as well, and to a scenario of its own inputs', () => {
		const back = run(moved(), study('base', 'budget'));
		expect(parts(back)).toMatchObject({ price: expect.closeTo(-0.05, 12) });
		expect(back.parts.at(-1)).toMatchObject({ label: SINCE, since: 'Budget', cells: [] });
		closes(back);
		const light = run(moved(), study('budget', 'light'));
		// Budget to Light: PE 0.1 to 0.08 kg and 1.5 to 2 EUR/kg; the two orders share the 0.02 × 0.5 that both make.
		expect(parts(light)).toMatchObject({
			price: expect.closeTo((0.1 * 0.5 + 0.08 * 0.5) / 2, 12),
			mass: expect.closeTo(-0.02 - (0.02 * 1.5 + 0.02 * 2) / 2, 12)
		});
		closes(light);
	});

	it('tells apart what another formula makes of the same inputs', () => {
		const { quantity } = { quantity: metre().sheets[0]!.quantities[2]! };
		const book = moved({
			...{ kind: 'replace_quantity', name: 'cost' },
			quantity: { ...quantity, formula: 'SUM(price * mass over resin) * 1.1' }
		});
		const result = run(book, study('budget', 'base'));
		expect(parts(result)).toEqual({
			[SINCE]: expect.closeTo(0.025, 12),
			price: expect.closeTo(0.055, 12),
			mass: expect.closeTo(-0.022, 12)
		});
		closes(result);
	});

	it('tells apart what members make that came since, as nothing in the copy says anything of them', () => {
		const book = moved(
			{ kind: 'add_member', set: 'resin', index: 2, member: { id: 'PB' } },
			enter('price', ['PB'], 3),
			enter('mass', ['PB'], 0.01)
		);
		const result = run(book, study('budget', 'base'));
		expect(parts(result)[SINCE]).toBeCloseTo(0.03, 12);
		closes(result);
	});

	it('takes what was left empty as empty, and what is in another unit since as it was', () => {
		const price = metre().sheets[0]!.quantities[0]!;
		const book = moved({
			...{ kind: 'replace_quantity', name: 'price', also: true },
			quantity: { ...price, unit: 'EUR/t', value: { PE: 2000, PX: 2000 } }
		});
		const result = run(book, study('budget', 'base'));
		expect(parts(result)).toMatchObject({ [SINCE]: expect.closeTo(0, 12) });
		closes(result);
	});

	it('goes between two copies', () => {
		const before = moved();
		const model = Model.open(before);
		const frozen = freeze(model.layout, model.results('light'), {
			...{ id: 'forecast', title: 'Forecast', of: 'Light', date: '2028-03-31' }
		})!;
		const book = edited(before, { kind: 'add_frozen', frozen }, enter('price', ['PX'], 7));
		const result = run(book, study('budget', 'forecast'));
		expect([result.start, result.end]).toEqual([0.25, expect.closeTo(0.24, 12)]);
		expect(Object.keys(parts(result))).toEqual([
			...[SINCE, 'price', 'mass', 'Other formulas and members since Forecast']
		]);
		closes(result);
	});

	it('is measured against the same as the other end', () => {
		const result = run(moved(), study('budget', 'light', { quantity: 'gain' }));
		// The copy was of the base, which gains nothing against itself; its inputs gain against the base of today.
		expect(result.start).toBe(0);
		closes(result);
	});

	it('has groups of causes as one between scenarios has', () => {
		const groups = [{ label: 'Material', changes: [{ quantity: 'price' }, { quantity: 'mass' }] }];
		const result = run(moved(), study('budget', 'base', { groups }));
		expect(parts(result)).toEqual({ [SINCE]: 0, Material: expect.closeTo(0.03, 12) });
	});

	it('says that the copy holds no value of the result', () => {
		const book = moved({
			...{ kind: 'add_quantity', sheet: 0, index: 9 },
			quantity: { name: 'twice', label: 'Twice', unit: 'EUR/m', formula: '2 * cost' }
		});
		const found = runBridge(book, study('budget', 'base', { quantity: 'twice' }));
		expect(!found.ok && found.problem.message).toBe(
			'Twice has no value in the frozen copy Budget, so there is no difference to split. Choose another quantity or copy.'
		);
	});

	it('is a gap for other studies and where the copy is gone, and out of date with another copy of its name', () => {
		const book = moved();
		const one = study('budget', 'base');
		expect(studyGaps(book, one)).toEqual([]);
		const gone = edited(book, { kind: 'remove_frozen', id: 'budget' });
		expect(studyGaps(gone, one).map(({ code }) => code)).toEqual(['unknown-scenario']);
		expect(
			studyGaps(book, {
				...{ name: 'b', title: 'B', kind: 'break_even', quantity: 'cost', scenario: 'budget' },
				target: 1,
				input: { quantity: 'price', members: ['PE'], mode: 'set', from: 1, to: 2 }
			}).map(({ code }) => code)
		).toEqual(['unknown-scenario']);
		const [copy] = book.frozen!;
		const [first, ...rest] = copy!.quantities;
		const other = edited(gone, {
			kind: 'add_frozen',
			frozen: { ...copy!, quantities: [{ ...first!, value: { PE: 1, PX: 1 } }, ...rest] }
		});
		expect(fingerprintOf(other, one)).not.toBe(fingerprintOf(book, one));
		expect(fingerprintOf(edited(book, enter('sales', [], 1)), one)).toBe(fingerprintOf(book, one));
	});
});

describe('a bridge from a frozen copy of a plant that is planned', () => {
	let solver: Solver;
	beforeAll(async () => {
		solver = await Solver.load();
	});

	it('plans anew for the inputs of the copy, step by step', () => {
		const first = Model.open(smallPlant());
		for (const _made of planAll(solver, first, () => true, { memory: new Memory() }));
		const frozen = freeze(first.layout, first.results('base'), {
			...{ id: 'budget', title: 'Budget', of: 'Base', date: '2027-11-30' }
		})!;
		const book = edited(
			first.workbook,
			{ kind: 'add_frozen', frozen },
			{
				...{ kind: 'set_inputs', scenario: 'base' },
				entries: [{ quantity: 'hours', at: ['L1', 'jan'], value: 110 }]
			}
		);
		const asked: BridgeStudy = study('budget', 'base', { quantity: 'contribution' });
		const replanning = { solver, memory: new Memory() };
		const found = runStudyHere(book, asked, { replanning });
		if (!found.ok || found.value.kind !== 'bridge')
			throw new Error(found.ok ? 'no bridge' : found.problem.message);
		// Ten hours more of L1 in January: 100 m of B that need not wait, 1.90 EUR each (see following.test.ts).
		expect(found.value.start).toBeCloseTo(7270, 4);
		expect(Object.values(parts(found.value)).map((one) => Number(one.toFixed(3)))).toEqual([
			...[0, 190]
		]);
		expect(found.value.parts[0]!.label).toBe('Other formulas, members and plans since Budget');
	});
});
