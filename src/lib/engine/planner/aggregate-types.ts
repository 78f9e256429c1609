/** What each aggregate takes and gives: the types of its terms and parameters, and the unit of its result. */
import type { Call } from '$lib/formula/tree';
import { divide, multiply, ONE, power, sameDimension } from '$lib/units/algebra';
import { Op, type AggregateOp } from '../operations';
import { alike } from './arithmetic';
import {
	asCondition,
	asNumber,
	asPlain,
	inUnit,
	unitLiteral,
	type TypedNumber
} from './convert-typed';
import type { Proof } from './proof';
import {
	numberIn,
	PLAIN,
	YES_NO,
	type Aggregate,
	type Terms,
	type Typed,
	type Variable
} from './types';

export type Result = Pick<Aggregate, 'op' | 'terms' | 'parameters' | 'positions' | 'type'>;

/** Types of the terms and of the result. Null after a problem. */
export function resultOf(
	proof: Proof,
	source: Call,
	op: AggregateOp,
	terms: readonly Terms[],
	parameters: readonly Typed[]
): Result | null {
	const [only] = terms;
	if (!only) return null;
	const plain = { op, terms, parameters, positions: null };
	switch (op) {
		case Op.Any:
		case Op.All: {
			const value = asCondition(proof, only.value);
			return value.type.kind === 'bad'
				? null
				: { ...plain, terms: [{ ...only, value }], type: YES_NO };
		}
		case Op.Count:
			// A condition is counted by adding its yeses; a number, a member by what has a value.
			return only.value.type.kind === 'yes_no'
				? { ...plain, op: Op.Sum, type: PLAIN }
				: { ...plain, type: PLAIN };
		case Op.First:
		case Op.Last:
			return { ...plain, type: only.value.type };
	}
	if (only.paired) return lineOf(proof, plain, only, only.paired);
	const numbers = terms.map((term) => asNumber(proof, term.value));
	if (numbers.some((number) => number === null)) return null;
	const both = alike(proof, numbers as TypedNumber[], 'gathered together');
	const first = both?.find((typedNumber) => !typedNumber.type.any) ?? both?.[0];
	if (!both || !first) return null;
	if ((op === Op.Irr || op === Op.Mirr || op === Op.Payback) && refusesFlow(proof, only, first))
		return null;
	const same = { ...plain, terms: withValues(terms, both) };
	switch (op) {
		case Op.ArgMin:
		case Op.ArgMax: {
			const set = only.gathered[0]?.set ?? '';
			return { ...same, positions: 'ordinal', type: { kind: 'member', set } };
		}
		case Op.Product: {
			const values = both.map((typedNumber) => asPlain(proof, typedNumber, 'a product of many'));
			return values.some((value) => value === null)
				? null
				: { ...plain, terms: withValues(terms, values as TypedNumber[]), type: PLAIN };
		}
		case Op.Rank: {
			const ranked = parameters[0] && asNumber(proof, parameters[0]);
			const pair = ranked && alike(proof, [first, ranked], 'ranked');
			return pair?.[1] ? { ...same, parameters: [pair[1]], type: PLAIN } : null;
		}
		case Op.Npv: {
			const rate = parameters[0] && rateOf(proof, parameters[0], only.gathered[0]);
			return rate ? { ...same, parameters: [rate], type: first.type } : null;
		}
		case Op.Mirr: {
			const rates = parameters.map((parameter) => rateOf(proof, parameter, only.gathered[0]));
			return rates.some((rate) => rate === null)
				? null
				: { ...same, parameters: rates as TypedNumber[], type: PLAIN };
		}
		case Op.Percentile: {
			const share = parameters[0] && asPlain(proof, parameters[0], 'a share');
			return share ? { ...same, parameters: [share], type: first.type } : null;
		}
		case Op.Irr:
			return { ...same, type: PLAIN };
		case Op.Payback: {
			const numbers = proof.context.sets.get(only.gathered[0]?.set ?? '')?.numbers;
			if (numbers) return { ...same, positions: numbers.values, type: numberIn(numbers.unit) };
			const message = `PAYBACK needs the numbers of the members of ${only.gathered[0]?.set ?? 'the set'}: give each a number, such as 0, 1, 2 for years.`;
			proof.report('no-numbers', message, source.span);
			return null;
		}
		default: {
			const { unit } = first.type;
			const types = both.map((typedNumber) => typedNumber.type);
			const any = types.every((type) => type.any);
			const bare = types.every((type) => type.bare || type.any);
			return { ...same, type: { kind: 'number', unit, any, bare } };
		}
	}
}

/**
 * Amounts are added up, one a period. Money a year is no amount; NPV's result would tell by its unit, a rate or a time
 * does not.
 */
function refusesFlow(proof: Proof, only: Terms, value: TypedNumber): boolean {
	const numbers = proof.context.sets.get(only.gathered[0]?.set ?? '')?.numbers;
	if (!numbers || value.type.any) return false;
	const { unit } = value.type;
	const isFlow = Object.entries(numbers.unit.dimension).some(
		([base, exponent]) => exponent !== 0 && (unit.dimension[base] ?? 0) * exponent < 0
	);
	if (!isFlow) return false;
	const words = proof.words(value.source);
	const better = `${words} * ${unitLiteral(numbers.unit.text)}`;
	proof.report(
		'flow-not-amount',
		`${words} is in ${unit.text}, which is a flow, and what is added up here are the amounts of each member: write ${better} if a member lasts 1 ${numbers.unit.text}.`,
		only.span,
		words.endsWith('…') ? undefined : better
	);
	return true;
}

/** The line through pairs: its slope is in y over x, what it is at x = 0 in y. */
function lineOf(
	proof: Proof,
	plain: Omit<Result, 'type'>,
	only: Terms,
	paired: Typed
): Result | null {
	const y = asNumber(proof, only.value);
	const x = asNumber(proof, paired);
	if (!y || !x) return null;
	const terms = [{ ...only, value: y, paired: x }];
	const unit = plain.op === Op.Slope ? divide(y.type.unit, x.type.unit) : y.type.unit;
	return { ...plain, terms, positions: 'paired', type: numberIn(unit) };
}

const withValues = (terms: readonly Terms[], values: readonly Typed[]) =>
	terms.map((term, at) => ({ ...term, value: values[at] ?? term.value }));

/** A rate a period: a plain number, or one over the unit of the set's numbers ("%/year"). */
function rateOf(proof: Proof, value: Typed, gathered: Variable | undefined): TypedNumber | null {
	const number = asNumber(proof, value);
	const numbers = proof.context.sets.get(gathered?.set ?? '')?.numbers;
	if (number && numbers && !number.type.any) {
		const perPeriod = power(numbers.unit, -1);
		if (sameDimension(number.type.unit, perPeriod) && !sameDimension(number.type.unit, ONE)) {
			const rate = inUnit(number, multiply(ONE, perPeriod));
			return { ...rate, type: PLAIN };
		}
	}
	return asPlain(proof, value, 'a rate a period');
}
