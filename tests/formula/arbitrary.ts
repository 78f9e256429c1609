/**
 * Random formula trees that the parser could have made: every function with as many arguments as it takes,
 * clauses only where they may stand. For the laws that formulas, plans and engines are held to.
 */
import fc from 'fast-check';
import { argumentGathers, FUNCTIONS, type FunctionSpec } from '$lib/formula/functions';
import { isName, RESERVED } from '$lib/formula/names';
import type {
	Argument,
	BinaryOperator,
	Binding,
	Expression,
	Index,
	NumberLiteral,
	Reference
} from '$lib/formula/tree';

const NOWHERE = { start: 0, end: 0 };

export interface ExpressionChoices {
	/** Names for quantities, sets and indices; random ones when left out. */
	readonly names?: readonly string[];
	/** Texts for units; plausible ones when left out, none when empty. */
	readonly units?: readonly string[];
	readonly maxDepth?: number;
}

/** A letter, then letters, digits or underscores, of several scripts; never a reserved word. */
export const nameArbitrary: fc.Arbitrary<string> = fc.oneof(
	fc.constantFrom(
		'layer',
		'line',
		'product',
		'month',
		'wall_set_point',
		'L2',
		'k',
		'constructor',
		'toString',
		'Schicht_größe',
		'сталь',
		'壁厚',
		'sum',
		'PI',
		'Over',
		'x²'
	),
	fc
		.stringMatching(/^[a-zA-Zäß][a-zA-Z0-9_ø]{0,7}$/)
		.filter((text) => isName(text) && !RESERVED.has(text))
);

