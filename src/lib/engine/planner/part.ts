/**
 * One formula from text to proof: read, resolved, its result fitted to the type and unit of its quantity, and
 * printed with gathering written out.
 */
import { parseFormula } from '$lib/formula/parse';
import { printFormula } from '$lib/formula/print';
import { map } from '$lib/formula/walk';
import type { Expression } from '$lib/formula/tree';
import { sameDimension } from '$lib/units/algebra';
import { describeRatio } from '$lib/units/describe';
import type { PlanProblem } from '../plan';
import type { ProvenPart, ProvenQuantity } from './absence';
import { unitWords } from './arithmetic';
import { asCondition, asNumber, inUnit } from './convert-typed';
import type { Context, KnownQuantity } from './context';
import { broken, Proof } from './proof';
import { prove } from './prove';
import { asksFactor } from './shares';
import { YES_NO, type NumberType, type Typed, type ValueType } from './types';

/** The part under which the formula of `where` goes. */
export const WHERE = 'where';

export function proveQuantity(context: Context, known: KnownQuantity): ProvenQuantity {
	const { where } = known.layout.quantity;
	return {
		known,
		parts: known.rules.parts.map(({ name, text }) =>
			provePart(context, known, name, text, known.type)
		),
		where: where === undefined ? null : provePart(context, known, WHERE, where, YES_NO)
	};
}

export function provePart(
	context: Context,
	known: KnownQuantity,
	part: string | null,
	text: string,
	target: ValueType
): ProvenPart {
	const proof = new Proof(context, known, part, text);
	// What is wrong with the quantity itself is reported once, with the quantity.
	if (known.type.kind === 'bad' || (known.rules.axis < 0 && known.rules.faults.length > 0))
		return { proof, typed: broken(null), expression: null, given: null };
	const parsed = parseFormula(text);
	if (!parsed.ok) {
		proof.problems.push({ quantity: proof.name, part, ...parsed.problem });
		return { proof, typed: broken(null), expression: null, given: null };
	}
	const { expression } = parsed;
	const expected = target.kind === 'member' ? target.set : undefined;
	const given = prove(proof, expression, proof.scope, expected);
	const fitted = fit(proof, expression, given, target);
	const typed = proof.problems.length > 0 ? broken(expression) : fitted;
	return { proof, typed, expression, given: given.type };
}

/** What is wrong with a quantity apart from its formulas. */
export function quantityProblems(context: Context, known: KnownQuantity): PlanProblem[] {
	const { quantity } = known.layout;
	const at = (part: string | null, code: string, message: string): PlanProblem => ({
		quantity: quantity.name,
		part,
		code,
		message,
		span: { start: 0, end: 0 }
	});
	const problems = known.rules.faults.map(({ part, message }) => at(part, 'bad-rules', message));
	const laidOut = context.layout.problems.find((problem) => problem.quantity === quantity.name);
	if (laidOut) problems.push(at(null, laidOut.code, laidOut.message));
	else if (known.fault !== null) problems.push(at(null, 'bad-unit', known.fault));
	return problems;
}

/** The canonical text, what was gathered without saying so written out. */
export function printed({ proof, expression }: ProvenPart): string | null {
	if (!expression || proof.problems.length > 0) return null;
	return printFormula(
		map(expression, (node) => {
			if (node.kind !== 'call') return node;
			const original = node.args;
			const args = original.map((argument) => {
				const over = proof.gatheredAt(argument);
				return over ? { ...argument, over } : argument;
			});
			return args.some((argument, at) => argument !== original[at]) ? { ...node, args } : node;
		})
	);
}

function fit(proof: Proof, source: Expression, value: Typed, target: ValueType): Typed {
	if (value.type.kind === 'bad' || target.kind === 'bad') return broken(source);
	if (target.kind === 'yes_no')
		return value.type.kind === 'yes_no' ? value : asYesNo(proof, source, value);
	if (target.kind === 'member') {
		if (value.type.kind === 'member' && value.type.set === target.set) return value;
		const what =
			value.type.kind === 'member'
				? `a member of ${value.type.set}`
				: value.type.kind === 'number'
					? 'a number'
					: 'yes or no';
		return proof.refuse(
			'wrong-type',
			`The formula gives ${what}, but ${proof.name} is a member of ${target.set}: give one of its members.`,
			source
		);
	}
	const number = asNumber(proof, value);
	return number ? fitNumber(proof, source, number, target) : broken(source);
}

function asYesNo(proof: Proof, source: Expression, value: Typed): Typed {
	if (proof.part === WHERE) return asCondition(proof, { ...value, source });
	const what = value.type.kind === 'member' ? `a member of ${value.type.set}` : 'a number';
	return proof.refuse(
		'wrong-type',
		`The formula gives ${what}, but ${proof.name} is yes or no: compare it, as in ${proof.words(source)} ${value.type.kind === 'member' ? '= …' : '> 0'}.`,
		source
	);
}

function fitNumber(
	proof: Proof,
	source: Expression,
	value: Typed & { readonly type: NumberType },
	{ unit }: NumberType
): Typed {
	const isPlain = Object.keys(unit.dimension).length === 0;
	if (value.type.any || sameDimension(value.type.unit, unit)) {
		if (isPlain && unit.scale !== 1 && value.type.bare && !value.type.any)
			return askPercent(proof, source, unit.text);
		return asksFactor(proof, source, unit) ? broken(source) : inUnit(value, unit);
	}
	if (source.kind === 'number' && source.unit === null) {
		const suggestion = `${source.text}[${unit.text}]`;
		const message = `${proof.name} is in ${unit.text}, ${source.text} has no unit: ${suggestion}?`;
		return proof.refuse('unit-missing', message, source, suggestion);
	}
	const remedy = ratioWords(describeRatio(value.type.unit, unit));
	const message = `The formula gives ${unitWords(value.type.unit)}, but ${proof.name} is in ${unit.text}: ${remedy}?`;
	return proof.refuse('unlike-units', message, source);
}

/** By what to multiply; where that is one over a count, what to divide by. */
function ratioWords(ratio: string): string {
	if (!ratio.startsWith('1/'))
		return /^\p{L}+$/u.test(ratio) ? `multiply by 1[${ratio}]` : `multiply by a ${ratio}`;
	const below = ratio.slice(2).replace(/^\((.*)\)$/, '$1');
	return `divide by 1[${below}]`;
}

function askPercent(proof: Proof, source: Expression, unit: string): Typed {
	const text = proof.words(source);
	if (source.kind === 'number') {
		const message = `${text} without a unit is ${times100(source.value)} %, and ${proof.name} is in ${unit}: write ${text}% for ${text} per cent, or ${times100(source.value)}% for the plain ${text}.`;
		return proof.refuse('percent-or-number', message, source, `${text}%`);
	}
	const message = `${text} is made of plain numbers, so that 1 is 100 %, and ${proof.name} is in ${unit}: write each number with its unit, as in 5%.`;
	return proof.refuse('percent-or-number', message, source);
}

const times100 = (value: number) => Number((value * 100).toPrecision(12));
