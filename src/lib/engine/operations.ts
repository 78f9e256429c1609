/**
 * The one table of operations: by what number each goes in a plan, how it uses `a`, `b` and the lists, which
 * function it is, and what holds for it when the plan is made. What is forgotten here is an error of types:
 * an operation without its line, or a function that gathers without an operation. How operands are read by a
 * shape is `operands.ts`; what an operation computes belongs to `scalar.ts` and the interpreter, how it is
 * written in cells to `cells/`.
 */
import { FUNCTIONS, type AggregateName, type ScalarName } from '$lib/formula/functions';

/**
 * Operations. `a` and `b` are node numbers unless said otherwise. "List of n at p" means
 * `lists[p] … lists[p+n-1]`.
 */
export const Op = {
	/** constants[a] */
	Constant: 0,
	/** The value of cell a, in this scenario (b = 0), in the one it is measured against (b = 1), in the base (b = 2). As it stands: an absent or empty cell stays so until an operation meets it. */
	Cell: 1,
	/** No value; a is the state (NOT_ENTERED, OFF_END, NO_ANSWER, HITS_NOTHING, BAD_FORMULA …). */
	Nothing: 2,
	Add: 10,
	Subtract: 11,
	Multiply: 12,
	Divide: 13,
	Power: 14,
	Negate: 15,
	Equal: 20,
	NotEqual: 21,
	Less: 22,
	LessOrEqual: 23,
	Greater: 24,
	GreaterOrEqual: 25,
	/** List of b nodes at a. All are looked at: no short cut, so that an error is never hidden by order. */
	And: 30,
	Or: 31,
	Not: 32,
	/** List of 3 at a: condition, then, else. Only the chosen branch counts. */
	If: 33,
	/** a, or b where a has no value of any kind. */
	IfError: 34,
	Abs: 40,
	Sqrt: 41,
	Exp: 42,
	Ln: 43,
	/** a to b digits; half away from zero. */
	Round: 44,
	RoundUp: 45,
	RoundDown: 46,
	/** a to a multiple of b, up or down. OpenFormula's signs. */
	Ceiling: 47,
	Floor: 48,
	/** Sign of the divisor. */
	Mod: 49,
	/** Of date a: days since 1899-12-30, whole from 1900-03-01 to 9999-12-31; a fraction of a day does not count. */
	YearOf: 50,
	MonthOf: 51,
	DayOf: 52,
	IsoWeek: 53,
	/** By type b: where the week starts, and with which number. */
	Weekday: 54,
	/** The date of the first day of month b of year a, both cut to whole numbers; month 13 is in the next year. */
	FirstOfMonth: 55,
	/** Day b, cut to a whole number, counted from date a as 1. */
	DayFrom: 56,
	/** The ordinal of the member at place a, from 1, of a set with b members. */
	MemberAt: 57,
	/** Selector a (a member's ordinal); list at b: count n, then n nodes, −1 where the pair does not exist (HITS_NOTHING). */
	Pick: 60,
	/** ABSENT where condition a says no, else b. Condition errors are carried. */
	Guard: 61,
	/** 1 if node a (always a Cell) is not ABSENT, else 0. Never an error: an empty or failed cell is present. */
	Present: 62,
	/** Node a if inside limits, else OUT_OF_RANGE; list of 4 at b: min, max, above, below as places in constants, −1 for none. */
	InRange: 63,
	/** b where a is OFF_END or NO_ANSWER, else a: the `else` of an index or of an aggregate with nothing left. */
	OrElse: 64,
	/** a where it is above 0, as a standard deviation must be. */
	Spread: 70,
	/** Of the standard normal distribution at a: its density, the share below, the value below which a share lies. */
	NormalDensity: 71,
	NormalShare: 72,
	NormalQuantile: 73,
	/**
	 * Aggregates: b terms at list a, three entries a term: value node, filter node or −1 (kept when it says yes; an
	 * error in it is carried; the value of a term left out does not count), position node or −1. After the
	 * terms, the parameters' nodes: NPV rate; PERCENTILE share; MIRR finance rate, reinvestment rate; RANK the ranked value.
	 * ALL, ANY, COUNT count conditions or present values. ARGMIN, ARGMAX give the position of the first best;
	 * FIRST, LAST the value of the first or last kept term; PAYBACK interpolates positions.
	 */
	Sum: 80,
	Min: 81,
	Max: 82,
	Average: 83,
	Count: 84,
	Product: 85,
	Any: 86,
	All: 87,
	Stdev: 88,
	Median: 89,
	Npv: 90,
	Irr: 91,
	Mirr: 92,
	Rank: 93,
	ArgMin: 94,
	ArgMax: 95,
	First: 96,
	Last: 97,
	Payback: 98,
	/** Parameter: the share, 0 to 1. */
	Percentile: 99,
	/** The straight line of least squares: the values are y, the positions x. */
	Slope: 100,
	Intercept: 101
} as const;
export type Op = (typeof Op)[keyof typeof Op];

