/**
 * Aggregates, column by column: gather the terms that are kept, then reduce them.
 *
 * The first bad state in order wins: term by term the filter before the value, the position, then the
 * parameters. A term that its filter leaves out is not looked at further.
 */
import { Op, parameterCount, type AggregateOp } from '$lib/engine/operations';
import { carried, NO_ANSWER, OK, TOO_LARGE, type State } from '$lib/engine/state';
import { intercept, percentile, slope } from './lines';
import { irr, mirr, npv, payback, type FinanceValue } from './finance';
import { put, type Memory } from './memory';
import { median, placeAmong, sampleDeviation } from './statistics';

let kept = new Float64Array(64);
let positions = new Float64Array(64);

/** Writes `count` columns from place `to` on; returns whether any of them is bad. */
export function aggregate(
	op: AggregateOp,
	memory: Memory,
	operands: number,
	to: number,
	count: number
): boolean {
	const parameters = parameterCount(op);
	const terms = (operands - parameters) / 3;
	if (terms > kept.length) {
		kept = new Float64Array(terms);
		positions = new Float64Array(terms);
	}
	let bad = false;
	for (let i = 0; i < count; i++)
		if (aggregateOne(op, memory, terms, parameters, to + i, i)) bad = true;
	return bad;
}

function aggregateOne(
	op: AggregateOp,
	memory: Memory,
	terms: number,
	parameters: number,
	to: number,
	i: number
): boolean {
	const { values, states, at, by } = memory;
	let count = 0;
	for (let term = 0; term < terms; term++) {
		const filter = at[3 * term + 1]!;
		if (filter >= 0) {
			const place = filter + i * by[3 * term + 1]!;
			const state = states[place]!;
			if (state !== OK) return put(memory, to, 0, carried(state));
			if (values[place] === 0) continue;
		}
		const place = at[3 * term]! + i * by[3 * term]!;
		const state = states[place]!;
		if (state !== OK) return put(memory, to, 0, carried(state));
		kept[count] = values[place]!;
		positions[count] = term;
		const position = at[3 * term + 2]!;
		if (position >= 0) {
			const there = position + i * by[3 * term + 2]!;
			if (states[there] !== OK) return put(memory, to, 0, carried(states[there]!));
			positions[count] = values[there]!;
		}
		count++;
	}
	for (let k = 3 * terms; k < 3 * terms + parameters; k++) {
		const state = states[at[k]! + i * by[k]!]!;
		if (state !== OK) return put(memory, to, 0, carried(state));
	}
	const parameter = (k: number) => values[at[3 * terms + k]! + i * by[3 * terms + k]!]!;
	return put(memory, to, ...reduce(op, count, parameter));
}

/** The result of what was kept, and its state. */
function reduce(op: AggregateOp, count: number, parameter: (k: number) => number): [number, State] {
	switch (op) {
		case Op.Sum:
			return finite(total(count));
		case Op.Count:
			return [count, OK];
		case Op.Product:
			return finite(fold(count, 1, (product, x) => product * x));
		case Op.Any:
			return [fold(count, 0, (any, x) => (x !== 0 ? 1 : any)), OK];
		case Op.All:
			return [fold(count, 1, (all, x) => (x === 0 ? 0 : all)), OK];
	}
	if (count === 0) return [NaN, NO_ANSWER];
	switch (op) {
		case Op.Min:
			return [fold(count, Infinity, Math.min), OK];
		case Op.Max:
			return [fold(count, -Infinity, Math.max), OK];
		case Op.Average:
			return finite(total(count) / count);
		case Op.Stdev:
			// One value alone has no deviation.
			return count < 2 ? [NaN, NO_ANSWER] : finite(sampleDeviation(kept, count));
		case Op.Median:
			return finite(median(kept, count));
		case Op.Rank:
			return [placeAmong(parameter(0), kept, count), OK];
		case Op.Percentile:
			return answered(percentile(kept, count, parameter(0)));
		case Op.Slope:
			return answered(slope(kept, positions, count));
		case Op.Intercept:
			return answered(intercept(kept, positions, count));
		case Op.Npv:
			return answered(npv(parameter(0), kept, count));
		case Op.Irr:
			return answered(irr(kept, count));
		case Op.Mirr:
			return answered(mirr(kept, count, parameter(0), parameter(1)));
		case Op.Payback:
			return answered(payback(kept, positions, count));
		case Op.ArgMin:
			return [positions[best(count, (x, y) => x < y)]!, OK];
		case Op.ArgMax:
			return [positions[best(count, (x, y) => x > y)]!, OK];
		case Op.First:
			return [kept[0]!, OK];
		case Op.Last:
			return [kept[count - 1]!, OK];
	}
}

const answered = ({ value, fault }: FinanceValue): [number, State] => [value, fault];

const finite = (value: number): [number, State] =>
	Number.isFinite(value) ? [value, OK] : [NaN, TOO_LARGE];

const total = (count: number) => fold(count, 0, (sum, x) => sum + x);

function fold(count: number, start: number, step: (result: number, x: number) => number): number {
	let result = start;
	for (let k = 0; k < count; k++) result = step(result, kept[k]!);
	return result;
}

/** The first of the best. */
function best(count: number, better: (x: number, y: number) => boolean): number {
	let at = 0;
	for (let k = 1; k < count; k++) if (better(kept[k]!, kept[at]!)) at = k;
	return at;
}
