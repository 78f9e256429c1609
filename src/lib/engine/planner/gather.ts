/**
 * Aggregates: what each argument gathers. Without `over` the innermost aggregate gathers every axis that runs
 * nowhere; what it took is kept for the printer to write down. Types and units belong to `aggregate-types.ts`.
 */
import { visit } from '$lib/formula/walk';
import type { AggregateSpec } from '$lib/formula/functions';
import type { Argument, Binding, Call, Expression } from '$lib/formula/tree';
import { Op, operation, OPERATION_OF, type AggregateOp } from '../operations';
import { resultOf, type Result } from './aggregate-types';
import { unified } from './branches';
import { asCondition } from './convert-typed';
import { broken, type Proof, type Prove } from './proof';
import { Scope } from './scope';
import type { Aggregate, Terms, Typed, Variable } from './types';

export function proveAggregate(
	proof: Proof,
	prove: Prove,
	source: Call,
	spec: AggregateSpec,
	scope: Scope,
	expected: string | undefined
): Typed {
	const op = OPERATION_OF[spec.name];
	const terms: Terms[] = [];
	const parameters: Typed[] = [];
	let end: Argument | null = null;
	source.args.forEach((argument, position) => {
		if (spec.paired && position === 0) return;
		if (spec.gathers !== 'all' && spec.gathers !== position)
			parameters.push(prove(proof, argument.value, scope));
		else {
			const first = spec.paired ? source.args[0] : undefined;
			terms.push(proveTerms(proof, prove, argument, first, scope, op, expected));
			if (argument.otherwise) end = argument;
		}
	});
	const values = [...terms.flatMap(partsOf), ...parameters];
	if (values.some((value) => value.type.kind === 'bad')) return broken(source);
	if (!gathersSomething(proof, source, terms, op)) return broken(source);
	const result = resultOf(proof, source, op, terms, parameters);
	if (!result) return broken(source);
	const otherwise = end && proveEnd(proof, prove, source, end, scope, result);
	if (otherwise === undefined) return broken(source);
	return build(source, scope, { ...result, otherwise });
}

function build(source: Call, scope: Scope, parts: Result & { otherwise: Typed | null }): Aggregate {
	const { terms, parameters, otherwise } = parts;
	const outside = [...parameters, ...(otherwise ? [otherwise] : [])];
	let free = outside.reduce((mask, typed) => mask | typed.free, 0);
	for (const term of terms) {
		const inside = partsOf(term).reduce((mask, part) => mask | part.free, 0);
		free |= term.gathered.reduce((mask, variable) => mask & ~(1 << variable.slot), inside);
	}
	const fixed =
		outside.every((typed) => typed.fixed) &&
		terms.every((term) => partsOf(term).every((part) => part.fixed));
	return {
		kind: 'aggregate',
		name: source.name,
		...parts,
		scope,
		free,
		fixed,
		source,
		span: source.span
	};
}

/** What is looked at for each gathered member. */
export const partsOf = ({ value, where, paired }: Terms): Typed[] =>
	[value, where, paired].filter((part) => part !== null);

function proveTerms(
	proof: Proof,
	prove: Prove,
	argument: Argument,
	first: Argument | undefined,
	scope: Scope,
	op: AggregateOp,
	expected: string | undefined
): Terms {
	const inner = new Scope(scope, argument.over.length === 0);
	for (const binding of argument.over) {
		const set = setOf(proof, binding, argument);
		if (set !== null) inner.add(proof.variable(binding.index ?? binding.axis, set));
	}
	const takesMember = op === Op.First || op === Op.Last;
	proof.reads.push([]);
	const paired = first ? prove(proof, first.value, inner) : null;
	const value = prove(proof, argument.value, inner, takesMember ? expected : undefined);
	const where = argument.where && asCondition(proof, prove(proof, argument.where, inner));
	const reads = proof.reads.pop() ?? [];
	const gathered = inner.own;
	if (argument.over.length > 0) refuseUnused(proof, argument, gathered, inner);
	else if (gathered.length > 0)
		proof.gathered.set(
			argument,
			gathered.map(({ name }) => ({ index: null, axis: name, span: argument.span }))
		);
	if (where && gathered.length === 0)
		proof.report(
			'where-without-gathering',
			`The where in ${proof.words(argument.value)} filters nothing, because nothing is gathered here: write over and a set, or use IF.`,
			argument.span
		);
	if (where && !where.fixed && where.type.kind !== 'bad' && operation(op).fixedWhere)
		proof.report(
			'moving-where',
			`The condition ${proof.words(argument.where)} can change with the inputs, and this function takes a fixed one only: choose by the set itself, as in year > y0, or by an input that is marked fixed.`,
			argument.where?.span ?? argument.span
		);
	const slots = gathered.reduce((mask, variable) => mask | (1 << variable.slot), 0);
	const direct = reads.filter(
		(read) =>
			read.indices.every((index) => index.kind === 'variable' || index.kind === 'member') &&
			read.indices.some((index) => index.kind === 'variable' && (slots & (1 << index.slot)) !== 0)
	);
	const { span } = argument;
	// What is written first is the value, and the argument that gathers its position.
	return paired
		? { gathered, value: paired, where, paired: value, direct, span }
		: { gathered, value, where, paired, direct, span };
}

