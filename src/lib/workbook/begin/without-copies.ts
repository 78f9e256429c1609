/**
 * Formulas of a workbook that goes on without its frozen copies: what read one reads the base, and where the formula said
 * by IFERROR what holds for what the copy lacks, that alone is left. A member whose own rule reads a copy, a decided case,
 * is of that copy and goes with it.
 */
import { renameInText } from '$lib/formula/rename';
import type { Call, Expression } from '$lib/formula/tree';
import { treeOf } from '$lib/formula/tree-of';
import { children, visit } from '$lib/formula/walk';
import { axesOf } from '../axes';
import { OTHERS } from '../cells';
import { applyCommand, type Command } from '../commands';
import { withFormulas } from '../formula-names';
import { baseOf, quantityPlaces } from '../lookup';
import type { Workbook } from '../schema';

export function withoutCopies(given: Workbook): Workbook {
	const ids = new Set((given.frozen ?? []).map(({ id }) => id));
	const applied = applyCommand(given, { kind: 'several', commands: membersOfCopies(given, ids) });
	const workbook = applied.ok ? applied.workbook : given;
	const { frozen: _gone, ...rest } = workbook;
	if (ids.size === 0) return rest;
	const base = baseOf(workbook).id;
	return {
		...rest,
		sheets: rest.sheets.map((sheet) => ({
			...sheet,
			quantities: sheet.quantities.map((quantity) =>
				withFormulas(quantity, (text) =>
					[...ids].reduce(
						(now, id) => renameInText(now, id, base, { as: 'member' }),
						withoutReadings(text, ids)
					)
				)
			)
		}))
	};
}

function membersOfCopies(workbook: Workbook, ids: ReadonlySet<string>): Command[] {
	const found = new Map<string, Command>();
	for (const { quantity } of quantityPlaces(workbook).values()) {
		const { formula } = quantity;
		if (typeof formula !== 'object') continue;
		const set = axesOf(quantity).find(({ name }) => name === formula.by)?.set;
		for (const [id, text] of Object.entries(formula.cases)) {
			const tree = id === OTHERS ? null : treeOf(text);
			if (set === undefined || !tree || !reads(tree, ids)) continue;
			found.set(`${set}.${id}`, { kind: 'remove_member', set, id, also: true });
		}
	}
	return [...found.values()];
}

/** The text with each `IFERROR(what reads a copy; instead)` told as `instead`. */
function withoutReadings(text: string, ids: ReadonlySet<string>): string {
	const tree = [...ids].some((id) => text.includes(id)) ? treeOf(text) : null;
	if (!tree) return text;
	let found: Call | null = null;
	visit(tree, (node) => {
		if (found) return false;
		if (node.kind !== 'call' || node.name !== 'IFERROR' || !reads(node.args[0]!.value, ids)) return;
		found = node;
		return false;
	});
	const call = found as Call | null;
	if (!call) return text;
	const { start, end } = call.args[1]!.value.span;
	const instead = text.slice(start, end);
	const isWhole = call.span.start === 0 && call.span.end === text.length;
	const inside = isWhole || call.args[1]!.value.kind !== 'binary' ? instead : `(${instead})`;
	return withoutReadings(text.slice(0, call.span.start) + inside + text.slice(call.span.end), ids);
}

const reads = (tree: Expression, ids: ReadonlySet<string>): boolean =>
	isCopy(tree, ids) || children(tree).some((child) => reads(child, ids));

const isCopy = (tree: Expression, ids: ReadonlySet<string>): boolean =>
	tree.kind === 'reference' &&
	tree.indices.some(
		(index) =>
			index.kind === 'member' && index.value.kind === 'reference' && ids.has(index.value.name)
	);
