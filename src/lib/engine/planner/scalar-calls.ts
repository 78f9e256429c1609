/** Functions that take values as they stand: what each accepts and in which unit its result is. */
import type { ScalarName, ScalarSpec } from '$lib/formula/functions';
import type { Call } from '$lib/formula/tree';
import { coherent, ONE, root } from '$lib/units/algebra';
import type { Unit } from '$lib/units/unit';
import { isAlike, Op, OPERATION_OF, takenBy, type AlikeName, type ScalarOp } from '../operations';
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
import { asDate, dateOf, weekday } from './date-calls';
import { normalDistribution, normalQuantile } from './normal-calls';
import { broken, type Proof, type Prove } from './proof';
import type { Scope } from './scope';
import { isShare } from './shares';
import { memberAt, memberNumber, ordinal, span } from './set-calls';
import { PLAIN, YES_NO, type ListOperation, type Typed, type ValueType } from './types';

/** A call of a function that takes values as they stand, its arguments proven. */
interface ScalarCall {
	readonly proof: Proof;
	readonly source: Call;
	readonly args: readonly Typed[];
}

/** Null after a problem. */
type Proving = (call: ScalarCall) => Typed | null;

/** Functions whose arguments are not all values, or are not looked at alike. */
type OwnWay = 'SPAN' | 'MEMBER' | 'IF';

/** What functions that take the same accept: which of them does stands in the table of operations. */
const ALIKE: Readonly<Record<ReturnType<typeof takenBy>, (op: ScalarOp) => Proving>> = {
	plain: ofPlain,
	date: partOfDate,
	digits: rounded,
	multiple
};

/** What each of the others accepts; a function without its line here is an error of types. */
const PROOFS: Readonly<Record<Exclude<ScalarName, OwnWay | AlikeName>, Proving>> = {
	PI: ({ source }) => constant(source, Math.PI, PLAIN),
	TRUE: ({ source }) => constant(source, 1, YES_NO),
	FALSE: ({ source }) => constant(source, 0, YES_NO),
	AND: conditions,
	OR: conditions,
	NOT: ofFirst(({ proof, source }, first) =>
		unary(source, Op.Not, asCondition(proof, first), YES_NO)
	),
	IFERROR: instead,
	ABS: ofFirst(({ proof, source }, first) => {
		const number = asNumber(proof, first);
		return number && unary(source, Op.Abs, number, number.type);
	}),
	SQRT: ofFirst(({ proof, source }, first) => squareRoot(proof, source, first)),
	NORMDIST: ({ proof, source, args }) => normalDistribution(proof, source, args),
	NORMINV: ({ proof, source, args }) => normalQuantile(proof, source, args),
	DATE: ({ proof, source, args }) => dateOf(proof, source, args),
	WEEKDAY: ({ proof, source, args }) => weekday(proof, source, args),
	ORD: ofFirst(({ proof, source }, first) => ordinal(proof, source, first)),
	NUMBER: ofFirst(({ proof, source }, first) => memberNumber(proof, source, first))
};

export function proveScalar(
	proof: Proof,
	prove: Prove,
	source: Call,
	{ name }: ScalarSpec,
	scope: Scope,
	expected: string | undefined
): Typed {
	if (name === 'SPAN') return span(proof, source);
	if (name === 'MEMBER') return memberAt(proof, prove, source, scope);
	if (name === 'IF') return choose(proof, prove, source, scope, expected);
	const args = source.args.map((argument) =>
		prove(proof, argument.value, scope, name === 'IFERROR' ? expected : undefined)
	);
	const proving = isAlike(name) ? ALIKE[takenBy(name)](OPERATION_OF[name]) : PROOFS[name];
	return proving({ proof, source, args }) ?? broken(source);
}

function ofFirst(prove: (call: ScalarCall, first: Typed) => Typed | null): Proving {
	return (call) => {
		const [first] = call.args;
		return first ? prove(call, first) : null;
	};
}

function ofPlain(op: ScalarOp): Proving {
	return ofFirst(({ proof, source }, first) => {
		const number = asPlain(proof, first, `what ${source.name} takes`);
		return number && unary(source, op, number, PLAIN);
	});
}

function rounded(op: ScalarOp): Proving {
	return ofFirst(({ proof, source, args }, first) => round(proof, source, op, first, args[1]));
}

function multiple(op: ScalarOp): Proving {
	return ofFirst(({ proof, source, args }, first) => toMultiple(proof, source, op, first, args[1]));
}

function partOfDate(op: ScalarOp): Proving {
	return ofFirst(({ proof, source }, first) => {
		const date = asDate(proof, source, first);
		return date && unary(source, op, date, PLAIN);
	});
}

function conditions({ proof, source, args }: ScalarCall): Typed {
	const op = source.name === 'AND' ? Op.And : Op.Or;
	return list(
		source,
		op,
		args.map((arg) => asCondition(proof, arg)),
		YES_NO
	);
}

function unary(source: Call, op: ScalarOp, of: Typed, type: ValueType): Typed {
	if (of.type.kind === 'bad') return broken(source);
	return { kind: 'unary', op, of, type, free: of.free, fixed: of.fixed, source };
}

function list(
	source: Call,
	op: ListOperation['op'],
	items: readonly Typed[],
	type: ValueType
): Typed {
	if (items.some((item) => item.type.kind === 'bad')) return broken(source);
	const free = items.reduce((mask, item) => mask | item.free, 0);
	return { kind: 'list', op, items, type, free, fixed: items.every((item) => item.fixed), source };
}

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

function instead({ proof, source, args }: ScalarCall): Typed | null {
	const both = unified(proof, args);
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
	op: ScalarOp,
	of: Typed,
	digits: Typed | undefined
): Typed | null {
	const number = asNumber(proof, of);
	if (!number) return null;
	const { unit, any } = number.type;
	if (!any && (Object.keys(unit.dimension).length > 0 || (!digits && isShare(unit)))) {
		const step = op === Op.RoundDown ? 'FLOOR' : 'CEILING';
		const words = proof.words(of.source);
		const better = `${step}(${words}; ${unitLiteral(unit.text)})`;
		const message = `${words} is in ${unit.text}, and digits after the point depend on the unit: say to which multiple, as in ${better}.`;
		return proof.refuse(
			'round-has-unit',
			message,
			source,
			proof.isQuotedWhole(of.source) ? better : undefined
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
	op: ScalarOp,
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
