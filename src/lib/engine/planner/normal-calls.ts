/**
 * The normal distribution: NORMDIST and NORMINV as OpenFormula has them, by operations on the standard one. Value, mean and
 * standard deviation are in one unit; a share has none, and a density is one per that unit.
 */
import type { Call } from '$lib/formula/tree';
import { divide, ONE } from '$lib/units/algebra';
import { Op, type ScalarOp } from '../operations';
import { alike, binary } from './arithmetic';
import { asNumber, asPlain, type TypedNumber } from './convert-typed';
import { broken, type Proof } from './proof';
import { numberIn, PLAIN, type NumberType, type Typed } from './types';

export function normalDistribution(
	proof: Proof,
	source: Call,
	[x, mean, sd, kind]: readonly Typed[]
): Typed | null {
	const isCumulative = kind ? writtenChoice(proof, source, kind) : true;
	const all = inOneUnit(proof, [x, mean, sd]);
	if (!all || isCumulative === null) return null;
	const [value, middle, spread] = all as [TypedNumber, TypedNumber, TypedNumber];
	const away = { ...binary(source, Op.Subtract, value, middle, value.type), source: null };
	const deviation = unary(Op.Spread, spread, spread.type);
	const score = { ...binary(source, Op.Divide, away, deviation, PLAIN), source: null };
	if (isCumulative) return { ...unary(Op.NormalShare, score, PLAIN), source };
	const density = unary(Op.NormalDensity, score, PLAIN);
	const type = numberIn(divide(ONE, spread.type.unit));
	return { ...binary(source, Op.Divide, density, deviation, type), type };
}

export function normalQuantile(
	proof: Proof,
	source: Call,
	[share, mean, sd]: readonly Typed[]
): Typed | null {
	const both = inOneUnit(proof, [mean, sd]);
	const plain = share && asPlain(proof, share, 'a share');
	if (!both || !plain) return null;
	const [middle, spread] = both as [TypedNumber, TypedNumber];
	const deviations = unary(Op.NormalQuantile, plain, PLAIN);
	const { type } = spread.type.any ? middle : spread;
	const scaled = binary(source, Op.Multiply, deviations, unary(Op.Spread, spread, type), type);
	return { ...binary(source, Op.Add, { ...scaled, source: null }, middle, type), type };
}

/** Whether the share below is asked for, which decides the unit and so must be written. */
function writtenChoice(proof: Proof, source: Call, kind: Typed): boolean | null {
	if (kind.kind === 'constant' && kind.type.kind === 'yes_no') return kind.value === 1;
	if (kind.type.kind !== 'bad')
		proof.report(
			'not-a-condition',
			`${source.name} gives a share or a density, which differ in their unit, so ${proof.words(kind.source)} must be written: TRUE() for the share below, FALSE() for the density.`,
			kind.source?.span ?? source.span
		);
	return null;
}

function inOneUnit(
	proof: Proof,
	values: readonly (Typed | undefined)[]
): readonly TypedNumber[] | null {
	const numbers = values.map((value) => (value ? asNumber(proof, value) : null));
	if (numbers.some((number) => number === null)) return null;
	return alike(proof, numbers as TypedNumber[], 'parts of one distribution');
}

function unary(op: ScalarOp, of: Typed, type: NumberType): Typed {
	if (of.type.kind === 'bad') return broken(of.source);
	return { kind: 'unary', op, of, type, free: of.free, fixed: of.fixed, source: null };
}
