/** What the review list finds, and what it leaves in peace. */
import { describe, expect, it } from 'vitest';
import { KIND_NAMES, lineId, type LineKind } from '$lib/review/line';
import { reviewLines, reviewSteps } from '$lib/review/review';
import { ownBySheet, ownInAll, ownQuantities } from '$lib/review/template';
import { tickOf, withTicks } from '$lib/review/ticks';
import { applyCommand } from '$lib/workbook/commands';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { book, entered, formula, perLine } from './book';

const found = (kind: LineKind, ...quantities: readonly Quantity[]) =>
	of(kind, book([...quantities, formula('result', 'wage')]));
const of = (kind: LineKind, workbook: Workbook) =>
	reviewLines(workbook)
		.filter((line) => line.kind === kind)
		.map(({ quantity, at, scenario, what }) => [quantity?.name, at.join(), scenario, what]);

describe('numbers standing in formulas', () => {
	it.each([
		['3 * wage', '3 stands in the formula'],
		['wage * 7.5% + 20[EUR/h]', '7.5%, 20[EUR/h] stand in the formula'],
		['wage * 23[h/day]', '23[h/day] stands in the formula']
	])('are told: %s', (text, what) => {
		expect(found('literal', formula('a', text))).toEqual([['a', '', null, what]]);
	});

	it.each([
		['0, 1 and 100 %', '(1 - share) * wage + 0[EUR/h] * 100%'],
		['digits of a rounding', 'ROUND(wage; 2)'],
		['squares', 'wage^2 / wage'],
		['what takes a unit away', 'wage * 1[h]'],
		['what clock and calendar count', 'wage * 24[h/day] * 365[day/year] / 12[month/year]']
	])('are not: %s', (_, text) => {
		expect(found('literal', formula('a', text))).toEqual([]);
	});
});

describe('sums that leave named members out', () => {
	it.each([
		['SUM(pay over line where line <> line.L4)', 'SUM over line only where line <> line.L4'],
		['pay[L1] + pay[L2]', 'pay is added up of L1, L2, without L3, L4, L5']
	])('are told: %s', (text, what) => {
		const pay = perLine('pay', 1, 2, 3, 4, 5);
		expect(found('leaves_out', pay, formula('a', text))).toEqual([['a', '', null, what]]);
	});

	it.each(['SUM(pay over line)', 'SUM(pay over line where pay > wage)', 'pay[L1] + wage'])(
		'are not: %s',
		(text) => {
			const pay = perLine('pay', 1, 2, 3, 4, 5);
			expect(found('leaves_out', pay, formula('a', text))).toEqual([]);
		}
	);
});

it('writes numbers as whoever shows the lines does', () => {
	const workbook = book([
		perLine('pay', 20000, 21000, 210000, 19000, 20500),
		formula('result', 'pay[L1]')
	]);
	const writing = { short: (value: number) => `~${value}`, full: String };
	const [line] = [...reviewSteps(workbook, writing)].flat();
	expect(line?.what).toBe('~210000 EUR/h; the others lie about ~20500 EUR/h');
	// In another's hand, of the same workbook.
	expect([...reviewSteps(workbook)].flat()[0]?.what).toContain('210000 EUR/h; the others');
});

