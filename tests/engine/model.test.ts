import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { ABSENT, CIRCULAR, NOT_ENTERED, OUT_OF_RANGE, USES_EMPTY } from '$lib/engine/state';
import { missing } from './interpreter-hand';
import { cellIn, enter, scenario, shop, valueOf } from './model-shop';
import { workbookOf } from './plan-builder';

describe('an open workbook', () => {
	it('has a value for every cell of the base', () => {
		const model = Model.open(shop());
		expect(model.problems).toEqual([]);
		expect(valueOf(model, 'base', 'metres', 'L1')).toBe(600); // 10 m/min × 1 h
		expect(valueOf(model, 'base', 'metres', 'L2')).toBe(2400); // 20 m/min × 2 h
		expect(valueOf(model, 'base', 'total')).toBe(600 * 2 + 2400 * 3);
		expect(valueOf(model, 'base', 'gain')).toBe(0);
	});

	it('shows a choice as the place of its member, yes as 1', () => {
		const model = Model.open(shop());
		expect(valueOf(model, 'base', 'grade_of', 'L2')).toBe(1);
		expect(valueOf(model, 'base', 'installed', 'L3')).toBe(0);
	});

	it('shows an empty input as not entered, and what uses it as an error', () => {
		const model = Model.open(shop());
		expect(valueOf(model, 'base', 'note_free')).toEqual(missing(NOT_ENTERED));
		enter(model, 'base', 'price', ['red'], null);
		expect(valueOf(model, 'base', 'revenue', 'L2')).toEqual(missing(USES_EMPTY));
		expect(valueOf(model, 'base', 'revenue', 'L1')).toBe(1200);
		expect(valueOf(model, 'base', 'total')).toEqual(missing(USES_EMPTY));
	});

	it('takes an input outside its range for an error', () => {
		const model = Model.open(shop());
		enter(model, 'base', 'speed', ['L1'], 0);
		expect(valueOf(model, 'base', 'speed', 'L1')).toEqual(missing(OUT_OF_RANGE));
		expect(valueOf(model, 'base', 'total')).toEqual(missing(OUT_OF_RANGE));
	});

	it('a member that is not present is absent in inputs and results, and gathered nowhere', () => {
		const model = Model.open(shop());
		expect(valueOf(model, 'base', 'speed', 'L3')).toEqual(missing(ABSENT));
		expect(valueOf(model, 'base', 'revenue', 'L3')).toEqual(missing(ABSENT));
		enter(model, 'base', 'installed', ['L3'], true);
		expect(valueOf(model, 'base', 'speed', 'L3')).toBe(30);
		expect(valueOf(model, 'base', 'revenue', 'L3')).toBe(30 * 180 * 3);
	});

	it('an entered value for which `where` says no is absent, and gathered nowhere', () => {
		const model = Model.open(
			workbookOf({
				sets: { line: ['L1', 'L2'] },
				quantities: {
					runs: { type: 'yes_no', per: ['line'], value: { L1: true, L2: false } },
					speed: { per: ['line'], value: { L1: 10, L2: 20 }, where: 'runs' },
					total: { formula: 'SUM(speed over line)' }
				}
			})
		);
		expect(valueOf(model, 'base', 'speed', 'L2')).toEqual(missing(ABSENT));
		expect(valueOf(model, 'base', 'total')).toBe(10);
		enter(model, 'base', 'runs', ['L2'], true);
		expect(valueOf(model, 'base', 'speed', 'L2')).toBe(20);
		expect(valueOf(model, 'base', 'total')).toBe(30);
	});

	it('a formula may say who is present', () => {
		const model = Model.open(
			workbookOf({
				sets: { line: { members: [{ id: 'L1' }, { id: 'L2' }], present: 'open' } },
				quantities: {
					least: { value: 2 },
					open: { type: 'yes_no', per: ['line'], formula: 'ORD(line) >= least' },
					speed: { per: ['line'], value: { L1: 10, L2: 20 } },
					total: { formula: 'SUM(speed over line)' }
				}
			})
		);
		expect(valueOf(model, 'base', 'speed', 'L1')).toEqual(missing(ABSENT));
		expect(valueOf(model, 'base', 'total')).toBe(20);
		enter(model, 'base', 'least', [], 1);
		expect(valueOf(model, 'base', 'total')).toBe(30);
	});

	it('answers for the base where a scenario is not there any more', () => {
		const model = Model.open(shop());
		expect(valueOf(model, 'gone', 'total')).toBe(valueOf(model, 'base', 'total'));
	});
});

