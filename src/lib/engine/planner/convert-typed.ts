/**
 * A number in another unit of its dimension: relabelled where the scales are the same, converted at once
 * where it is written, multiplied by a factor where scales meet.
 */
import { convert, factor } from '$lib/units/convert';
import { ONE } from '$lib/units/algebra';
import type { Unit } from '$lib/units/unit';
import type { Proof } from './proof';
import { broken } from './proof';
import { PLAIN, type NumberType, type Typed } from './types';

export type TypedNumber = Typed & { readonly type: NumberType };

/** The same value in `unit`; the dimensions are known to agree. */
export function inUnit(number: TypedNumber, unit: Unit): TypedNumber {
	const type = { ...number.type, unit };
	if (number.type.any) return { ...number, type };
	const times = factor(number.type.unit, unit);
	if (times === 1) return { ...number, type };
	if (number.kind === 'constant')
		return { ...number, type, value: convert(number.value, number.type.unit, unit) };
	const { free, fixed, source } = number;
	return { kind: 'conversion', of: number, factor: times, type, free, fixed, source };
}

/** The value as a number: yes and no count as 1 and 0, a member is none. Null after a problem. */
export function asNumber(proof: Proof, value: Typed): TypedNumber | null {
	if (value.type.kind === 'number') return value as TypedNumber;
	if (value.type.kind === 'yes_no') return { ...value, type: PLAIN };
	if (value.type.kind === 'member') {
		const { set } = value.type;
		const message = `${proof.words(value.source)} is a member of ${set}, not a number: compare it, use it as an index, or take ORD(${set}).`;
		if (value.source) proof.report('member-as-number', message, value.source.span);
	}
	return null;
}

/** The value as yes or no; a number is none. */
export function asCondition(proof: Proof, value: Typed): Typed {
	if (value.type.kind === 'yes_no' || value.type.kind === 'bad') return value;
	const what = value.type.kind === 'number' ? 'a number' : `a member of ${value.type.set}`;
	const words = proof.words(value.source);
	const compared =
		value.type.kind === 'number'
			? `${words} > 0`
			: `${words} = ${firstMember(proof, value.type.set)}`;
	if (value.source)
		proof.report(
			'not-a-condition',
			`${words} is ${what}, and a condition stands here: compare it, as in ${compared}.`,
			value.source.span
		);
	return broken(value.source);
}

/** The value as a plain number, for exponents, digits and logarithms. */
export function asPlain(proof: Proof, value: Typed, what: string): TypedNumber | null {
	const number = asNumber(proof, value);
	if (!number) return null;
	if (number.type.any || Object.keys(number.type.unit.dimension).length === 0)
		return inUnit(number, ONE);
	const { text } = number.type.unit;
	const words = proof.words(value.source);
	if (value.source)
		proof.report(
			'has-unit',
			`${words} is in ${text}, and ${what} has no unit: divide by ${unitLiteral(text)}?`,
			value.source.span
		);
	return null;
}

export const unitLiteral = (text: string) => `1[${text}]`;

function firstMember(proof: Proof, set: string): string {
	return proof.context.sets.get(set)?.ids[0] ?? '…';
}
