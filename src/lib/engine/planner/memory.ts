/**
 * What the building of a plan found out and a later question about it needs again. A plan that came from
 * another thread has none; it is found out anew.
 */
import type { Plan } from '../plan';
import { maybeAbsent, type ProvenPart } from './absence';
import { Context } from './context';
import { conditionsOfInputs } from './input-conditions';
import { proveQuantity } from './part';

export interface Memory {
	readonly context: Context;
	readonly absent: Uint8Array;
	readonly inputConditions: ReadonlyMap<number, ProvenPart>;
}

const memories = new WeakMap<Plan, Memory>();

export function remember(plan: Plan, memory: Memory): void {
	memories.set(plan, memory);
}

export function memoryOf(plan: Plan): Memory {
	const known = memories.get(plan);
	if (known) return known;
	const context = new Context(plan.layout.workbook, plan.layout);
	const proven = context.quantities.map((quantity) => proveQuantity(context, quantity));
	const memory = {
		context,
		absent: maybeAbsent(context, proven),
		inputConditions: conditionsOfInputs(proven)
	};
	memories.set(plan, memory);
	return memory;
}
