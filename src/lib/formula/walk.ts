/**
 * Going through a tree: the parts of a node, every node in reading order, and a tree with nodes replaced.
 */
import type { Argument, Expression, Index } from './tree';

/** The expressions directly under a node, in the order in which they are written. */
export function children(expression: Expression): readonly Expression[] {
	switch (expression.kind) {
		case 'number':
			return [];
		case 'negation':
		case 'percent':
			return [expression.of];
		case 'binary':
			return [expression.left, expression.right];
		case 'reference': {
			const parts = expression.indices.flatMap((index) =>
				index.kind === 'member' ? [index.value] : []
			);
			return expression.otherwise === null ? parts : [...parts, expression.otherwise];
		}
		case 'call':
			return expression.args.flatMap(({ value, where, otherwise }) =>
				[value, where, otherwise].filter((part) => part !== null)
			);
	}
}

/** Calls `look` with every node, each before its parts; `false` leaves the parts of that node out. */
export function visit(
	expression: Expression,
	look: (expression: Expression) => boolean | void
): void {
	if (look(expression) === false) return;
	for (const child of children(expression)) visit(child, look);
}

/** A tree in which `change` has replaced every node, parts first; unchanged nodes are the same objects. */
export function map(
	expression: Expression,
	change: (expression: Expression) => Expression
): Expression {
	return change(withParts(expression, (part) => map(part, change)));
}

function withParts(expression: Expression, part: (of: Expression) => Expression): Expression {
	const maybe = (of: Expression | null) => of && part(of);
	switch (expression.kind) {
		case 'number':
			return expression;
		case 'negation':
		case 'percent': {
			const of = part(expression.of);
			return of === expression.of ? expression : { ...expression, of };
		}
		case 'binary': {
			const left = part(expression.left);
			const right = part(expression.right);
			const same = left === expression.left && right === expression.right;
			return same ? expression : { ...expression, left, right };
		}
		case 'reference': {
			const indices = sameOrNew(expression.indices, (index) => indexWith(index, part));
			const otherwise = maybe(expression.otherwise);
			const same = indices === expression.indices && otherwise === expression.otherwise;
			return same ? expression : { ...expression, indices, otherwise };
		}
		case 'call': {
			const args = sameOrNew(expression.args, (argument) => argumentWith(argument, part, maybe));
			return args === expression.args ? expression : { ...expression, args };
		}
	}
}

function indexWith(index: Index, part: (of: Expression) => Expression): Index {
	if (index.kind !== 'member') return index;
	const value = part(index.value);
	return value === index.value ? index : { ...index, value };
}

function argumentWith(
	argument: Argument,
	part: (of: Expression) => Expression,
	maybe: (of: Expression | null) => Expression | null
): Argument {
	const value = part(argument.value);
	const where = maybe(argument.where);
	const otherwise = maybe(argument.otherwise);
	const same =
		value === argument.value && where === argument.where && otherwise === argument.otherwise;
	return same ? argument : { ...argument, value, where, otherwise };
}

function sameOrNew<Item>(items: readonly Item[], change: (item: Item) => Item): readonly Item[] {
	const changed = items.map(change);
	return changed.every((item, place) => item === items[place]) ? items : changed;
}
