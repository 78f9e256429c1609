/**
 * A plain number beside a share: 5 beside something in % is 500 % by the rules of units, and 5 % is what was meant more
 * often than not. Nobody guesses: both readings are offered. Up to 1 there is nothing to ask, as in 1 - scrap.
 */
import type { Expression } from '$lib/formula/tree';
import type { Unit } from '$lib/units/unit';
import { Op } from '../operations';
import { compute } from '../scalar';
import type { TypedNumber } from './convert-typed';
import type { Proof } from './proof';
import type { Typed } from './types';

const SHARES: ReadonlySet<string> = new Set(['%', '‰', 'ppm']);
/** A factor larger than this was written to make a number of per cents, not to multiply. */
const LARGEST_FACTOR = 10;

export const isShare = (unit: Unit): boolean => SHARES.has(unit.text);

/** A number in the unit of a share, as it is written. */
const inShare = (text: string, unit: string) => (unit === '%' ? `${text}%` : `${text}[${unit}]`);

/** What a written number is in a share: 5 is 500 %. */
const asShare = (value: number, unit: Unit) =>
	inShare(String(Number((value / unit.scale).toPrecision(12))), unit.text);

/** Whether one of the numbers is a share and another a plain number above 1, which is then asked about. */
export function asksShare(proof: Proof, numbers: readonly TypedNumber[]): boolean {
	const share = numbers.find(({ type }) => !type.any && isShare(type.unit));
	const plain =
		share &&
		numbers.find((number) => number.type.bare && !number.type.any && Math.abs(valueOf(number)) > 1);
	if (!share || !plain?.source) return false;
	const value = valueOf(plain);
	const { unit } = share.type;
	const text = proof.words(plain.source);
	const better = plain.source.kind === 'number' ? inShare(text, unit.text) : undefined;
	proof.report(
		'percent-or-number',
		`${proof.words(share.source)} is in ${unit.text}, and ${text} without a unit is ${asShare(value, unit)}: write ${inShare(String(value), unit.text)} if that is meant, or ${asShare(value, unit)} for the plain ${text}.`,
		plain.source.span,
		better
	);
	return true;
}

/** Whether a formula for a share multiplies by a number that only makes per cents; asked about likewise. */
export function asksFactor(proof: Proof, source: Expression, unit: Unit): boolean {
	if (!isShare(unit)) return false;
	const factor = factorsOf(source).find(
		(part) => part.kind === 'number' && part.unit === null && part.value > LARGEST_FACTOR
	);
	if (factor?.kind !== 'number') return false;
	proof.report(
		'percent-or-number',
		`${proof.name} is in ${unit.text} by itself, and the factor ${factor.text} without a unit is ${asShare(factor.value, unit)}: leave it out if it only makes ${unit.text}, write ${inShare(factor.text, unit.text)} for a share, or ${asShare(factor.value, unit)} for the plain ${factor.text}.`,
		factor.span,
		inShare(factor.text, unit.text)
	);
	return true;
}

function factorsOf(source: Expression): Expression[] {
	if (source.kind !== 'binary') return [source];
	if (source.operator === '*') return [...factorsOf(source.left), ...factorsOf(source.right)];
	return source.operator === '/' ? factorsOf(source.left) : [source];
}

/** Of what is made of written numbers alone; NaN where it is more than arithmetic. */
function valueOf(typed: Typed): number {
	switch (typed.kind) {
		case 'constant':
			return typed.value;
		case 'unary':
			return compute(typed.op, valueOf(typed.of), 0);
		case 'binary':
			if (typed.op === Op.IfError) return NaN;
			return compute(typed.op, valueOf(typed.left), valueOf(typed.right));
		default:
			return NaN;
	}
}
