/** Functions that take values as they stand: what each accepts and in which unit its result is. */
import type { Call } from '$lib/formula/tree';
import { coherent, ONE, root } from '$lib/units/algebra';
import type { Unit } from '$lib/units/unit';
import { Op } from '../plan';
import { alike, binary } from './arithmetic';
import { commonType, unified } from './branches';
import {
	asCondition,
	asNumber,
	asPlain,
	inUnit,
	unitLiteral,
	type TypedNumber
} from './convert-typed';
import { constant } from './constant';
import { proveDate } from './date-calls';
import { broken, type Proof } from './proof';
import type { Prove } from './prove';
import type { Scope } from './scope';
import { memberAt, memberNumber, ordinal, span } from './set-calls';
import { PLAIN, YES_NO, type Typed, type ValueType } from './types';

export function proveScalar(
	proof: Proof,
	prove: Prove,
	source: Call,
	scope: Scope,
	expected: string | undefined
): Typed {
	if (source.name === 'SPAN') return span(proof, source);
	if (source.name === 'MEMBER') return memberAt(proof, prove, source, scope);
	if (source.name === 'IF') return choose(proof, prove, source, scope, expected);
	const isBranch = source.name === 'IFERROR';
	const args = source.args.map((argument) =>
		prove(proof, argument.value, scope, isBranch ? expected : undefined)
	);
	return apply(proof, source, args) ?? broken(source);
}

function apply(proof: Proof, source: Call, args: readonly Typed[]): Typed | null {
	const [first, second] = args;
	switch (source.name) {
		case 'PI':
			return constant(source, Math.PI, PLAIN);
		case 'TRUE':
			return constant(source, 1, YES_NO);
		case 'FALSE':
			return constant(source, 0, YES_NO);
		case 'AND':
			return list(source, Op.And, conditions(proof, args), YES_NO);
		case 'OR':
			return list(source, Op.Or, conditions(proof, args), YES_NO);
	}
	if (!first) return null;
	switch (source.name) {
		case 'NOT':
			return unary(source, Op.Not, asCondition(proof, first), YES_NO);
		case 'IFERROR':
			return second ? instead(proof, source, first, second) : null;
		case 'ABS': {
			const number = asNumber(proof, first);
			return number && unary(source, Op.Abs, number, number.type);
		}
		case 'SQRT':
			return squareRoot(proof, source, first);
		case 'EXP':
		case 'LN': {
			const what = source.name === 'EXP' ? 'an exponent' : 'the number that LN takes';
			const number = asPlain(proof, first, what);
			return number && unary(source, source.name === 'EXP' ? Op.Exp : Op.Ln, number, PLAIN);
		}
		case 'ROUND':
			return round(proof, source, Op.Round, first, second);
		case 'ROUNDUP':
			return round(proof, source, Op.RoundUp, first, second);
		case 'ROUNDDOWN':
			return round(proof, source, Op.RoundDown, first, second);
		case 'CEILING':
			return toMultiple(proof, source, Op.Ceiling, first, second);
		case 'FLOOR':
			return toMultiple(proof, source, Op.Floor, first, second);
		case 'MOD':
			return toMultiple(proof, source, Op.Mod, first, second);
		case 'DATE':
		case 'YEAR':
		case 'MONTH':
		case 'DAY':
		case 'WEEKDAY':
		case 'ISOWEEKNUM':
			return proveDate(proof, source, args);
		case 'ORD':
			return ordinal(proof, source, first);
		case 'NUMBER':
			return memberNumber(proof, source, first);
		default:
			return proof.refuse('unknown-function', `There is no function ${source.name}.`, source);
	}
}

function unary(source: Call, op: Op, of: Typed, type: ValueType): Typed {
	if (of.type.kind === 'bad') return broken(source);
	return { kind: 'unary', op, of, type, free: of.free, fixed: of.fixed, source };
}

