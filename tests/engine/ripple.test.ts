import { expect, it, vi } from 'vitest';
import { Machine } from '$lib/engine/interpreter/machine';
import { wholeProgram } from '$lib/engine/interpreter/program';
import { Ripple } from '$lib/engine/interpreter/ripple';
import { OK } from '$lib/engine/state';
import { cellOf, planOf } from './plan-builder';

const plan = planOf({
	quantities: {
		wanted: { unit: 'm', value: 5 },
		most: { unit: 'm', value: 3 },
		taken: { unit: 'm', formula: 'MIN(wanted; most)' },
		twice: { unit: 'm', formula: 'taken * 2' },
		left: { unit: 'm', formula: 'wanted - taken' },
		sum: { unit: 'm', formula: 'twice + left' }
	}
});
const cell = (name: string) => cellOf(plan, name);

function opened() {
	const machine = new Machine(wholeProgram(plan));
	machine.write(cell('wanted'), [5], [OK]);
	machine.write(cell('most'), [3], [OK]);
	machine.run(plan.order);
	const ripple = new Ripple(plan, machine);
	const entered = (name: string, value: number) => {
		machine.write(cell(name), [value], [OK]);
		ripple.changed(cell(name));
		const ran = vi.spyOn(machine, 'runOne').mockClear();
		const changed = ripple.run();
		return { ran: ran.mock.calls.map(([one]) => one), changed };
	};
	return { machine, entered };
}

it('runs what reads a changed cell, and no more where the value comes out as it was', () => {
	const { machine, entered } = opened();
	// MIN(6, 3) is 3 as before: twice is not asked for; left is 6 − 3, the sum 6 + 3.
	const { ran, changed } = entered('wanted', 6);
	expect(new Set(ran)).toEqual(new Set([cell('taken'), cell('left'), cell('sum')]));
	expect(new Set(changed)).toEqual(new Set([cell('left'), cell('sum')]));
	expect(machine.values[cell('sum')]).toBe(9);
});

it('runs everything that another value reaches', () => {
	const { machine, entered } = opened();
	const { changed } = entered('most', 4);
	expect(changed).toHaveLength(4);
	expect(machine.values[cell('sum')]).toBe(4 * 2 + (5 - 4));
});

it('starts afresh afterwards', () => {
	const { entered } = opened();
	expect(entered('wanted', 7).changed).not.toContain(cell('taken'));
	expect(entered('most', 1).changed).toContain(cell('left'));
	expect(entered('most', 1)).toEqual({ ran: [cell('taken')], changed: [] });
});
