/**
 * The loops over a block of columns. A wide operand (w) is the address of one number a column, a narrow one (n) the
 * address of one number for all. A loop answers 0 where some of its results are not what they must be, finite numbers
 * for most; else 1.
 */
import { bodyOf, PARAMETERS, type Loop } from './loop-body';
import { I32, moduleBytes, unsigned, type FunctionBody } from './module-bytes';
import {
	type Code,
	EQ,
	NE,
	LT,
	GT,
	LE,
	GE,
	AND,
	AND_NOT,
	OR,
	SELECT,
	ABS,
	NEG,
	SQRT,
	ADD,
	SUB,
	MUL,
	DIV,
	MIN,
	MAX,
	ZERO,
	ONE,
	get,
	set,
	i32,
	PLUS
} from './vector-code';

const then =
	(...ops: readonly Code[]) =>
	(operands: readonly Code[]): Code => [...operands.flat(), ...ops.flat()];
const isYes = (operand: Code): Code => [...operand, ...ZERO, ...NE];

const BOTH = ['ww', 'wn', 'nw'];

const LOOPS: readonly Loop[] = [
	...Object.entries({ add: ADD, subtract: SUB, multiply: MUL, divide: DIV }).flatMap(([name, op]) =>
		BOTH.map((kinds) => ({ name, kinds, body: then(op), checksFinite: true }))
	),
	...Object.entries({
		equal: EQ,
		unequal: NE,
		less: LT,
		atMost: LE,
		more: GT,
		atLeast: GE
	}).flatMap(([name, op]) => BOTH.map((kinds) => ({ name, kinds, body: then(op, ONE, AND) }))),
	{ name: 'negate', kinds: 'w', body: then(NEG) },
	{ name: 'abs', kinds: 'w', body: then(ABS) },
	...['w', 'n'].map((kinds) => ({ name: 'spread', kinds, body: then() })),
	// Says whether all that stands there is finite.
	{ name: 'finite', kinds: '', body: then(), checksFinite: true, gathers: true },
	{ name: 'not', kinds: 'w', body: then(ZERO, EQ, ONE, AND) },
	{ name: 'sqrt', kinds: 'w', body: then(SQRT), checksFinite: true },
	// Condition, then, else.
	...['www', 'wwn', 'wnw', 'wnn'].map((kinds) => ({
		name: 'choose',
		kinds,
		body: ([condition = [], yes = [], no = []]: readonly Code[]) => [
			...yes,
			...no,
			...isYes(condition),
			...SELECT
		]
	})),
	// What stands there, then the next term, then its filter.
	...['w', 'n'].flatMap((kinds): Loop[] => [
		{ name: 'addTo', kinds, body: then(ADD), checksFinite: true, gathers: true },
		{ name: 'leastOf', kinds, body: then(MIN), gathers: true },
		{ name: 'greatestOf', kinds, body: then(MAX), gathers: true }
	]),
	...['ww', 'nw'].flatMap((kinds): Loop[] => [
		{
			name: 'addToIf',
			kinds,
			body: ([sum = [], term = [], filter = []]) => [
				...sum,
				...term,
				...isYes(filter),
				...AND,
				...ADD
			],
			checksFinite: true,
			gathers: true
		},
		...(['leastOfIf', 'greatestOfIf'] as const).map((name) => ({
			name,
			kinds,
			body: ([soFar = [], term = [], filter = []]: readonly Code[]) => [
				...soFar,
				...term,
				...(name === 'leastOfIf' ? MIN : MAX),
				...soFar,
				...isYes(filter),
				...SELECT
			],
			gathers: true
		}))
	]),
	...['w', 'n'].flatMap((kinds): Loop[] => [
		{
			name: 'and',
			kinds,
			body: ([soFar = [], a = []]) => [...soFar, ...isYes(a), ...AND],
			gathers: true
		},
		{
			name: 'or',
			kinds,
			body: ([soFar = [], a = []]) => [...soFar, ...isYes(a), ...ONE, ...AND, ...OR],
			gathers: true
		}
	]),
	// The same for terms that are kept where their filter says yes.
	...['ww', 'nw'].flatMap((kinds): Loop[] => [
		{
			name: 'andIf',
			kinds,
			body: ([soFar = [], a = [], filter = []]) => [
				...[...soFar, ...isYes(filter), ...a, ...ZERO, ...EQ, ...AND],
				...AND_NOT
			],
			gathers: true
		},
		{
			name: 'orIf',
			kinds,
			body: ([soFar = [], a = [], filter = []]) => [
				...[...soFar, ...isYes(a), ...isYes(filter), ...AND, ...ONE, ...AND],
				...OR
			],
			gathers: true
		}
	]),
	// A condition and a value, which is copied; says whether all conditions hold.
	...['ww', 'wn'].map((kinds) => ({
		name: 'guard',
		kinds,
		body: ([, value = []]: readonly Code[]) => value,
		holds: ([condition = []]: readonly Code[]) => isYes(condition)
	})),
	// A value, which is copied; says whether all are inside: least, greatest, above, below.
	{
		name: 'within',
		kinds: 'wq',
		body: ([x = []]) => x,
		holds: ([x = [], least = [], greatest = [], above = [], below = []]) => [
			...[...x, ...least, ...GE],
			...[...x, ...greatest, ...LE, ...AND],
			...[...x, ...above, ...GT, ...AND],
			...[...x, ...below, ...LT, ...AND]
		]
	}
];

/** For what no loop does: never good. */
const NONE: FunctionBody = {
	name: 'none',
	parameters: PARAMETERS,
	result: I32,
	locals: [],
	code: i32(0)
};

/** Numbers of four bytes in one turn of `turns`: loop, results, three operands, then where the flag of each stands. */
export const TURN = 9;

/**
 * Loops one after the other: from the address of a turn to the end of the turns, with the bytes of a block. Gives the
 * address of the first turn that it leaves undone, since something that it works on is flagged or its loop says no;
 * the end when all is done.
 */
function turns(): FunctionBody {
	const [at, end, bytes] = [0, 1, 2];
	const word = (which: number): Code => [...get(at), 0x28, 2, ...unsigned(4 * which)];
	const flag = (which: number): Code => [...word(which), 0x2d, 0, 0];
	const leave: Code = [0x04, 0x40, ...get(at), 0x0f, 0x0b];
	return {
		name: 'turns',
		parameters: [I32, I32, I32],
		result: I32,
		locals: [],
		code: [
			...[0x03, 0x40],
			...[...get(at), ...get(end), 0x4f, ...leave],
			...[...flag(5), ...flag(6), 0x72, ...flag(7), 0x72, ...flag(8), 0x72, ...leave],
			...[...word(1), ...word(1), ...get(bytes), ...PLUS, ...word(2), ...word(3), ...word(4)],
			// The loop, by its number in the table; all are of type 0.
			...[...word(0), 0x11, 0, 0, 0x45, ...leave],
			...[...get(at), ...i32(4 * TURN), ...PLUS, ...set(at), 0x0c, 0, 0x0b],
			...get(at)
		]
	};
}

const inTable = [...LOOPS.map(bodyOf), NONE];

/** The number of each loop. */
export const LOOP_NUMBERS: ReadonlyMap<string, number> = new Map(
	inTable.map(({ name }, number) => [name, number])
);

export const loopBytes = () => moduleBytes([...inTable, turns()], inTable.length);