describe('a scenario', () => {
	const faster = scenario('faster', 'base', { speed: { L1: 20 } });

	it('differs where its changes reach, and holds no more than that', () => {
		const model = Model.open(shop([faster]));
		expect(valueOf(model, 'faster', 'metres', 'L1')).toBe(1200);
		expect(valueOf(model, 'faster', 'metres', 'L2')).toBe(2400);
		expect(valueOf(model, 'faster', 'gain')).toBe(1200); // 600 m more, at 2 EUR/m
		// speed, metres and revenue of L1, the total and the gain
		expect(model.cellsHeldBy('faster')).toBe(5);
		expect([...model.inputsChangedBy('faster')]).toEqual([cellIn(model, 'speed', 'L1')]);
	});

	it('without changes equals its parent', () => {
		const model = Model.open(shop([faster, scenario('same', 'faster', {}, 'base')]));
		expect(model.results('same').values).toEqual(model.results('faster').values);
		expect(model.results('same').states).toEqual(model.results('faster').states);
		expect(model.cellsHeldBy('same')).toBe(0);
	});

	it('is measured against the scenario that it names', () => {
		const onTop = scenario('on_top', 'faster', { hours: { L1: 2 } }, 'faster');
		const model = Model.open(shop([faster, onTop]));
		// 20 m/min × 2 h instead of 20 m/min × 1 h, at 2 EUR/m
		expect(valueOf(model, 'on_top', 'gain')).toBe((2400 - 1200) * 2);
		// The base gains nothing over itself, and the parent is measured against the base.
		expect(valueOf(model, 'faster', 'gain')).toBe((1200 - 600) * 2);
	});

	it('can have a member that the base lacks', () => {
		const model = Model.open(shop([scenario('third', 'base', { installed: { L3: true } })]));
		expect(valueOf(model, 'third', 'hours', 'L3')).toBe(3);
		expect(valueOf(model, 'third', 'gain')).toBe(30 * 180 * 3);
		expect(valueOf(model, 'base', 'hours', 'L3')).toEqual(missing(ABSENT));
	});

	it('may clear a value', () => {
		const model = Model.open(shop([scenario('bare', 'base', { price: { blue: null } })]));
		expect(valueOf(model, 'bare', 'price', 'blue')).toEqual(missing(NOT_ENTERED));
		expect(valueOf(model, 'bare', 'total')).toEqual(missing(USES_EMPTY));
		expect(valueOf(model, 'bare', 'gain')).toEqual(missing(USES_EMPTY));
	});

	it('measured against one that is built on it goes round in a circle, and says so', () => {
		const workbook = shop([
			scenario('first', 'base', { speed: { L1: 20 } }, 'second'),
			scenario('second', 'first', { speed: { L2: 40 } })
		]);
		const model = Model.open(workbook);
		expect(valueOf(model, 'first', 'gain')).toEqual(missing(CIRCULAR));
		expect(valueOf(model, 'first', 'total')).toBe(1200 * 2 + 2400 * 3);
		expect(valueOf(model, 'second', 'total')).toBe(1200 * 2 + 4800 * 3);
	});
});

