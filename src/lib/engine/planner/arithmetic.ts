/**
 * Sums, products, powers, signs and comparisons: which operands go together, and in which unit the result
 * is. Dimension and scale are carried apart from the value, so that a factor stands only where scales meet.
 */
import type { Binary, BinaryOperator, Expression } from '$lib/formula/tree';
import { divide, multiply, ONE, power, sameDimension, withinLimits } from '$lib/units/algebra';
import { describeRatio, naturalText } from '$lib/units/describe';
import type { Unit } from '$lib/units/unit';
import { Op, type ScalarOp } from '../operations';
import { asNumber, asPlain, inUnit, unitLiteral, type TypedNumber } from './convert-typed';
import { broken, type Proof } from './proof';
import { asksShare } from './shares';
import { YES_NO, type NumberType, type Typed } from './types';

const OPERATIONS: Readonly<Record<BinaryOperator, ScalarOp>> = {
	'+': Op.Add,
	'-': Op.Subtract,
	'*': Op.Multiply,
	'/': Op.Divide,
	'^': Op.Power,
	'=': Op.Equal,
	'<>': Op.NotEqual,
	'<': Op.Less,
	'<=': Op.LessOrEqual,
	'>': Op.Greater,
	'>=': Op.GreaterOrEqual
};

export const isComparison = (operator: BinaryOperator) => /[=<>]/.test(operator);

/** An arithmetic operation on two operands that are proven. */
export function calculate(proof: Proof, source: Binary, left: Typed, right: Typed): Typed {
	const a = asNumber(proof, left);
	const b = asNumber(proof, right);
	if (!a || !b) return broken(source);
	if (source.operator === '^') return raise(proof, source, a, b);
	if (source.operator === '+' || source.operator === '-') {
		const both = alike(proof, [a, b], source.operator === '+' ? 'added' : 'subtracted');
		if (!both) return broken(source);
		const [first, second] = both as [TypedNumber, TypedNumber];
		return binary(source, OPERATIONS[source.operator], first, second, first.type);
	}
	const combine = source.operator === '*' ? multiply : divide;
	const type = product(proof, source, combine(a.type.unit, b.type.unit), a, b);
	return type ? binary(source, OPERATIONS[source.operator], a, b, type) : broken(source);
}

function product(
	proof: Proof,
	source: Expression,
	unit: Unit,
	a: TypedNumber,
	b: TypedNumber
): NumberType | null {
	if (!withinLimits(unit)) {
		proof.report(
			'unit-too-large',
			`${proof.words(source)} gives ${unit.text}, whose exponents or size go beyond what a unit can be: check the powers in it.`,
			source.span
		);
		return null;
	}
	return { kind: 'number', unit, any: a.type.any && b.type.any, bare: a.type.bare && b.type.bare };
}

export function binary(
	source: Expression,
	op: ScalarOp | typeof Op.IfError,
	left: Typed,
	right: Typed,
	type: Typed['type']
): Typed {
	const merged =
		type.kind === 'number' && left.type.kind === 'number' && right.type.kind === 'number'
			? {
					...type,
					any: left.type.any && right.type.any,
					bare: (left.type.bare || left.type.any) && (right.type.bare || right.type.any)
				}
			: type;
	return {
		kind: 'binary',
		op,
		left,
		right,
		type: merged,
		free: left.free | right.free,
		fixed: left.fixed && right.fixed,
		source
	};
}

/** Numbers in one unit: that of the first which has one. Null after a problem that spells both out. */
export function alike(
	proof: Proof,
	numbers: readonly TypedNumber[],
	deed: string
): TypedNumber[] | null {
	const leader = numbers.find((number) => !number.type.any);
	if (!leader) return [...numbers];
	let agree = !asksShare(proof, numbers);
	for (const number of numbers) {
		if (number.type.any || sameDimension(leader.type.unit, number.type.unit)) continue;
		agree = false;
		reportUnlike(proof, leader, number, deed);
	}
	return agree ? numbers.map((number) => inUnit(number, leader.type.unit)) : null;
}

function reportUnlike(proof: Proof, a: TypedNumber, b: TypedNumber, deed: string): void {
	for (const [literal, other] of [
		[b, a],
		[a, b]
	] as const) {
		if (literal.source?.kind !== 'number' || literal.source.unit !== null) continue;
		const { text } = literal.source;
		const unit = other.type.unit.text;
		const suggestion = `${text}[${unit}]`;
		const message = `${proof.words(other.source)} is in ${unit}, ${text} has no unit: ${suggestion}?`;
		return proof.report('unit-missing', message, literal.source.span, suggestion);
	}
	const source = b.source ?? a.source;
	const shown = (typedNumber: TypedNumber) =>
		`${proof.words(typedNumber.source)} is in ${unitWords(typedNumber.type.unit)}`;
	const message = `${shown(a)}, but ${shown(b)}: they cannot be ${deed}. Multiply the second by a ${describeRatio(b.type.unit, a.type.unit)}?`;
	if (source) proof.report('unlike-units', message, source.span);
}