/** What may stand between single quotes. */
export const memberArbitrary: fc.Arbitrary<string> = fc.oneof(
	fc.constantFrom('5x24', 'PX15B', '__proto__', 'over', '25 m coil', '1.5', 'a;b]', '–'),
	fc
		.string({ minLength: 1, maxLength: 10 })
		.filter((text) => /^(?! )[^'"\p{Cc}]+(?<! )$/u.test(text))
);

const numberText: fc.Arbitrary<string> = fc.oneof(
	fc.nat(100000).map(String),
	fc.double({ min: 0, noNaN: true, noDefaultInfinity: true }).map(String),
	fc.tuple(fc.nat(999), fc.nat(999)).map(([whole, part]) => `${whole}.${part}`),
	fc.constantFrom('.5', '0.50', '1e-3', '1E5', '007', '1.5e+2')
);

function numberArbitrary(units: readonly string[]): fc.Arbitrary<NumberLiteral> {
	const unit =
		units.length === 0 ? fc.constant(null) : fc.option(fc.constantFrom(...units), { freq: 2 });
	return fc.tuple(numberText, unit).map(([text, unitText]) => ({
		kind: 'number',
		value: Number(text),
		text,
		unit: unitText,
		span: NOWHERE,
		unitSpan: unitText === null ? null : NOWHERE
	}));
}

const arithmeticOperators: readonly BinaryOperator[] = ['+', '-', '*', '/', '^'];
const comparisons: readonly BinaryOperator[] = ['=', '<>', '<', '<=', '>', '>='];
const operators = [...arithmeticOperators, ...comparisons];

/** Trees of at most `maxDepth` levels (5 when left out), all spans zero. */
export function expressionArbitrary(choices: ExpressionChoices = {}): fc.Arbitrary<Expression> {
	const {
		names,
		units = ['kg', 'EUR/(person*h)', 'm/min', '%', 'm²', '1/year'],
		maxDepth = 5
	} = choices;
	const name = names === undefined ? nameArbitrary : fc.constantFrom(...names);
	const number = numberArbitrary(units);
	const bare = name.map((text) => reference(text));

	const { expression } = fc.letrec<{ expression: Expression; member: Expression }>((tie) => {
		const index: fc.Arbitrary<Index> = fc.oneof(
			{ weight: 3, arbitrary: tie('member').map(memberIndex) },
			{ weight: 2, arbitrary: fc.tuple(name, neighbourOffset).map(neighbour) }
		);
		const indexed = fc
			.record({
				name,
				indices: fc.array(index, { minLength: 1, maxLength: 3 }),
				scenario: fc.option(fc.constantFrom('base' as const, 'reference' as const), { freq: 2 }),
				otherwise: fc.option(tie('expression'), { freq: 1 })
			})
			.map(({ name: text, indices, scenario, otherwise }) => ({
				...reference(text),
				indices:
					scenario === null
						? indices
						: [{ kind: 'scenario' as const, which: scenario, span: NOWHERE }, ...indices],
				otherwise
			}));
		const call = fc
			.constantFrom(...FUNCTIONS.values())
			.chain((spec) => callArbitrary(spec, name, tie('expression')));
		const leaf = fc.oneof(number, bare, quotedArbitrary(name));
		return {
			member: fc.oneof({ maxDepth }, bare, quotedArbitrary(name), indexed, call),
			expression: fc.oneof(
				{ maxDepth, depthIdentifier: 'expression' },
				leaf,
				{ weight: 3, arbitrary: binaryArbitrary(tie('expression')) },
				tie('expression').map((of): Expression => ({ kind: 'negation', of, span: NOWHERE })),
				tie('expression').map((of): Expression => ({ kind: 'percent', of, span: NOWHERE })),
				indexed,
				call
			)
		};
	});
	return expression;
}

/** Digits, `+ - * / ^ %` and signs only. */
export function arithmeticArbitrary(maxDepth = 5): fc.Arbitrary<Expression> {
	const digit = fc.integer({ min: 0, max: 9 }).map((value): Expression => {
		const text = String(value);
		return { kind: 'number', value, text, unit: null, span: NOWHERE, unitSpan: null };
	});
	return fc.letrec<{ node: Expression }>((tie) => ({
		node: fc.oneof(
			{ maxDepth },
			digit,
			{ weight: 4, arbitrary: binaryArbitrary(tie('node'), arithmeticOperators) },
			tie('node').map((of): Expression => ({ kind: 'negation', of, span: NOWHERE })),
			digit.map((of): Expression => ({ kind: 'percent', of, span: NOWHERE }))
		)
	})).node;
}

/** The same tree with every span zero, for comparing trees from different texts. */
export function withoutSpans(expression: Expression): Expression {
	return JSON.parse(
		JSON.stringify(expression, (key, value: unknown) =>
			/^(span|nameSpan|unitSpan)$/.test(key) && value !== null ? NOWHERE : value
		)
	) as Expression;
}

function reference(name: string): Reference {
	return {
		kind: 'reference',
		qualifier: null,
		name,
		quoted: false,
		indices: [],
		otherwise: null,
		span: NOWHERE,
		nameSpan: NOWHERE
	};
}

function quotedArbitrary(name: fc.Arbitrary<string>): fc.Arbitrary<Reference> {
	const qualifier = fc.option(name, { freq: 1 });
	return fc.oneof(
		fc
			.tuple(qualifier, memberArbitrary)
			.map(([set, id]) => ({ ...reference(id), qualifier: set, quoted: true })),
		fc.tuple(name, name).map(([set, id]) => ({ ...reference(id), qualifier: set }))
	);
}

const neighbourOffset = fc.integer({ min: -1000, max: 1000 }).filter((offset) => offset !== 0);

const neighbour = ([axis, offset]: [string, number]): Index => ({
	kind: 'neighbour',
	axis,
	offset,
	span: NOWHERE
});

const memberIndex = (value: Expression): Index => ({ kind: 'member', value, span: NOWHERE });

function binaryArbitrary(
	operand: fc.Arbitrary<Expression>,
	among: readonly BinaryOperator[] = operators
): fc.Arbitrary<Expression> {
	return fc
		.tuple(fc.constantFrom(...among), operand, operand)
		.map(([operator, left, right]) => ({ kind: 'binary', operator, left, right, span: NOWHERE }));
}

function callArbitrary(
	spec: FunctionSpec,
	name: fc.Arbitrary<string>,
	expression: fc.Arbitrary<Expression>
): fc.Arbitrary<Expression> {
	const most = Math.min(spec.maximum, spec.minimum + 2);
	const binding: fc.Arbitrary<Binding> = fc
		.tuple(fc.option(name, { freq: 1 }), name)
		.map(([index, axis]) => ({ index, axis, span: NOWHERE }));
	const argument = (gathers: boolean): fc.Arbitrary<Argument> =>
		fc.record({
			value: expression,
			over: gathers ? fc.array(binding, { maxLength: 2 }) : fc.constant([]),
			where: gathers ? fc.option(expression, { freq: 1 }) : fc.constant(null),
			otherwise: gathers ? fc.option(expression, { freq: 1 }) : fc.constant(null),
			span: fc.constant(NOWHERE)
		});
	return fc
		.integer({ min: spec.minimum, max: most })
		.chain((count) =>
			fc.tuple(
				...Array.from({ length: count }, (_, place) => argument(argumentGathers(spec, place)))
			)
		)
		.map((args) => ({
			kind: 'call',
			name: spec.name,
			args,
			span: NOWHERE,
			nameSpan: NOWHERE
		}));
}