describe('an edit', () => {
	const chain = () => [
		scenario('faster', 'base', { speed: { L1: 20 } }),
		scenario('longer', 'faster', { hours: { L1: 2 } }, 'faster'),
		scenario('dearer', 'base', { price: { blue: 5, red: 5 } })
	];
	const opened = () => {
		const model = Model.open(shop(chain()));
		for (const { id } of model.workbook.scenarios) model.results(id);
		return model;
	};

	it('in the base changes it and every scenario that inherits the value', () => {
		const model = opened();
		// The dearer one has prices of its own, but what it gains over the base changes.
		const all = ['base', 'faster', 'longer', 'dearer'];
		expect(enter(model, 'base', 'price', ['blue'], 4)).toEqual(all);
		expect(valueOf(model, 'dearer', 'gain')).toBe(600 * (5 - 4) + 2400 * (5 - 3));
		expect(valueOf(model, 'base', 'total')).toBe(600 * 4 + 2400 * 3);
		expect(valueOf(model, 'longer', 'total')).toBe(2400 * 4 + 2400 * 3);
	});

	it('of a value that a scenario changes itself leaves it, apart from its comparison', () => {
		const model = opened();
		const before = valueOf(model, 'faster', 'total');
		expect(enter(model, 'base', 'speed', ['L1'], 11)).toContain('faster');
		expect(valueOf(model, 'faster', 'total')).toEqual(before);
		expect(valueOf(model, 'faster', 'gain')).toBe((1200 - 660) * 2);
	});

	it('in a scenario changes it, its children and those measured against it', () => {
		const model = opened();
		expect(enter(model, 'faster', 'speed', ['L1'], 30)).toEqual(['faster', 'longer']);
		expect(valueOf(model, 'longer', 'total')).toBe(3600 * 2 + 2400 * 3);
		expect(valueOf(model, 'longer', 'gain')).toBe((3600 - 1800) * 2);
	});

	it('that changes nothing changes no scenario', () => {
		const model = opened();
		expect(enter(model, 'base', 'hours', ['L2'], 2)).toEqual([]);
	});

	it('can be taken back', () => {
		const model = opened();
		const before = model.results('longer');
		const done = model.apply({
			kind: 'set_inputs',
			scenario: 'longer',
			entries: [{ quantity: 'speed', at: ['L2'], value: 50 }]
		});
		expect(valueOf(model, 'longer', 'metres', 'L2')).toBe(6000);
		if (done.ok) model.apply(done.inverse);
		expect(model.results('longer')).toEqual(before);
	});

	it('that is refused leaves everything as it was', () => {
		const model = opened();
		const { workbook } = model;
		const done = model.apply({
			kind: 'set_inputs',
			scenario: 'base',
			entries: [{ quantity: 'total', at: [], value: 1 }]
		});
		expect(done.ok).toBe(false);
		expect(model.workbook).toBe(workbook);
	});

	it('of a formula plans anew', () => {
		const model = opened();
		const done = model.apply({
			kind: 'replace_quantity',
			name: 'metres',
			quantity: {
				name: 'metres',
				label: 'Metres',
				unit: 'm',
				per: ['line'],
				formula: 'speed * hours * 2'
			}
		});
		expect(done).toMatchObject({ ok: true, structural: true });
		expect(valueOf(model, 'base', 'metres', 'L1')).toBe(1200);
		expect(valueOf(model, 'faster', 'metres', 'L1')).toBe(2400);
	});

	it('of words keeps the plan, and shows the new words', () => {
		const model = opened();
		const { plan } = model;
		const { quantity } = model.layout.byName.get('hours')!;
		model.apply({
			kind: 'replace_quantity',
			name: 'hours',
			quantity: { ...quantity, label: 'Hours of the day' }
		});
		expect(model.plan).toBe(plan);
		expect(model.layout.byName.get('hours')!.quantity.label).toBe('Hours of the day');
	});
});

describe('scenarios come and go', () => {
	it('a new one is computed, the plan and the others kept', () => {
		const model = Model.open(shop());
		const { plan } = model;
		const done = model.apply({
			kind: 'add_scenario',
			index: 1,
			scenario: scenario('new', 'base', { hours: { L1: 3 } })
		});
		expect(done).toMatchObject({ ok: true, structural: false, changed: ['new'] });
		expect(model.plan).toBe(plan);
		expect(valueOf(model, 'new', 'metres', 'L1')).toBe(1800);
	});

	it('one that starts from another scenario than before is computed afresh', () => {
		const model = Model.open(
			shop([
				scenario('faster', 'base', { speed: { L1: 20 } }),
				scenario('longer', 'base', { hours: { L1: 2 } })
			])
		);
		expect(valueOf(model, 'longer', 'metres', 'L1')).toBe(1200);
		const done = model.apply({
			kind: 'replace_scenario',
			id: 'longer',
			scenario: { id: 'longer', title: 'Longer', parent: 'faster' }
		});
		expect(done).toMatchObject({ ok: true, changed: ['longer'] });
		expect(valueOf(model, 'longer', 'metres', 'L1')).toBe(2400);
	});

	it('one made the base gives its values to all', () => {
		const model = Model.open(shop([scenario('faster', 'base', { speed: { L1: 20 } })]));
		model.results('faster');
		expect(model.apply({ kind: 'promote_scenario', id: 'faster' }).ok).toBe(true);
		const [base] = model.workbook.scenarios;
		expect(valueOf(model, base!.id, 'metres', 'L1')).toBe(1200);
	});
});