describe('entries far from their siblings', () => {
	it('are told with where the others lie', () => {
		expect(found('far_from_siblings', perLine('pay', 20, 21, 210, 19, 20.5))).toEqual([
			['pay', 'L3', null, '210 EUR/h; the others lie about 20.5 EUR/h']
		]);
		expect(found('far_from_siblings', perLine('pay', 20, 20, 20, 20, -20))).toHaveLength(1);
		const days = perLine('days', 20, 20, 20, 20, -20);
		const held = (min: number) => ({ ...days, usual: { min, max: 60 } });
		expect(found('far_from_siblings', held(1))).toHaveLength(1);
		expect(found('far_from_siblings', held(-30))).toEqual([]);
	});

	it('are not where the others spread as widely, or lie within half as much again', () => {
		expect(found('far_from_siblings', perLine('pay', 20, 60, 210, 5, 90))).toEqual([]);
		// A fifth more is no slip, however alike the others are.
		expect(found('far_from_siblings', perLine('pay', 20, 20, 24, 20, 20))).toEqual([]);
	});

	it('are judged by three others only where none of these is a copy of another', () => {
		expect(found('far_from_siblings', perLine('pay', 20, 21, 22, -20))).toHaveLength(1);
		expect(found('far_from_siblings', perLine('pay', 20, 21, 20, -20))).toEqual([]);
		expect(found('far_from_siblings', perLine('pay', 20, 21, 20, 210))).toEqual([]);
		expect(found('far_from_siblings', perLine('pay', 20, 21, 20, 19, 210))).toHaveLength(1);
	});

	it('are not where another has the same: a slip seldom comes out alike twice', () => {
		expect(found('far_from_siblings', perLine('pay', 20, 210, 20.5, 210, 21))).toEqual([]);
		expect(found('far_from_siblings', perLine('pay', 20, 210, 20.5, 250, 21))).toHaveLength(2);
	});

	it('are judged along every axis: what is apart on each line the same is a rule', () => {
		const value = Object.fromEntries(
			['L1', 'L2', 'L3', 'L4', 'L5'].map((from, i) => [
				from,
				{ L1: 5 + i / 10, L2: 5.1, L3: 5.2, L4: 5, L5: 50 + i }
			])
		);
		const pairs = { ...perLine('pair'), per: ['from: line', 'to: line'], value };
		expect(found('far_from_siblings', pairs)).toEqual([]);
		const slip = { ...value, L2: { ...value['L2']!, L3: 52 } };
		expect(found('far_from_siblings', { ...pairs, value: slip })).toMatchObject([
			['pair', 'L2,L3', null, expect.anything()]
		]);
	});
});

describe('other entries', () => {
	it('outside their usual range are told, in the base and in a scenario', () => {
		const usual = { min: 5, max: 60 };
		const workbook = book(
			[perLine('pay', 20, 0.2), { ...entered('wage', 20), usual }],
			[{ id: 'cheap', title: 'Cheap', parent: 'base', changes: [{ quantity: 'wage', value: 2 }] }]
		);
		expect(of('outside_usual', workbook)).toEqual([
			['wage', '', 'cheap', '2 EUR/h; usual is at least 5 and at most 60 EUR/h']
		]);
	});

	it('of more digits than anyone measures may be pasted results', () => {
		expect(found('pasted', entered('a', 0.29704371), entered('b', 12.345678901))).toEqual([
			['b', '', null, '12.345678901 EUR/h']
		]);
	});

	it('of one member among formulas are told; a formula among entries is not', () => {
		const by = (cases: Record<string, string>) => ({ by: 'line', cases });
		const per = { per: ['line'] };
		expect(
			found(
				'entered_among_formulas',
				{ ...formula('a', ''), ...per, formula: by({ L2: 'input', '*': 'wage' }) },
				{ ...formula('b', ''), ...per, formula: by({ L2: 'wage', '*': 'input' }) }
			)
		).toEqual([['a', '', null, 'L2 is entered, the others follow formulas']]);
	});
});

