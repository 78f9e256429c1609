import { expect, it } from 'vitest';
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
	const entered = (name: string, value: number, holds: Uint8Array | null = null) => {
		machine.write(cell(name), [value], [OK]);
		ripple.changed(cell(name), holds);
		const ran: number[] = [];
		const changed = ripple.run(holds, (one) => ran.push(one));
		return { ran, changed };
	};
	return { machine, ripple, entered };
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

it('leaves out what is not held, and starts afresh afterwards', () => {
	const { machine, entered } = opened();
	const holds = new Uint8Array(plan.cells).fill(1);
	holds[cell('left')] = 0;
	expect(entered('wanted', 7, holds).ran).toEqual([cell('taken')]);
	expect(machine.values[cell('left')]).toBe(2);
	expect(entered('most', 1).changed).toContain(cell('left'));
});

it('runs a formula that is asked for whatever it reads', () => {
	const { ripple } = opened();
	ripple.ask(cell('twice'));
	const ran: number[] = [];
	expect(ripple.run(null, (one) => ran.push(one))).toEqual([]);
	expect(ran).toEqual([cell('twice')]);
});
