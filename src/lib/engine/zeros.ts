/**
 * Which cells make a node what it is: the one cell whose value it passes on, and those whose zeros make it
 * zero. Null or empty where it takes a calculation to say.
 */
import type { Probe, Reading } from './interpreter/probe';
import { NONE } from './operands';
import { Op } from './operations';
import { OK } from './state';

/** The cell whose value a node passes on, converted perhaps; null where it computes. */
export function passedOn(own: Probe, node: number): Reading | null {
	let here = node;
	for (;;) {
		if (own.nodes.op[here] === Op.Cell) return own.reading(here);
		const next = chosen(own, here);
		if (next === NONE) return null;
		here = next;
	}
}

/** The operand that a node takes as it stands. */
function chosen(own: Probe, node: number): number {
	const { op } = own.nodes;
	const [a = NONE, b = NONE, c = NONE, ...more] = own.operands(node);
	const isOk = (operand: number) => own.value(operand).state === OK;
	switch (op[node]) {
		case Op.InRange:
			return a;
		case Op.Guard:
			return b;
		case Op.If:
			return isOk(a) ? (own.value(a).value !== 0 ? b : c) : NONE;
		case Op.IfError:
		case Op.OrElse:
			return isOk(a) ? a : b;
		case Op.Pick:
			return isOk(a) ? ([b, c, ...more][own.value(a).value] ?? NONE) : NONE;
		case Op.Multiply:
			if (op[b] === Op.Constant) return a;
			return op[a] === Op.Constant ? b : NONE;
		default:
			return NONE;
	}
}

/** At most three cells whose zeros make a node zero; empty where it is not for zeros alone. */
export function zerosOf(own: Probe, node: number): Reading[] {
	const found: Reading[] = [];
	// Each in the order of the formula; a node that is not explained makes the whole unexplained.
	const stack = [node];
	while (stack.length > 0) {
		const here = stack.pop()!;
		const reading = passedOn(own, here);
		if (reading) {
			if (!found.some(({ cell, which }) => cell === reading.cell && which === reading.which))
				found.push(reading);
			if (found.length > 3) return [];
			continue;
		}
		const causes = zeroOperands(own, here);
		if (causes.length === 0) return [];
		stack.push(...[...causes].reverse());
	}
	return found;
}

function zeroOperands(own: Probe, node: number): readonly number[] {
	const operands = own.operands(node);
	const isZero = (operand: number) => own.value(operand).value === 0;
	switch (own.nodes.op[node]) {
		case Op.Multiply:
			return operands.filter(isZero).slice(0, 1);
		case Op.Add:
			return operands.every(isZero) ? operands : [];
		case Op.Divide:
		case Op.Power:
			return operands.slice(0, 1).filter(isZero);
		case Op.Negate:
		case Op.Abs:
		case Op.Sqrt:
			return operands.filter(isZero);
		case Op.Sum: {
			const kept: number[] = [];
			for (let term = 0; term < operands.length; term += 3) {
				const filter = operands[term + 1]!;
				if (filter === NONE || !isZero(filter)) kept.push(operands[term]!);
			}
			return kept.length <= 3 && kept.every(isZero) ? kept : [];
		}
		default:
			return [];
	}
}