describe('what a scenario changes', () => {
	const scenario = (...changes: readonly { quantity: string; value: never }[]) =>
		of(
			'lone_change',
			book(
				[perLine('pay', 1, 2, 3, 4, 5), entered('wage', 20)],
				[{ id: 's', title: 'S', parent: 'base', changes: [...changes] }]
			)
		);
	const change = (quantity: string, value: unknown) => ({ quantity, value: value as never });

	it('for one member beside other changes, or for all but one, is told', () => {
		expect(scenario(change('pay', { L2: 9 }), change('wage', 21))).toEqual([
			['pay', 'L2', 's', 'L2 alone is changed']
		]);
		expect(scenario(change('pay', { L1: 9, L2: 9, L3: 9, L5: 9 }))).toEqual([
			['pay', 'L4', 's', 'All are changed but L4']
		]);
	});

	it('for one month less than another member, is told', () => {
		const hours: Quantity = {
			...{ name: 'hours', label: 'Hours', unit: 'h', per: ['line', 'month'] }
		};
		const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun'].map((id) => ({ id }));
		const lines = (value: Record<string, Record<string, number>>) => {
			const workbook = book(
				[hours, entered('wage', 20)],
				[{ id: 's', title: 'S', parent: 'base', changes: [change('hours', value)] }]
			);
			const sets = [...workbook.sets, { name: 'month', label: 'Month', members: months }];
			return of('lone_change', { ...workbook, sets });
		};
		const all = { Jan: 1, Feb: 1, Mar: 1 };
		expect(lines({ L1: all, L2: { Feb: 1, Mar: 1 } })).toEqual([
			['hours', 'L2,Jan', 's', 'L2, Jan is left out, L1 has all of them']
		]);
		expect(lines({ L1: all, L2: all })).toEqual([]);
		expect(lines({ L1: all, L2: { Mar: 1 } })).toEqual([]);
	});

	it('is not where it is all that the scenario is about, or is changed for all', () => {
		expect(scenario(change('pay', { L2: 9 }))).toEqual([]);
		expect(scenario(change('pay', { L1: 9, L2: 9, L3: 9, L4: 9, L5: 9 }))).toEqual([]);
	});
});

describe('scenarios held against each other and against their names', () => {
	const switches: Quantity = {
		...{ name: 'chosen', label: 'Chosen', type: 'yes_no', per: ['option'] },
		value: { crews: false, crews_july: false, line: false, gauges: false }
	};
	const options = [
		['crews', 'Weekend crews'],
		['crews_july', 'Weekend crews, July'],
		['line', 'New line'],
		['gauges', 'Better gauges']
	].map(([id, label]) => ({ id: id!, label: label! }));
	type Entries = Readonly<Record<string, boolean>>;
	const kindsOf = (...scenarios: readonly (readonly [string, string, Entries, string?])[]) => {
		const workbook = book(
			[switches, entered('wage', 20)],
			scenarios.map(([id, title, value, parent = 'base']) => ({
				...{ id, title, parent },
				changes: Object.keys(value).length > 0 ? [{ quantity: 'chosen', value }] : []
			}))
		);
		const sets = [...workbook.sets, { name: 'option', label: 'Option', members: options }];
		return (kind: LineKind) => of(kind, { ...workbook, sets });
	};
	const crews = ['crews', 'Weekend crews', { crews: true }] as const;
	const july = ['july', 'Weekend crews, July', { crews_july: true }] as const;
	const both = ['both', 'Weekend crews and gauges', { gauges: true }, 'crews'] as const;

	it('one that enters nothing, or what another one holds by whatever way, is told', () => {
		expect(kindsOf(crews, july, both)('same_entries')).toEqual([]);
		const lost = kindsOf(crews, ['lost', 'Gauges', {}], ['again', 'Again', { crews: true }]);
		expect(lost('same_entries').map(([, , scenario, what]) => [scenario, what])).toEqual([
			['lost', 'Nothing is entered in it that Base does not hold as well'],
			['again', 'Nothing is entered in it that Weekend crews does not hold as well']
		]);
		const likeBase = kindsOf(['off', 'Off', { line: false }]);
		expect(likeBase('same_entries')).toHaveLength(1);
	});

	it('one whose name speaks of what it does not choose is told', () => {
		expect(kindsOf(crews, july, both)('not_as_named')).toEqual([]);
		const other = ['both', 'Weekend crews and gauges', { line: true }, 'crews'] as const;
		expect(kindsOf(crews, july, other)('not_as_named')).toEqual([
			[
				...['chosen', 'gauges', 'both'],
				'Its name speaks of Better gauges, which is not chosen in it'
			]
		]);
	});

	it('nothing is said of names where scenarios are not named after what they choose', () => {
		const plain = kindsOf(['a', 'Case A', { crews: true }], ['b', 'With gauges', { line: true }]);
		expect(plain('not_as_named')).toEqual([]);
	});
});

