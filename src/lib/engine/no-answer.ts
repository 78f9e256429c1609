/** Why an aggregate has no answer, from the terms that it gathered. */
import type { Probe } from './interpreter/probe';
import { presentValueRates } from './interpreter/roots';
import { NONE } from './operands';
import { Op, operation, parameterCount } from './operations';
import { listed, numberText } from './number-words';

export const nothingLeft = (name: string) => `nothing is left to take the ${name} of`;

export function whyNoAnswer(own: Probe, node: number): string {
	const op = own.nodes.op[node]!;
	const flows = keptValues(own, node, op);
	const name = operation(op).name ?? '';
	if (flows.length === 0) return nothingLeft(name);
	switch (op) {
		case Op.Irr:
			return whyNoRate(flows);
		case Op.Mirr:
			return 'MIRR needs at least one amount that is paid and one that is received';
		case Op.Payback:
			return whyNoPayback(flows);
		case Op.Slope:
		case Op.Intercept:
			return 'a straight line needs at least two pairs';
		case Op.Stdev:
			return 'a deviation needs at least two values';
		default:
			return `there is no ${name} of these values`;
	}
}

function keptValues(own: Probe, node: number, op: number): number[] {
	const operands = own.operands(node);
	const kept: number[] = [];
	for (let term = 0; term < operands.length - parameterCount(op); term += 3) {
		const filter = operands[term + 1]!;
		if (filter === NONE || own.value(filter).value !== 0)
			kept.push(own.value(operands[term]!).value);
	}
	return kept;
}

function whyNoRate(flows: readonly number[]): string {
	if (flows.every((flow) => flow === 0)) return 'all of its cash flows are 0, so any rate would do';
	if (flows.every((flow) => flow >= 0) || flows.every((flow) => flow <= 0))
		return 'its cash flows never change sign, so no rate makes them worth nothing today';
	const rates = presentValueRates(flows, flows.length);
	if (rates.length === 0) return 'no rate makes its cash flows worth nothing today';
	const texts = rates.map((rate) => `${numberText(rate * 100)} %`);
	return `its cash flows are worth nothing today at ${rates.length} rates (${listed(texts)}), so none of them is the rate of return`;
}

function whyNoPayback(flows: readonly number[]): string {
	let total = 0;
	let wasBelow = false;
	for (const flow of flows) {
		total += flow;
		if (total < 0) wasBelow = true;
	}
	return wasBelow
		? `the running total does not come back to 0; it ends at ${numberText(total)}`
		: 'the running total is never below 0, so there is nothing to pay back';
}