/** A unit in a sentence: the plain number says so. */
export function unitWords(unit: Unit): string {
	const text = naturalText(unit);
	if (text !== '1') return Object.keys(unit.dimension).length === 0 ? unit.text : text;
	return unit.text === '1' ? '1 (no unit)' : unit.text;
}

function raise(proof: Proof, source: Binary, base: TypedNumber, by: TypedNumber): Typed {
	const exponent = asPlain(proof, by, 'an exponent');
	if (!exponent) return broken(source);
	const written = writtenNumber(source.right);
	const isPlain = Object.keys(base.type.unit.dimension).length === 0;
	if (!isPlain && (written === null || !Number.isInteger(written))) {
		const { text } = base.type.unit;
		const message =
			written === null
				? `${proof.words(source.left)} is in ${text}, so its exponent decides the unit and must be written as a whole number: divide by ${unitLiteral(text)} first?`
				: `${proof.words(source.left)} is in ${text}, and ${proof.words(source.right)} is no whole number, so the power has no unit: use SQRT for a square root, or divide by ${unitLiteral(text)} first.`;
		return proof.refuse('exponent-not-written', message, source.right);
	}
	const whole = written !== null && Number.isInteger(written) && Math.abs(written) <= 9;
	if (!isPlain && !whole)
		return proof.refuse(
			'unit-too-large',
			`${proof.words(source)} gives a unit with an exponent beyond 9: check the power.`,
			source
		);
	const plainBase = isPlain && !whole ? inUnit(base, ONE) : base;
	const unit = whole && written !== null ? power(plainBase.type.unit, written) : ONE;
	const type = product(proof, source, unit, plainBase, exponent);
	return type ? binary(source, Op.Power, plainBase, exponent, type) : broken(source);
}

function writtenNumber(expression: Expression): number | null {
	if (expression.kind === 'number') return expression.unit === null ? expression.value : null;
	if (expression.kind !== 'negation') return null;
	const of = writtenNumber(expression.of);
	return of === null ? null : -of;
}

/** A comparison of two operands that are proven: numbers of one dimension, yes/no, or members of one set. */
export function compare(proof: Proof, source: Binary, left: Typed, right: Typed): Typed {
	const op = OPERATIONS[source.operator];
	const [a, b] = [left.type, right.type];
	if (a.kind === 'bad' || b.kind === 'bad') return broken(source);
	if (a.kind === 'member' || b.kind === 'member') {
		if (a.kind === 'member' && b.kind === 'member' && a.set === b.set)
			return binary(source, op, left, right, YES_NO);
		const shown = (typed: Typed) =>
			`${proof.words(typed.source)} is ${typed.type.kind === 'member' ? `a member of ${typed.type.set}` : 'a number'}`;
		const message = `${shown(left)}, but ${shown(right)}: only members of one set can be compared.`;
		return proof.refuse('unlike-members', message, source);
	}
	if (a.kind === 'yes_no' && b.kind === 'yes_no') return binary(source, op, left, right, YES_NO);
	const [first, second] = [asNumber(proof, left), asNumber(proof, right)];
	if (!first || !second) return broken(source);
	const both = alike(proof, [first, second], 'compared');
	if (!both) return broken(source);
	const [x, y] = both as [TypedNumber, TypedNumber];
	const isEquality = source.operator === '=' || source.operator === '<>';
	if (isEquality && (x.kind === 'conversion' || y.kind === 'conversion'))
		proof.warn(
			'equal-after-conversion',
			`${proof.words(source)} compares numbers of which one was converted from another unit, so that rounding may keep them apart: compare with < or > and a tolerance.`,
			source.span
		);
	return binary(source, op, x, y, YES_NO);
}

export function negate(proof: Proof, source: Expression, of: Typed): Typed {
	const number = asNumber(proof, of);
	if (!number) return broken(source);
	if (number.kind === 'constant') return { ...number, value: -number.value, source };
	const { type, free, fixed } = number;
	return { kind: 'unary', op: Op.Negate, of: number, type, free, fixed, source };
}

/** `x%`: the same number, in hundredths. */
export function percent(proof: Proof, source: Expression, of: Typed): Typed {
	const number = asNumber(proof, of);
	const hundredth = proof.context.units.parse('%');
	if (!number || !hundredth.ok) return broken(source);
	if (number.kind === 'constant')
		return {
			...number,
			value: number.value / 100,
			type: { ...number.type, bare: false },
			source
		};
	const unit = multiply(number.type.unit, hundredth.unit);
	return { ...number, type: { ...number.type, unit, bare: false }, source };
}
