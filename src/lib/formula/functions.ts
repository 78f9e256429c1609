/**
 * The one table of functions: how many arguments each takes, which of them gather, and what the editor says
 * about it. What a function computes is the engine's.
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
	/** One sentence for the editor. */
	readonly help: string;
}

const MANY = Number.POSITIVE_INFINITY;

/** An aggregate over its only argument. */
function gathering<Name extends string>(
	name: Name,
	argument: string,
	help: string
): Spec<'aggregate', Name> {
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
		signature,
		help
	};
}

/** An aggregate of one or more arguments, each gathered by itself. */
function gatheringAll<Name extends string>(name: Name, help: string): Spec<'aggregate', Name> {
	const signature = `${name}(x over set) or ${name}(a; b; …)`;
	return { ...gathering(name, 'x', help), maximum: MANY, gathers: 'all', signature };
}

/** An aggregate with parameters; `places` names every argument, the gathered one ending in "over set". */
function gatheringWith<Name extends string>(
	name: Name,
	places: readonly string[],
	help: string
): Spec<'aggregate', Name> {
	const gathers = places.findIndex((place) => place.endsWith(' over set'));
	return {
		...gathering(name, 'x', help),
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
	places: string,
	help: string
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
		signature: `${name}(${places})`,
		help
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
	gatheringAll('SUM', 'The sum; of nothing it is 0.'),
	gatheringAll('MIN', 'The least value; of nothing there is none.'),
	gatheringAll('MAX', 'The greatest value; of nothing there is none.'),
	gatheringAll('AVERAGE', 'The arithmetic mean; of nothing there is none.'),
	gatheringAll('PRODUCT', 'All values multiplied; of nothing it is 1.'),
	gathering(
		'COUNT',
		'condition',
		'How many members meet a condition, or how many have a value if x is a number.'
	),
	own(gathering('ANY', 'condition', 'Yes if at least one member meets the condition.')),
	own(gathering('ALL', 'condition', 'Yes if every member meets the condition; of none it is yes.')),
	gathering('STDEV', 'x', 'The sample standard deviation (n - 1); it needs two values.'),
	gathering(
		'MEDIAN',
		'x',
		'The middle value; of an even number of values, the mean of the two middle ones.'
	),
	gatheringWith(
		'PERCENTILE',
		['x over set', 'share'],
		'The value that a share of the values does not exceed, on a straight line between two of them: 0.5 is the median.'
	),
	paired(
		gatheringWith(
			'SLOPE',
			['y', 'x over set'],
			'How much y changes for one of x, by the straight line of least squares through the pairs of the set.'
		)
	),
	paired(
		gatheringWith(
			'INTERCEPT',
			['y', 'x over set'],
			'What y is at x = 0, by the straight line of least squares through the pairs of the set.'
		)
	),
	gatheringWith(
		'NPV',
		['rate', 'cash over set'],
		'Net present value: each member is discounted by its number of periods, without numbers from 1; what is paid today stands outside.'
	),
	gathering(
		'IRR',
		'cash',
		'The rate of return at which the present value is zero, where there is exactly one.'
	),
	gatheringWith(
		'MIRR',
		['cash over set', 'finance_rate', 'reinvest_rate'],
		'The rate of return with outlays financed and receipts reinvested at given rates.'
	),
	gatheringWith(
		'RANK',
		['x', 'y over set'],
		'The place of x among the values y, the largest first; equal values share the lower place.'
	),
	own(
		gathering('ARGMIN', 'x', 'The member with the least value; of equals, the first in set order.')
	),
	own(
		gathering(
			'ARGMAX',
			'x',
			'The member with the greatest value; of equals, the first in set order.'
		)
	),
	own(gathering('FIRST', 'x', 'The value of the first member kept: FIRST(month where stock < 0).')),
	own(gathering('LAST', 'x', 'The value of the last member kept: LAST(month where stock < 0).')),
	own(
		gathering(
			'PAYBACK',
			'cash',
			'When the running total of cash first comes back to zero, on a straight line within the period.'
		)
	),
	scalar(
		'IF',
		3,
		3,
		'condition; if_yes; if_no',
		'One value if the condition says yes, the other if it says no.'
	),
	scalar('AND', 1, MANY, 'a; b; …', 'Yes if every condition says yes.'),
	scalar('OR', 1, MANY, 'a; b; …', 'Yes if at least one condition says yes.'),
	scalar('NOT', 1, 1, 'condition', 'Yes if the condition says no.'),
	scalar('IFERROR', 2, 2, 'x; instead', 'x, or the second value where x has no value of any kind.'),
	scalar('TRUE', 0, 0, '', 'Yes.'),
	scalar('FALSE', 0, 0, '', 'No.'),
	scalar('ABS', 1, 1, 'x', 'x without its sign.'),
	scalar('SQRT', 1, 1, 'x', 'The square root; the unit of x must have one too.'),
	scalar('EXP', 1, 1, 'x', 'The number e to the power x, a plain number.'),
	scalar('LN', 1, 1, 'x', 'The natural logarithm of a plain number above zero.'),
	scalar(
		'NORMDIST',
		3,
		4,
		'x; mean; sd; cumulative',
		'The share of a normal distribution that lies below x; with FALSE() as the last argument its density at x.'
	),
	scalar(
		'NORMINV',
		3,
		3,
		'share; mean; sd',
		'The value below which a share of a normal distribution lies: NORMINV(95%; 0; 1) standard deviations for 95 %.'
	),
	scalar('PI', 0, 0, '', 'The number 3.14159…, circumference over diameter.'),
	scalar('ROUND', 1, 2, 'x; digits', 'x to so many digits after the point, a half away from zero.'),
	scalar('ROUNDUP', 1, 2, 'x; digits', 'x to so many digits after the point, away from zero.'),
	scalar('ROUNDDOWN', 1, 2, 'x; digits', 'x to so many digits after the point, towards zero.'),
	scalar(
		'CEILING',
		1,
		2,
		'x; step',
		'x up to the next multiple of a step, towards plus infinity: CEILING(x; 1[pallet]).'
	),
	scalar(
		'FLOOR',
		1,
		2,
		'x; step',
		'x down to the next multiple of a step, towards minus infinity: FLOOR(x; 1[pallet]).'
	),
	scalar('MOD', 2, 2, 'x; divisor', 'What remains of x after whole divisors, with its sign.'),
	scalar(
		'DATE',
		3,
		3,
		'year; month; day',
		'A date: days since 30 December 1899. Month 13 is January of the next year, day 0 the day before.'
	),
	scalar('YEAR', 1, 1, 'date', 'The year of a date, a plain number.'),
	scalar('MONTH', 1, 1, 'date', 'The month of a date, 1 to 12.'),
	scalar('DAY', 1, 1, 'date', 'The day of the month of a date, 1 to 31.'),
	scalar(
		'WEEKDAY',
		1,
		2,
		'date; type',
		'The day of the week: type 1 counts from Sunday as 1 (also without a type), 2 from Monday as 1, 3 from Monday as 0.'
	),
	scalar(
		'ISOWEEKNUM',
		1,
		1,
		'date',
		'The week of a date by ISO 8601: week 1 has the first Thursday.'
	),
	own(
		scalar(
			'MEMBER',
			2,
			2,
			'set; place',
			'The member at a place of its set, from 1: the inverse of ORD.'
		)
	),
	own(scalar('ORD', 1, 1, 'axis', 'The place of the member in its set, from 1, a plain number.')),
	own(scalar('NUMBER', 1, 1, 'axis', 'The number of the member, in the unit of its set.')),
	own(
		scalar(
			'SPAN',
			1,
			1,
			'set',
			'What all members of the set together last: 1 year for twelve months.'
		)
	)
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
