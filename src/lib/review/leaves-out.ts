/** Gatherings that name the members which they take or leave out. */
import { printFormula } from '$lib/formula/print';
import type { Binary, Call, Expression } from '$lib/formula/tree';
import { children, visit } from '$lib/formula/walk';
import { findQuantity, findSet } from '$lib/workbook/lookup';
import type { Quantity, SetDefinition, Workbook } from '$lib/workbook/schema';
import { readFormulas } from './formulas';
import type { Line } from './line';

export function leavesOutLine(workbook: Workbook, quantity: Quantity): Line | null {
	const members = membersOf(workbook.sets);
	const found: string[] = [];
	for (const tree of readFormulas(quantity).trees)
		visit(tree, (node) => {
			if (node.kind === 'call') found.push(...gatherings(workbook, members, node));
			if (node.kind === 'binary' && node.operator === '+') {
				const told = writtenOut(workbook, node);
				if (told) found.push(told);
				// The sums within are parts of this one.
				return !told;
			}
			return undefined;
		});
	const [first] = found;
	if (first === undefined) return null;
	const what = found.length > 1 ? `${first}, and ${found.length - 1} more` : first;
	return { kind: 'leaves_out', quantity, at: [], scenario: null, what, speaksOf: found.join('\n') };
}

const known = new WeakMap<readonly SetDefinition[], ReadonlySet<string>>();
function membersOf(sets: readonly SetDefinition[]): ReadonlySet<string> {
	const before = known.get(sets);
	if (before) return before;
	const all = new Set(sets.flatMap(({ members }) => members.map(({ id }) => id)));
	known.set(sets, all);
	return all;
}

/** Of each argument whose condition names a member: which sets, and the condition as written. */
function gatherings(
	workbook: Workbook,
	members: ReadonlySet<string>,
	{ name, args }: Call
): string[] {
	return args.flatMap(({ over, where }) => {
		if (where === null || over.length === 0) return [];
		const sets = over.map(({ axis }) => axis).join(', ');
		return namesMember(workbook, members, where)
			? [`${name} over ${sets} only where ${printFormula(where)}`]
			: [];
	});
}

function namesMember(
	workbook: Workbook,
	members: ReadonlySet<string>,
	expression: Expression
): boolean {
	if (expression.kind === 'reference' && expression.indices.length === 0) {
		const { qualifier, name } = expression;
		if (qualifier !== null) return true;
		if (members.has(name) && !findQuantity(workbook, name) && !findSet(workbook, name)) return true;
	}
	return children(expression).some((child) => namesMember(workbook, members, child));
}

/** "x[a] + x[b]" of a set with a third member. */
function writtenOut(workbook: Workbook, sum: Binary): string | null {
	const byName = new Map<string, Set<string>>();
	for (const term of terms(sum)) {
		if (term.kind !== 'reference' || term.indices.length !== 1) continue;
		const [index] = term.indices;
		if (index?.kind !== 'member' || index.value.kind !== 'reference') continue;
		const named = byName.get(term.name) ?? new Set<string>();
		byName.set(term.name, named.add(index.value.name));
	}
	for (const [name, named] of byName) {
		const set = findSet(workbook, findQuantity(workbook, name)?.per?.[0] ?? '');
		const left = set?.members.filter(({ id }) => !named.has(id)) ?? [];
		if (set && named.size > 1 && left.length > 0 && left.length < set.members.length)
			return `${name} is added up of ${[...named].join(', ')}, without ${left
				.slice(0, 3)
				.map(({ id }) => id)
				.join(', ')}${left.length > 3 ? ' …' : ''}`;
	}
	return null;
}

const terms = (expression: Expression): Expression[] =>
	expression.kind === 'binary' && expression.operator === '+'
		? [...terms(expression.left), ...terms(expression.right)]
		: [expression];