describe('formulas in themselves', () => {
	it('that are nothing but another quantity are copies', () => {
		expect(found('copy', entered('wage', 20), formula('a', 'wage')).map(([name]) => name)).toEqual([
			'a',
			'result'
		]);
		expect(found('copy', perLine('pay', 1), formula('a', 'SUM(pay over line)'))).toEqual([]);
	});

	it.each([
		['wage + wage', 'wage is added twice'],
		['wage - wage', 'wage stands on both sides of -'],
		['MIN(wage; a; wage)', 'wage stands twice in MIN'],
		['IF(a > wage; wage; wage)', 'wage is both answers of an IF']
	])('that use the same twice are told: %s', (text, what) => {
		expect(found('twice', entered('wage', 20), formula('b', text))).toEqual([
			['b', '', null, what]
		]);
	});

	it('that nobody reads are told, unless something shows or checks them', () => {
		const check = { check: { message: 'It is not.' } };
		expect(
			found(
				'unread',
				...[entered('wage', 20), entered('lost', 20), entered('below', 1)],
				formula('sum', 'wage + 1[EUR/h]'),
				formula('held', 'wage - sum', check)
			)
		).toEqual([['lost', '', null, 'It is entered, and nothing uses it']]);
	});
});

describe('entries as in the workbook that this one was begun from', () => {
	const template = book([perLine('pay', 1, 2, 3), entered('wage', 20), formula('result', 'wage')]);
	const begun = (...quantities: readonly Quantity[]): Workbook => ({
		...book([...quantities, formula('result', 'wage')]),
		begun_from: 'one-line-shop'
	});
	const told = (workbook: Workbook) =>
		reviewLines(workbook, template)
			.filter(({ kind }) => kind === 'as_in_template')
			.map(({ quantity, what }) => [quantity?.name, what]);
	const own = begun(perLine('pay', 1, 2.5, 3), entered('wage', 20), perLine('added', 5));

	it('are told by quantity once the figures are said to be no longer invented', () => {
		expect(told(own)).toEqual([
			['pay', '2 of 3 values as in To review'],
			['wage', 'its value as in To review']
		]);
		expect(told({ ...own, invented: true })).toEqual([]);
		expect(told(book([entered('wage', 20)]))).toEqual([]);
	});

	it('are counted by sheet, invented or not', () => {
		const counted = ownQuantities({ ...own, invented: true }, template);
		expect([...ownBySheet(counted)]).toEqual([['One', { entered: 5, same: 3 }]]);
		expect(ownInAll(counted)).toEqual({ entered: 5, same: 3 });
		expect(counted.map(({ quantity, shipped }) => [quantity.name, shipped])).toEqual([
			['pay', [['L1'], ['L3']]],
			['wage', [[]]],
			['added', []]
		]);
	});

	it('that were ticked off are one’s own', () => {
		const line = reviewLines(own, template).find(({ quantity }) => quantity?.name === 'pay')!;
		const ticked = applyCommand(own, {
			...{ kind: 'set_ticks', ticks: [tickOf(line, 'Ada', 'the same with us')] }
		});
		if (!ticked.ok) throw new Error(ticked.problem.message);
		expect(ownInAll(ownQuantities(ticked.workbook, template))).toEqual({ entered: 5, same: 1 });
		// The page and the sheets ask for the same: it is counted once.
		expect(ownQuantities(ticked.workbook, template)).toBe(ownQuantities(ticked.workbook, template));
	});
});

