/**
 * What a name stands for. A member is looked for first in the set that is expected at the place; then come an
 * axis that runs, a quantity, a set, and a member of any set. `stage.line` and quotes settle it.
 */
import { nearest, quoteIfNeeded } from '$lib/formula/names';
import { FUNCTIONS } from '$lib/formula/functions';
import type { Reference } from '$lib/formula/tree';
import { readQuantity } from './align';
import { membersWords, unknownMember, unknownSet } from './member-words';
import { broken, type Proof, type Prove } from './proof';
import { gatherAxis } from './running';
import type { Scope } from './scope';
import type { Typed, Variable } from './types';

export function resolve(
	proof: Proof,
	prove: Prove,
	source: Reference,
	scope: Scope,
	expected: string | undefined
): Typed {
	const { context } = proof;
	const { name, quoted } = source;
	const known = quoted ? undefined : context.quantity(name);
	if (source.indices.length > 0 || source.otherwise) {
		if (source.qualifier !== null || !known) return notIndexed(proof, source);
		return readQuantity(proof, prove, source, known, scope);
	}
	if (source.qualifier !== null) return qualified(proof, source);
	const wanted = expected === undefined ? undefined : memberOf(proof, expected, source);
	if (wanted) return wanted;
	const variable = quoted ? undefined : scope.find(name);
	if (variable) return current(variable, source, scope);
	if (known) return readQuantity(proof, prove, source, known, scope);
	if (!quoted && context.sets.has(name)) {
		const gathered = gatherAxis(proof, scope, name);
		return gathered ? current(gathered, source, scope) : setAlone(proof, source);
	}
	return memberOfAny(proof, source, expected);
}

/** The current member along an axis. */
function current(variable: Variable, source: Reference, scope: Scope): Typed {
	scope.use(variable);
	return {
		kind: 'variable',
		slot: variable.slot,
		type: { kind: 'member', set: variable.set },
		free: 1 << variable.slot,
		fixed: true,
		source
	};
}

function memberOf(proof: Proof, set: string, source: Reference): Typed | null {
	const value = proof.context.sets.get(set)?.ordinals.get(source.name);
	if (value === undefined) return null;
	return { kind: 'constant', value, type: { kind: 'member', set }, free: 0, fixed: true, source };
}

function memberOfAny(proof: Proof, source: Reference, expected: string | undefined): Typed {
	const { name } = source;
	const sets = [...proof.context.sets.values()].filter((set) => set.ordinals.has(name));
	if (sets.length > 1) {
		const ways = sets.map((set) => `${set.name}.${quoteIfNeeded(name)}`);
		return proof.refuse(
			'ambiguous-member',
			`${name} is a member of ${sets.map((set) => set.name).join(' and of ')}: write ${ways.join(' or ')}.`,
			source
		);
	}
	return (sets[0] && memberOf(proof, sets[0].name, source)) ?? unknown(proof, source, expected);
}

function qualified(proof: Proof, source: Reference): Typed {
	const axis = proof.owner.layout.axes.find((axis) => axis.name === source.qualifier);
	const set = axis?.set ?? source.qualifier ?? '';
	if (!proof.context.sets.has(set)) unknownSet(proof, source);
	else {
		const member = memberOf(proof, set, source);
		if (member) return member;
		unknownMember(proof, set, source);
	}
	return broken(source);
}

function setAlone(proof: Proof, source: Reference): Typed {
	const { name } = source;
	return proof.refuse(
		'set-as-value',
		`${name} is a set, and ${proof.name} is ${proof.perWords}, so there is no current ${name}: make it per ${name}, gather over ${name}, or choose a member (${membersWords(proof, name)}).`,
		source
	);
}

function notIndexed(proof: Proof, source: Reference): Typed {
	const isSet = proof.context.sets.has(source.name);
	if (!isSet && source.qualifier === null && !source.quoted)
		return unknown(proof, source, undefined);
	const what = isSet ? 'a set' : 'a member';
	return proof.refuse(
		'not-indexed',
		`${source.name} is ${what}, and brackets choose from a quantity: write the quantity first, as in price[${source.name}].`,
		source
	);
}

function unknown(proof: Proof, source: Reference, expected: string | undefined): Typed {
	const { context } = proof;
	const set = expected === undefined ? undefined : context.sets.get(expected);
	const words = [
		...(set?.ids ?? []),
		...context.quantities.map((quantity) => quantity.layout.quantity.name),
		...context.sets.keys(),
		...[...context.sets.values()].flatMap((knownSet) =>
			knownSet.ids.length <= 200 ? knownSet.ids : []
		)
	];
	const near = nearest(source.name, words);
	const isFunction = FUNCTIONS.has(source.name.toUpperCase());
	const hint = near
		? `: ${near}?`
		: set
			? `; ${membersWords(proof, set.name)}.`
			: isFunction
				? `: a function takes brackets, as in ${source.name.toUpperCase()}(…).`
				: ': add a quantity of that name, or check the spelling.';
	const message = `There is no ${source.name}${hint}`;
	proof.report('unknown-name', message, source.nameSpan, near && suggestionFor(proof, near));
	return broken(source);
}

function suggestionFor(proof: Proof, near: string): string {
	return proof.context.quantity(near) ? near : quoteIfNeeded(near);
}
