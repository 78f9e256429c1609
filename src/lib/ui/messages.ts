/**
 * What stands below the rows of the grid: errors at their cause, checks that do not hold, cautions,
 * and formulas that could not be proven. Read from results; nothing is computed here.
 */
import { checkVerdict, isCaution, isUnusual } from '$lib/engine/check-verdict';
import type { Layout } from '$lib/engine/layout';
import type { PlanProblem } from '$lib/engine/plan';
import type { QuantityFault } from '$lib/engine/faults';
import type { Results } from '$lib/engine/results';
import type { State } from '$lib/engine/state';
import { unusualWords } from '$lib/engine/unusual-words';
import type { RowMessage } from './rows';

export interface CheckCount {
	readonly held: number;
	readonly all: number;
	readonly errors: number;
	readonly cautions: number;
}

interface Sayings {
	readonly messages: RowMessage[];
	readonly count: CheckCount;
}

const sayings = new WeakMap<Results, { readonly layout: Layout; readonly said: Sayings }>();

/** The checks and cautions of one scenario; kept, because rows, summary bar and drawer all ask. */
function sayingsOf(layout: Layout, results: Results): Sayings {
	const known = sayings.get(results);
	if (known?.layout === layout) return known.said;
	const said = sayingsOfAll(layout, results);
	sayings.set(results, { layout, said });
	return said;
}

function sayingsOfAll(layout: Layout, results: Results): Sayings {
	const messages: RowMessage[] = [];
	let all = 0;
	let failed = 0;
	let cautions = 0;
	const where = { workbook: layout.workbook, scenario: results.scenario };
	for (const laid of layout.quantities) {
		const { quantity, base, count } = laid;
		const { check, caution, usual } = quantity;
		if (!check && !caution && !usual) continue;
		const failing: number[] = [];
		const warned: number[] = [];
		const unusual: number[] = [];
		for (let cell = base; cell < base + count; cell++) {
			const [value, state] = [results.values[cell]!, results.states[cell]! as State];
			if (isUnusual(layout, laid, cell, value, state)) unusual.push(cell);
			const verdict = checkVerdict(quantity, value, state);
			if (verdict !== 'not-asked') all++;
			if (verdict === 'fails') failing.push(cell);
			if (isCaution(quantity, value, state, where)) warned.push(cell);
		}
		const about = { scenario: results.scenario, quantity: quantity.name };
		if (check) {
			failed += failing.length;
			if (failing.length > 0)
				messages.push({
					...about,
					tone: 'check',
					cell: failing[0] ?? null,
					count: failing.length,
					text: check.message
				});
		}
		const cautioned = (cells: readonly number[], text: (cell: number) => string) => {
			const [cell] = cells;
			if (cell === undefined) return;
			cautions++;
			messages.push({ ...about, tone: 'caution', cell, count: cells.length, text: text(cell) });
		};
		if (caution) cautioned(warned, () => caution.message);
		cautioned(unusual, (cell) => unusualWords(layout, cell, results.values[cell]!));
	}
	return { messages, count: { held: all - failed, all, errors: 0, cautions } };
}

/** Errors, each once, at the quantity that caused it. */
function causes(scenario: string, faults: readonly QuantityFault[]): RowMessage[] {
	const seen = new Map<string, RowMessage>();
	for (const fault of faults) {
		const { from, reason } = fault.origin;
		const quantity = from?.quantity ?? fault.quantity;
		const cell = from?.cell ?? fault.cell;
		const key = `${quantity} ${cell}`;
		if (seen.has(key)) continue;
		const count = from === null ? fault.count : 1;
		seen.set(key, { tone: 'error', scenario, quantity, cell, count, text: reason });
	}
	return [...seen.values()];
}

export interface MessagesInput {
	readonly layout: Layout;
	readonly results: readonly Results[];
	readonly faults: ReadonlyMap<string, readonly QuantityFault[]>;
	readonly problems: readonly PlanProblem[];
}

/** Everything to say about the scenarios given, formulas first. */
export function messagesOf({ layout, results, faults, problems }: MessagesInput): RowMessage[] {
	const unproven = new Set(problems.map((problem) => problem.quantity));
	const messages: RowMessage[] = problems.map((problem) => ({
		tone: 'formula',
		scenario: '',
		quantity: problem.quantity,
		cell: null,
		count: 0,
		text: problem.message
	}));
	for (const result of results) {
		const errors = causes(result.scenario, faults.get(result.scenario) ?? []);
		messages.push(...errors.filter((error) => !unproven.has(error.quantity)));
		messages.push(...sayingsOf(layout, result).messages);
	}
	return messages;
}

/** How many checks hold in one scenario, and how many errors and cautions it has. */
export function checkCount(
	layout: Layout,
	results: Results,
	faults: readonly QuantityFault[] | undefined
): CheckCount {
	const { count } = sayingsOf(layout, results);
	return { ...count, errors: causes(results.scenario, faults ?? []).length };
}

const NO_CAUSES: ReadonlyMap<string, string> = new Map();
const inherited = new WeakMap<Layout, WeakMap<readonly QuantityFault[], typeof NO_CAUSES>>();

/**
 * Whose error each quantity carries in one scenario: the label of the cause; absent for the cause itself. Every
 * cell in error asks, so the answer to the same faults is kept.
 */
export function inheritedFrom(
	layout: Layout,
	faults: readonly QuantityFault[] | undefined
): ReadonlyMap<string, string> {
	if (!faults) return NO_CAUSES;
	const kept = inherited.get(layout) ?? new WeakMap<readonly QuantityFault[], typeof NO_CAUSES>();
	inherited.set(layout, kept);
	const known = kept.get(faults);
	if (known) return known;
	const from = new Map<string, string>();
	for (const fault of faults) {
		const cause = fault.origin.from;
		if (!cause || cause.quantity === fault.quantity) continue;
		from.set(fault.quantity, layout.byName.get(cause.quantity)?.quantity.label ?? cause.quantity);
	}
	kept.set(faults, from);
	return from;
}