describe('a line that somebody ticked off', () => {
	const start = book([entered('wage', 20), formula('result', '3 * wage')]);
	const [line] = reviewLines(start);
	const ticked = applyCommand(start, {
		...{ kind: 'set_ticks', ticks: [tickOf(line!, 'Ada', 'three shifts')] }
	});
	if (!ticked.ok) throw new Error(ticked.problem.message);
	const after = (quantity: Quantity) => {
		const name = quantity.name === 'renamed' ? 'result' : quantity.name;
		const edit = applyCommand(ticked.workbook, { kind: 'replace_quantity', name, quantity });
		if (!edit.ok) throw new Error(edit.problem.message);
		return withTicks(edit.workbook, reviewLines(edit.workbook));
	};

	it('is done, with the name and the reason', () => {
		expect(withTicks(ticked.workbook, reviewLines(ticked.workbook))).toMatchObject([
			{ tick: { by: 'Ada', reason: 'three shifts' }, isBack: false }
		]);
	});

	it('comes back when what it speaks of changes, and says so', () => {
		expect(after(formula('result', '30 * wage'))).toMatchObject([{ tick: null, isBack: true }]);
		expect(after(formula('result', 'wage + 3[EUR/h]'))).toMatchObject([{ isBack: true }]);
	});

	it('stays done where something else does, a name in the formula as well', () => {
		expect(after(entered('wage', 25))[0]!.tick).not.toBeNull();
		const named = applyCommand(ticked.workbook, {
			...{ kind: 'replace_quantity', name: 'wage', quantity: entered('pay', 20) }
		});
		if (!named.ok) throw new Error(named.problem.message);
		expect(withTicks(named.workbook, reviewLines(named.workbook))[0]!.tick).not.toBeNull();
	});

	it('holds for an entry far from its siblings that moves a little, and not for one that doubles', () => {
		const far = (value: number) => book([perLine('pay', 20, 21, value, 19, 20.5)]);
		const [line] = reviewLines(far(210)).filter(({ kind }) => kind === 'far_from_siblings');
		const stands = (value: number) =>
			withTicks(
				{ ...far(value), reviewed: [tickOf(line!, 'Ada', 'as agreed')] },
				reviewLines(far(value))
			).find((one) => one.line.kind === 'far_from_siblings')!;
		expect(stands(200)).toMatchObject({ isBack: false, tick: { by: 'Ada' } });
		expect(stands(420)).toMatchObject({ isBack: true, tick: null });
	});

	it('is known again when its quantity or its member has another name', () => {
		expect(after(formula('renamed', '3 * wage'))).toMatchObject([{ tick: { by: 'Ada' } }]);
		const pay = perLine('pay', 20, 21, 210, 19, 20.5);
		const before = book([pay, formula('result', 'SUM(pay over line)')]);
		const [far] = reviewLines(before);
		const done = applyCommand(before, {
			...{ kind: 'set_ticks', ticks: [tickOf(far!, 'Ada', 'a night job')] }
		});
		const named = applyCommand(done.ok ? done.workbook : before, {
			...{ kind: 'replace_member', set: 'line', id: 'L3', member: { id: 'L3 old' } }
		});
		expect(named).toMatchObject({ ok: true });
		if (!named.ok) return;
		expect(withTicks(named.workbook, reviewLines(named.workbook))).toMatchObject([
			{ id: 'far_from_siblings pay L3 old', tick: { by: 'Ada' }, isBack: false }
		]);
	});

	it('is open again when it is taken back, and the file is as it was', () => {
		const back = applyCommand(ticked.workbook, {
			kind: 'set_ticks',
			ticks: [{ id: lineId(line!) }]
		});
		expect(back).toMatchObject({ ok: true, workbook: start });
	});
});

it('gives the list in pieces, one quantity or scenario at a time, and what is said of scenarios among themselves', () => {
	const workbook = book([entered('wage', 20), formula('result', '3 * wage')]);
	expect([...reviewSteps(workbook)].length).toBe(2 + 2 + 1 + 1);
	expect(new Set(KIND_NAMES).size).toBe(13);
});
