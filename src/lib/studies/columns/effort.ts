/** How much work one column of a study is, counted from its program. */
import type { Program } from '$lib/engine/interpreter/program';
import { isAggregate } from '$lib/engine/operations';

export interface Effort {
	readonly steps: number;
	/** A step on two numbers is one, one that gathers n terms is n − 1. */
	readonly operations: number;
}

export function effortOf({ code }: Program): Effort {
	let steps = 0;
	let operations = 0;
	for (let pc = 0; pc < code.length; pc += 3 + code[pc + 1]!) {
		const terms = isAggregate(code[pc]!) ? Math.floor(code[pc + 1]! / 3) : 2;
		steps++;
		operations += Math.max(1, terms - 1);
	}
	return { steps, operations };
}