/** The set that `over` names: a set, or an axis of something in the argument. */
function setOf(proof: Proof, binding: Binding, argument: Argument): string | null {
	const { axis } = binding;
	if (proof.context.sets.has(axis)) return axis;
	let set: string | undefined = proof.scope.find(axis)?.set;
	const look = (expression: Expression) => {
		if (expression.kind !== 'reference') return;
		const axes = proof.context.quantity(expression.name)?.layout.axes ?? [];
		set ??= axes.find((one) => one.name === axis)?.set;
	};
	visit(argument.value, look);
	if (argument.where) visit(argument.where, look);
	if (set !== undefined) return set;
	proof.report(
		'unknown-set',
		`There is no set ${axis} to gather over: write the name of a set, as in over month.`,
		binding.span
	);
	return null;
}

function refuseUnused(
	proof: Proof,
	argument: Argument,
	gathered: readonly Variable[],
	inner: Scope
): void {
	gathered.forEach((variable, at) => {
		if (inner.used.has(variable)) return;
		const span = argument.over[at]?.span ?? argument.span;
		proof.report(
			'gathers-in-vain',
			`Nothing in ${proof.words(argument.value)} depends on ${variable.name}, so gathering over it would only take the same ${variable.size} times: leave ${variable.name} out, or multiply by a number.`,
			span
		);
	});
}

function gathersSomething(
	proof: Proof,
	source: Call,
	terms: readonly Terms[],
	op: AggregateOp
): boolean {
	const [first] = terms;
	if (terms.length === 1 && first && first.gathered.length === 0) {
		const argument = source.args.find((arg) => arg.span.start === first.span.start);
		const quoted = argument?.value ?? source;
		const words = proof.words(quoted);
		const running = proof.variables.filter(
			(variable) => (first.value.free & (1 << variable.slot)) !== 0
		);
		const last = running.at(-1);
		const better = last && `${source.name}(${words} over ${last.name})`;
		const message = last
			? `${source.name} gathers nothing: everything is taken at the same ${running.map((variable) => variable.name).join(' and ')}. Write ${better}.`
			: `${source.name} gathers nothing: ${words} has one value. Leave ${source.name} out.`;
		proof.report(
			'gathers-nothing',
			message,
			source.span,
			proof.isQuotedWhole(quoted) ? better : undefined
		);
		return false;
	}
	if (operation(op).oneSet && first && first.gathered.length > 1) {
		const axes = first.gathered.map((variable) => variable.name);
		proof.report(
			'one-axis',
			`${source.name} takes one set at a time, and ${axes.join(' and ')} are gathered here: write over ${axes.at(-1)} and choose or gather the rest.`,
			source.span
		);
		return false;
	}
	return true;
}

/** What holds when nothing is left to gather; undefined after a problem. */
function proveEnd(
	proof: Proof,
	prove: Prove,
	source: Call,
	argument: Argument,
	scope: Scope,
	result: Result
): Typed | null | undefined {
	if (!argument.otherwise) return null;
	if (result.terms.length > 1) {
		const message = `An else after one of several arguments has two readings: give ${source.name} one argument, or use IFERROR.`;
		proof.report('else-of-several', message, argument.otherwise.span);
		return undefined;
	}
	const expected = result.type.kind === 'member' ? result.type.set : undefined;
	const otherwise = prove(proof, argument.otherwise, scope, expected);
	const model: Typed = { kind: 'broken', type: result.type, free: 0, fixed: false, source };
	return unified(proof, [model, otherwise])?.[1];
}