/** How a node holds its operands; a "list of n at p" as above. */
export const Shape = {
	/** None: `a` and `b` are no nodes. */
	Leaf: 0,
	/** a */
	One: 1,
	/** a and b */
	Two: 2,
	/** List of b at a. */
	List: 3,
	/** List of 3 at a. */
	Three: 4,
	/** a; then a list at b that begins with its length. */
	Choice: 5,
	/** a; at b stand four limits, which are no nodes. */
	Limits: 6,
	/** b terms of three at list a, then the parameters. */
	Terms: 7
} as const;
export type Shape = (typeof Shape)[keyof typeof Shape];

interface Operation {
	/** A scalar operation takes numbers alone; one that chooses looks at states too, and may pass on nothing. */
	readonly kind: 'leaf' | 'scalar' | 'choice' | 'aggregate';
	readonly shape: Shape;
	/** The function that is this operation and no more. */
	readonly name?: AggregateName | ScalarName;
	/**
	 * Of a scalar: what it takes, where several take the same: a plain number, a date, a number to so many digits or
	 * to a multiple. The others say it in the planner.
	 */
	readonly takes?: 'plain' | 'date' | 'digits' | 'multiple';
	/** Of an aggregate: its value where nothing is left to gather; left out, there is no answer. */
	readonly ofNothing?: number;
	/** Its terms follow one another in time, so that none may come and go. */
	readonly inTime?: true;
	/** It takes one set at a time. */
	readonly oneSet?: true;
	/** Its `where` must not change with the inputs. */
	readonly fixedWhere?: true;
	/** What it gives is a position, which is the term's place where none is given. */
	readonly byPlace?: true;
}

const leaf = { kind: 'leaf', shape: Shape.Leaf } as const;
const one = { kind: 'scalar', shape: Shape.One } as const;
const two = { kind: 'scalar', shape: Shape.Two } as const;
const terms = { kind: 'aggregate', shape: Shape.Terms } as const;
const inTime = { ...terms, inTime: true, oneSet: true, fixedWhere: true } as const;

const OPERATIONS = {
	Constant: leaf,
	Cell: leaf,
	Nothing: leaf,
	Add: two,
	Subtract: two,
	Multiply: two,
	Divide: two,
	Power: two,
	Negate: one,
	Equal: two,
	NotEqual: two,
	Less: two,
	LessOrEqual: two,
	Greater: two,
	GreaterOrEqual: two,
	And: { kind: 'choice', shape: Shape.List, name: 'AND' },
	Or: { kind: 'choice', shape: Shape.List, name: 'OR' },
	Not: { ...one, name: 'NOT' },
	If: { kind: 'choice', shape: Shape.Three, name: 'IF' },
	IfError: { kind: 'choice', shape: Shape.Two, name: 'IFERROR' },
	Abs: { ...one, name: 'ABS' },
	Sqrt: { ...one, name: 'SQRT' },
	Exp: { ...one, name: 'EXP', takes: 'plain' },
	Ln: { ...one, name: 'LN', takes: 'plain' },
	Round: { ...two, name: 'ROUND', takes: 'digits' },
	RoundUp: { ...two, name: 'ROUNDUP', takes: 'digits' },
	RoundDown: { ...two, name: 'ROUNDDOWN', takes: 'digits' },
	Ceiling: { ...two, name: 'CEILING', takes: 'multiple' },
	Floor: { ...two, name: 'FLOOR', takes: 'multiple' },
	Mod: { ...two, name: 'MOD', takes: 'multiple' },
	YearOf: { ...one, name: 'YEAR', takes: 'date' },
	MonthOf: { ...one, name: 'MONTH', takes: 'date' },
	DayOf: { ...one, name: 'DAY', takes: 'date' },
	IsoWeek: { ...one, name: 'ISOWEEKNUM', takes: 'date' },
	Weekday: { ...two, name: 'WEEKDAY' },
	FirstOfMonth: two,
	DayFrom: two,
	MemberAt: two,
	Spread: one,
	NormalDensity: one,
	NormalShare: one,
	NormalQuantile: one,
	Pick: { kind: 'choice', shape: Shape.Choice },
	Guard: { kind: 'choice', shape: Shape.Two },
	Present: { kind: 'choice', shape: Shape.One },
	InRange: { kind: 'choice', shape: Shape.Limits },
	OrElse: { kind: 'choice', shape: Shape.Two },
	Sum: { ...terms, name: 'SUM', ofNothing: 0 },
	Min: { ...terms, name: 'MIN' },
	Max: { ...terms, name: 'MAX' },
	Average: { ...terms, name: 'AVERAGE' },
	Count: { ...terms, name: 'COUNT', ofNothing: 0 },
	Product: { ...terms, name: 'PRODUCT', ofNothing: 1 },
	Any: { ...terms, name: 'ANY', ofNothing: 0 },
	All: { ...terms, name: 'ALL', ofNothing: 1 },
	Stdev: { ...terms, name: 'STDEV', fixedWhere: true },
	Median: { ...terms, name: 'MEDIAN' },
	Npv: { ...inTime, name: 'NPV' },
	Irr: { ...inTime, name: 'IRR' },
	Mirr: { ...inTime, name: 'MIRR' },
	Rank: { ...terms, name: 'RANK', fixedWhere: true },
	ArgMin: { ...terms, name: 'ARGMIN', oneSet: true, byPlace: true },
	ArgMax: { ...terms, name: 'ARGMAX', oneSet: true, byPlace: true },
	First: { ...terms, name: 'FIRST' },
	Last: { ...terms, name: 'LAST' },
	Payback: { ...inTime, name: 'PAYBACK', byPlace: true },
	Percentile: { ...terms, name: 'PERCENTILE', fixedWhere: true },
	Slope: { ...terms, name: 'SLOPE', fixedWhere: true },
	Intercept: { ...terms, name: 'INTERCEPT', fixedWhere: true }
} as const satisfies Record<keyof typeof Op, Operation>;