function list(source: Call, op: Op, items: readonly Typed[], type: ValueType): Typed {
	if (items.some((item) => item.type.kind === 'bad')) return broken(source);
	const free = items.reduce((mask, item) => mask | item.free, 0);
	return { kind: 'list', op, items, type, free, fixed: items.every((item) => item.fixed), source };
}

const conditions = (proof: Proof, args: readonly Typed[]) =>
	args.map((arg) => asCondition(proof, arg));

function choose(
	proof: Proof,
	prove: Prove,
	source: Call,
	scope: Scope,
	expected: string | undefined
): Typed {
	const [test, then, otherwise] = source.args;
	if (!test || !then || !otherwise) return broken(source);
	const condition = asCondition(proof, prove(proof, test.value, scope));
	const branches = [then, otherwise].map((argument) =>
		prove(proof, argument.value, scope, expected)
	);
	const alikes = unified(proof, branches);
	if (!alikes) return broken(source);
	return list(source, Op.If, [condition, ...alikes], commonType(alikes));
}

function instead(proof: Proof, source: Call, value: Typed, other: Typed): Typed | null {
	const both = unified(proof, [value, other]);
	const [first, second] = both ?? [];
	return first && second
		? binary(source, Op.IfError, first, second, commonType([first, second]))
		: null;
}

function squareRoot(proof: Proof, source: Call, of: Typed): Typed | null {
	const number = asNumber(proof, of);
	if (!number) return null;
	const { unit } = number.type;
	const half = root(unit, 2);
	if (half) return unary(source, Op.Sqrt, number, { ...number.type, unit: half });
	const plain: Unit = coherent(unit);
	const halfPlain = root(plain, 2);
	if (halfPlain) {
		const converted = inUnit(number, plain);
		return unary(source, Op.Sqrt, converted, { ...number.type, unit: halfPlain });
	}
	const message = `${proof.words(of.source)} is in ${unit.text}, which is no square: the root of it has no unit. Check the powers, or divide by ${unitLiteral(unit.text)} first.`;
	return proof.refuse('no-root', message, of.source ?? source);
}

function round(
	proof: Proof,
	source: Call,
	op: Op,
	of: Typed,
	digits: Typed | undefined
): Typed | null {
	const number = asNumber(proof, of);
	if (!number) return null;
	const { unit, any } = number.type;
	if (!any && Object.keys(unit.dimension).length > 0) {
		const step = op === Op.RoundDown ? 'FLOOR' : 'CEILING';
		const words = proof.words(of.source);
		const better = `${step}(${words}; ${unitLiteral(unit.text)})`;
		const message = `${words} is in ${unit.text}, and digits after the point depend on the unit: say to which multiple, as in ${better}.`;
		return proof.refuse(
			'round-has-unit',
			message,
			source,
			words.endsWith('…') ? undefined : better
		);
	}
	const places = digits
		? asPlain(proof, digits, 'a number of digits')
		: (constant(source, 0, PLAIN) as TypedNumber);
	return places && binary(source, op, inUnit(number, ONE), places, PLAIN);
}

/** CEILING, FLOOR and MOD: in the unit of the step, so that the step itself is not converted. */
function toMultiple(
	proof: Proof,
	source: Call,
	op: Op,
	of: Typed,
	step: Typed | undefined
): Typed | null {
	const number = asNumber(proof, of);
	if (!number) return null;
	const { unit } = number.type;
	if (!step && !number.type.any && Object.keys(unit.dimension).length > 0) {
		const better = `${source.name}(${proof.words(of.source)}; ${unitLiteral(unit.text)})`;
		const message = `${proof.words(of.source)} is in ${unit.text}: say to which multiple, as in ${better}.`;
		return proof.refuse('step-missing', message, source, better.includes('…') ? undefined : better);
	}
	const by = step ? asNumber(proof, step) : (constant(source, 1, PLAIN) as TypedNumber);
	const both = by && alike(proof, [by, number], 'divided into one another');
	const [divisor, value] = both ?? [];
	return divisor && value
		? binary(source, op, value, divisor, divisor.type.any ? value.type : divisor.type)
		: null;
}
