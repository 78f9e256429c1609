/**
 * From the tree of a formula as read to one that is proven: the walk. Names belong to `resolve.ts`, numbers to
 * `arithmetic.ts`, functions to `scalar-calls.ts` and `gather.ts`.
 */
import type { Binary, Expression, NumberLiteral } from '$lib/formula/tree';
import { ONE } from '$lib/units/algebra';
import { findFunction } from '$lib/formula/functions';
import { calculate, compare, isComparison, negate, percent } from './arithmetic';
import { proveAggregate } from './gather';
import { broken, type Proof, type Prove } from './proof';
import { resolve } from './resolve';
import { proveScalar } from './scalar-calls';
import type { Scope } from './scope';
import type { Typed } from './types';

export const prove: Prove = (proof, expression, scope, expected) => {
	switch (expression.kind) {
		case 'number':
			return literal(proof, expression);
		case 'reference':
			return resolve(proof, prove, expression, scope, expected);
		case 'negation':
			return negate(proof, expression, prove(proof, expression.of, scope));
		case 'percent':
			return percent(proof, expression, prove(proof, expression.of, scope));
		case 'binary':
			return isComparison(expression.operator)
				? comparison(proof, expression, scope)
				: chain(proof, expression, scope);
		case 'call': {
			const spec = findFunction(expression.name);
			if (!spec)
				return proof.refuse(
					'unknown-function',
					`There is no function ${expression.name}.`,
					expression
				);
			return spec.kind === 'aggregate'
				? proveAggregate(proof, prove, expression, spec, scope, expected)
				: proveScalar(proof, prove, expression, spec, scope, expected);
		}
	}
};

function literal(proof: Proof, source: NumberLiteral): Typed {
	const { value, unit: text } = source;
	if (text === null) {
		const type = { kind: 'number' as const, unit: ONE, any: value === 0, bare: true };
		return { kind: 'constant', value, type, free: 0, fixed: true, source };
	}
	const unit = proof.context.units.parse(text);
	if (unit.ok) {
		const type = { kind: 'number' as const, unit: unit.unit, any: false, bare: false };
		return { kind: 'constant', value, type, free: 0, fixed: true, source };
	}
	const start = source.unitSpan?.start ?? source.span.start;
	const { code, message, nearest } = unit.problem;
	const span = { start: start + unit.problem.start, end: start + unit.problem.end };
	proof.report(code, message, span, nearest);
	return broken(source);
}

/** A long sum leans to the left; its spine is walked without recursion. */
function chain(proof: Proof, expression: Binary, scope: Scope): Typed {
	const spine: Binary[] = [];
	let first: Expression = expression;
	while (first.kind === 'binary' && !isComparison(first.operator)) {
		spine.push(first);
		first = first.left;
	}
	let value = prove(proof, first, scope);
	for (const link of spine.reverse())
		value = calculate(proof, link, value, prove(proof, link.right, scope));
	return value;
}

/** The side that says which set is meant comes first, so that the other may be a bare member. */
function comparison(proof: Proof, expression: Binary, scope: Scope): Typed {
	const { left, right } = expression;
	const setOf = (value: Typed) => (value.type.kind === 'member' ? value.type.set : undefined);
	if (isBareMember(proof, left, scope) && !isBareMember(proof, right, scope)) {
		const second = prove(proof, right, scope);
		return compare(proof, expression, prove(proof, left, scope, setOf(second)), second);
	}
	const first = prove(proof, left, scope);
	return compare(proof, expression, first, prove(proof, right, scope, setOf(first)));
}

/** A name that can only be a member, or nothing at all. */
function isBareMember(proof: Proof, expression: Expression, scope: Scope): boolean {
	if (expression.kind !== 'reference' || expression.qualifier !== null) return false;
	if (expression.indices.length > 0) return false;
	if (expression.quoted) return true;
	const { name } = expression;
	return !scope.find(name) && !proof.context.quantity(name) && !proof.context.sets.has(name);
}
