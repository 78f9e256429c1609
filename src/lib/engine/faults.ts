/**
 * The errors of one scenario in brief: where they arose, grouped by quantity, and which quantities show one.
 */
import type { Workbook } from '$lib/workbook/schema';
import { findFault, type Answers } from './root-cause';
import { membersOf, quantityOf, type QuantityLayout } from './layout';
import { ownerOf } from './naming';
import type { Plan } from './plan';
import { originOf } from './reason';
import type { Origin } from './results';
import { isError } from './state';
import { listed } from './number-words';

/** Cells of one quantity in which errors arose. */
export interface ErrorOrigin {
	readonly quantity: string;
	readonly cells: readonly number[];
	/** "wall_set_point, all 10 products", "mtbf of L2". */
	readonly where: string;
	/** What is wrong with the first of them. */
	readonly reason: string;
}

/** A quantity that shows an error, its first cell in error standing for all. */
export interface QuantityFault {
	readonly quantity: string;
	readonly cell: number;
	readonly count: number;
	readonly origin: Origin;
}

/** Where errors arose: the cells none of whose precedents is in error, or the input that is to blame. */
export function errorOrigins(
	answers: Answers,
	workbook: Workbook,
	scenario: string
): ErrorOrigin[] {
	const { plan } = answers;
	const { states } = answers.column(scenario);
	const { starts, targets } = plan.precedents;
	const onLoop = new Set(plan.circular);
	const byQuantity = new Map<QuantityLayout, { cells: Set<number>; reason: string }>();
	const wrong = shown(plan, states);
	for (let cell = 0; cell < plan.cells; cell++) {
		if (wrong[cell] === 0) continue;
		const read = targets.subarray(starts[cell]!, starts[cell + 1]!);
		if (read.some((other) => isError(states[other]!)) && !onLoop.has(cell)) continue;
		const fault = findFault(answers, scenario, cell);
		const owner = ownerOf(plan, fault.named);
		const known = byQuantity.get(owner);
		if (known) known.cells.add(fault.named);
		else {
			const reason = originOf(answers, workbook, scenario, cell)?.reason ?? '';
			byQuantity.set(owner, { cells: new Set([fault.named]), reason });
		}
	}
	return [...byQuantity]
		.sort(([a], [b]) => a.index - b.index)
		.map(([owner, { cells, reason }]) => {
			const sorted = [...cells].sort((a, b) => a - b);
			const where = whereText(answers, owner, sorted);
			return { quantity: owner.quantity.name, cells: sorted, where, reason };
		});
}

/**
 * Cells in error that a value in error has been computed from. A lifted subterm is left out where only
 * values that are absent would read it: the sum over a line that is not installed.
 */
function shown({ cells, layout, precedents }: Plan, states: Uint8Array): Uint8Array {
	const { starts, targets } = precedents;
	const found = new Uint8Array(cells);
	const open: number[] = [];
	const note = (cell: number) => {
		if (found[cell] === 1 || !isError(states[cell]!)) return;
		found[cell] = 1;
		open.push(cell);
	};
	for (let cell = 0; cell < layout.cells; cell++) note(cell);
	for (let cell = open.pop(); cell !== undefined; cell = open.pop())
		for (let i = starts[cell]!; i < starts[cell + 1]!; i++) note(targets[i]!);
	return found;
}

/** How many members are named before the rest is counted. */
const NAMED = 3;

function whereText({ plan }: Answers, owner: QuantityLayout, cells: readonly number[]): string {
	const { quantity, axes, base, count } = owner;
	const own = cells.filter((cell) => cell >= base && cell < base + count);
	if (axes.length === 0 || own.length === 0) return quantity.name;
	if (own.length === count && count > 1) {
		const set = plan.layout.sets.get(axes[0]!.set);
		const many = axes.length === 1 ? (set?.plural ?? set?.label ?? 'values') : 'values';
		return `${quantity.name}, all ${count} ${many.toLowerCase()}`;
	}
	const names = own.slice(0, NAMED).map((cell) => membersOf(plan.layout, cell).join(' on '));
	const more = own.length - names.length;
	const listedNames = more > 0 ? `${names.join(', ')} and ${more} more` : listed(names);
	return `${quantity.name} of ${listedNames}`;
}

/** The quantities of which a value is in error, in sheet order. */
export function faultsByQuantity(
	answers: Answers,
	workbook: Workbook,
	scenario: string
): QuantityFault[] {
	const { layout } = answers.plan;
	const { states } = answers.column(scenario);
	const counts = new Map<QuantityLayout, { cell: number; count: number }>();
	for (let cell = 0; cell < layout.cells; cell++) {
		if (!isError(states[cell]!)) continue;
		const owner = quantityOf(layout, cell)!;
		const known = counts.get(owner);
		if (known) known.count++;
		else counts.set(owner, { cell, count: 1 });
	}
	return [...counts].map(([owner, { cell, count }]) => ({
		quantity: owner.quantity.name,
		cell,
		count,
		origin: originOf(answers, workbook, scenario, cell)!
	}));
}
