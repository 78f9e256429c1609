/** Functions of sets: the place and the number of a member, the member at a place, what all last together. */
import type { Call, Expression } from '$lib/formula/tree';
import { Op } from '../operations';
import { binary } from './arithmetic';
import { constant } from './constant';
import { asPlain } from './convert-typed';
import { broken, type Proof, type Prove } from './proof';
import type { Scope } from './scope';
import { numberIn, PLAIN, type Typed } from './types';

export function ordinal(proof: Proof, source: Call, of: Typed): Typed | null {
	const set = memberSet(proof, source, of);
	if (set === null) return null;
	const size = proof.context.sets.get(set)?.ids.length ?? 0;
	const numbers = Array.from({ length: size }, (_, at) => at + 1);
	const { free, fixed } = of;
	return { kind: 'member-number', which: 'place', of, numbers, type: PLAIN, free, fixed, source };
}

export function memberNumber(proof: Proof, source: Call, of: Typed): Typed | null {
	const set = memberSet(proof, source, of);
	if (set === null) return null;
	const numbers = proof.context.sets.get(set)?.numbers;
	if (!numbers) {
		const message = `The members of ${set} have no numbers: give each a number, or take its place with ORD(${proof.words(of.source)}).`;
		return proof.refuse('no-numbers', message, source);
	}
	const { free, fixed } = of;
	const type = numberIn(numbers.unit);
	const { values } = numbers;
	return { kind: 'member-number', which: 'number', of, numbers: values, type, free, fixed, source };
}

function memberSet(proof: Proof, source: Call, of: Typed): string | null {
	if (of.type.kind === 'member') return of.type.set;
	if (of.type.kind !== 'bad')
		proof.report(
			'not-a-member',
			`${source.name} takes a member, and ${proof.words(of.source)} is ${of.type.kind === 'number' ? 'a number' : 'yes or no'}: write a set's name, as in ${source.name}(month).`,
			of.source?.span ?? source.span
		);
	return null;
}

/** MEMBER(set; place): the name of a set, and a plain number. */
export function memberAt(proof: Proof, prove: Prove, source: Call, scope: Scope): Typed {
	const [named, counted] = source.args;
	const set = namedSet(proof, source, named?.value, 'MEMBER(month; 1)');
	const place = counted && asPlain(proof, prove(proof, counted.value, scope), 'a place in a set');
	if (!set || !place) return broken(source);
	// Without words of its own: the call's are the member's.
	const size = constant(null, set.ids.length, PLAIN);
	return binary(source, Op.MemberAt, place, size, { kind: 'member', set: set.name });
}

export function span(proof: Proof, source: Call): Typed {
	const set = namedSet(proof, source, source.args[0]?.value, 'SPAN(month)');
	if (!set) return broken(source);
	if (!set.span)
		return proof.refuse(
			'no-span',
			`The set ${set.name} does not say what its members last together: give it a span, such as 1 year for twelve months.`,
			source
		);
	return constant(source, set.span.value, numberIn(set.span.unit));
}

/** The set that an argument names; reports where it names none. */
function namedSet(proof: Proof, source: Call, value: Expression | undefined, example: string) {
	const set =
		value?.kind === 'reference' && value.qualifier === null && value.indices.length === 0
			? proof.context.sets.get(value.name)
			: undefined;
	if (!set)
		proof.report(
			'not-a-set',
			`${source.name} takes the name of a set, as in ${example}; ${proof.words(value ?? source)} is none.`,
			(value ?? source).span
		);
	return set;
}
