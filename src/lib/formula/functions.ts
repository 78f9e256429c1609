/**
 * The one table of functions: how many arguments each takes, which of them gather, and how it is written. What is said
 * of each stands in `function-words.ts`, which the first screen does without; what a function computes is the engine's.
 */

interface Spec<Kind extends 'aggregate' | 'scalar', Name extends string> {
	readonly name: Name;
	/** An aggregate gathers members of sets; a scalar takes values as they stand. */
	readonly kind: Kind;
	readonly minimum: number;
	/** Infinity: as many as you like. */
	readonly maximum: number;
	/** Which arguments may carry `over`, `where` and `else`: all, the one at this place (from 0), or none. */
	readonly gathers: 'all' | number | null;
	/** Of an aggregate: the arguments that are taken as they stand, by place. */
	readonly parameters: readonly { readonly position: number; readonly name: string }[];
	/** Whether its parameters are taken at each gathered member too: the y of SLOPE. */
	readonly paired: boolean;
	/** In OpenFormula; false: our own addition. */
	readonly standard: boolean;
	readonly signature: string;
}

const MANY = Number.POSITIVE_INFINITY;

/** An aggregate over its only argument. */
function gathering<Name extends string>(name: Name, argument: string): Spec<'aggregate', Name> {
	const signature = `${name}(${argument} over set)`;
	return {
		name,
		kind: 'aggregate',
		minimum: 1,
		maximum: 1,
		gathers: 0,
		parameters: [],
		paired: false,
		standard: true,
		signature
	};
}

/** An aggregate of one or more arguments, each gathered by itself. */
function gatheringAll<Name extends string>(name: Name): Spec<'aggregate', Name> {
	const signature = `${name}(x over set) or ${name}(a; b; …)`;
	return { ...gathering(name, 'x'), maximum: MANY, gathers: 'all', signature };
}

/** An aggregate with parameters; `places` names every argument, the gathered one ending in "over set". */
function gatheringWith<Name extends string>(
	name: Name,
	places: readonly string[]
): Spec<'aggregate', Name> {
	const gathers = places.findIndex((place) => place.endsWith(' over set'));
	return {
		...gathering(name, 'x'),
		minimum: places.length,
		maximum: places.length,
		gathers,
		parameters: places
			.map((place, position) => ({ position, name: place }))
			.filter(({ position }) => position !== gathers),
		signature: `${name}(${places.join('; ')})`
	};
}

function scalar<Name extends string>(
	name: Name,
	minimum: number,
	maximum: number,
	places: string
): Spec<'scalar', Name> {
	return {
		name,
		kind: 'scalar',
		minimum,
		maximum,
		gathers: null,
		parameters: [],
		paired: false,
		standard: true,
		signature: `${name}(${places})`
	};
}

/** Not in OpenFormula. */
const own = <S extends { readonly standard: boolean }>(spec: S): S => ({
	...spec,
	standard: false
});

/** An aggregate whose other argument is looked at for each gathered member. */
const paired = <S extends { readonly paired: boolean }>(spec: S): S => ({ ...spec, paired: true });

const specs = [
	gatheringAll('SUM'),
	gatheringAll('MIN'),
	gatheringAll('MAX'),
	gatheringAll('AVERAGE'),
	gatheringAll('PRODUCT'),
	gathering('COUNT', 'condition'),
	own(gathering('ANY', 'condition')),
	own(gathering('ALL', 'condition')),
	gathering('STDEV', 'x'),
	gathering('MEDIAN', 'x'),
	gatheringWith('PERCENTILE', ['x over set', 'share']),
	paired(gatheringWith('SLOPE', ['y', 'x over set'])),
	paired(gatheringWith('INTERCEPT', ['y', 'x over set'])),
	gatheringWith('NPV', ['rate', 'cash over set']),
	gathering('IRR', 'cash'),
	gatheringWith('MIRR', ['cash over set', 'finance_rate', 'reinvest_rate']),
	gatheringWith('RANK', ['x', 'y over set']),
	own(gathering('ARGMIN', 'x')),
	own(gathering('ARGMAX', 'x')),
	own(gathering('FIRST', 'x')),
	own(gathering('LAST', 'x')),
	own(gathering('PAYBACK', 'cash')),
	scalar('IF', 3, 3, 'condition; if_yes; if_no'),
	scalar('AND', 1, MANY, 'a; b; …'),
	scalar('OR', 1, MANY, 'a; b; …'),
	scalar('NOT', 1, 1, 'condition'),
	scalar('IFERROR', 2, 2, 'x; instead'),
	scalar('TRUE', 0, 0, ''),
	scalar('FALSE', 0, 0, ''),
	scalar('ABS', 1, 1, 'x'),
	scalar('SQRT', 1, 1, 'x'),
	scalar('EXP', 1, 1, 'x'),
	scalar('LN', 1, 1, 'x'),
	scalar('NORMDIST', 3, 4, 'x; mean; sd; cumulative'),
	scalar('NORMINV', 3, 3, 'share; mean; sd'),
	scalar('PI', 0, 0, ''),
	scalar('ROUND', 1, 2, 'x; digits'),
	scalar('ROUNDUP', 1, 2, 'x; digits'),
	scalar('ROUNDDOWN', 1, 2, 'x; digits'),
	scalar('CEILING', 1, 2, 'x; step'),
	scalar('FLOOR', 1, 2, 'x; step'),
	scalar('MOD', 2, 2, 'x; divisor'),
	scalar('DATE', 3, 3, 'year; month; day'),
	scalar('YEAR', 1, 1, 'date'),
	scalar('MONTH', 1, 1, 'date'),
	scalar('DAY', 1, 1, 'date'),
	scalar('WEEKDAY', 1, 2, 'date; type'),
	scalar('ISOWEEKNUM', 1, 1, 'date'),
	own(scalar('MEMBER', 2, 2, 'set; place')),
	own(scalar('ORD', 1, 1, 'axis')),
	own(scalar('NUMBER', 1, 1, 'axis')),
	own(scalar('SPAN', 1, 1, 'set'))
];

export type FunctionSpec = (typeof specs)[number];
export type AggregateSpec = Extract<FunctionSpec, { readonly kind: 'aggregate' }>;
export type AggregateName = AggregateSpec['name'];
export type ScalarSpec = Exclude<FunctionSpec, AggregateSpec>;
export type ScalarName = ScalarSpec['name'];

/** Every function by its name in upper case, in the order in which help lists them. */
export const FUNCTIONS: ReadonlyMap<string, FunctionSpec> = new Map<string, FunctionSpec>(
	specs.map((spec) => [spec.name, spec])
);

/** The function of that name, in any case. */
export function findFunction(name: string): FunctionSpec | undefined {
	return FUNCTIONS.get(name.toUpperCase());
}

/** Whether the argument at this place (from 0) may carry `over`, `where` and `else`. */
export function argumentGathers(spec: FunctionSpec, position: number): boolean {
	return spec.gathers === 'all' || spec.gathers === position;
}