type Key = keyof typeof Op;
type CodeOf<Kind> = {
	[K in Key]: (typeof OPERATIONS)[K]['kind'] extends Kind ? (typeof Op)[K] : never;
}[Key];
type Alike = Extract<(typeof OPERATIONS)[Key], { readonly name: string; readonly takes: string }>;
/** Scalars that take what others take. */
export type AlikeName = Alike['name'];
type CodeNamed<Name> = {
	[K in Key]: (typeof OPERATIONS)[K] extends { readonly name: Name } ? (typeof Op)[K] : never;
}[Key];
/** Operations of one kind, so that a list of them can be held to be complete. */
export type ScalarOp = CodeOf<'scalar'>;
export type ChoiceOp = CodeOf<'choice'>;
export type AggregateOp = CodeOf<'aggregate'>;

/** By number. */
const BY_CODE: (Operation | undefined)[] = [];
const SHAPES = new Uint8Array(256);
const PARAMETERS = new Uint8Array(256);
const CHOICES = new Uint8Array(256);
for (const key of Object.keys(Op) as Key[]) {
	const operation: Operation = OPERATIONS[key];
	BY_CODE[Op[key]] = operation;
	SHAPES[Op[key]] = operation.shape;
	if (operation.kind === 'choice') CHOICES[Op[key]] = 1;
	const spec = operation.name && FUNCTIONS.get(operation.name);
	// What is paired with the gathered argument is looked at term by term.
	if (spec?.kind === 'aggregate' && !spec.paired) PARAMETERS[Op[key]] = spec.parameters.length;
}

/** What is known of an operation; numbers that are none have no line. */
export function operation(op: number): Operation {
	const found = BY_CODE[op];
	if (!found) throw new RangeError(`There is no operation ${op}.`);
	return found;
}

export const shapeOf = (op: number): Shape => SHAPES[op] as Shape;

/** How many nodes follow the terms of an aggregate. */
export const parameterCount = (op: number): number => PARAMETERS[op]!;

export const isAggregate = (op: number): op is AggregateOp => SHAPES[op] === Shape.Terms;

/** Whether an operation takes one operand only. */
export const isUnary = (op: number): boolean => SHAPES[op] === Shape.One;

export const isChoice = (op: number): op is ChoiceOp => CHOICES[op] === 1;

const TAKEN = new Map<AlikeName, Alike['takes']>(
	Object.values<Operation>(OPERATIONS).flatMap(({ name, takes }) =>
		takes ? [[name as AlikeName, takes]] : []
	)
);

type Named = Extract<(typeof OPERATIONS)[Key], { readonly name: string }>['name'];
const named = Object.fromEntries(
	(Object.keys(Op) as Key[]).flatMap((key) => {
		const { name }: Operation = OPERATIONS[key];
		return name ? [[name, Op[key]]] : [];
	})
) as { [N in Named]: CodeNamed<N> };

/** The operation of each function that is one. Every function that gathers is: a type error if none is. */
export const OPERATION_OF: typeof named & Readonly<Record<AggregateName, AggregateOp>> = named;

/** What a scalar takes, where several take the same. */
export const takenBy = (name: AlikeName): Alike['takes'] => TAKEN.get(name)!;
export const isAlike = (name: ScalarName): name is AlikeName => TAKEN.has(name as AlikeName);
