/**
 * From what a loop does with one vector to its whole body: it goes over the columns of a block two numbers at a time
 * and twice a turn, so that they are a multiple of four.
 */
import { I32, unsigned, V128, type FunctionBody } from './module-bytes';
import {
	type Code,
	vectorOp,
	AGAIN_IF,
	BELOW,
	END_OF_LOOP,
	F64_ADD,
	F64_EQUAL,
	F64_ZERO,
	LOOP,
	LOAD,
	LOAD_SPLAT,
	STORE,
	EXTRACT,
	AND,
	ADD,
	SUB,
	ALL_BITS,
	ALL_TRUE,
	get,
	set,
	tee,
	i32,
	PLUS
} from './vector-code';

/** Parameters of every loop: where its results start and end, then three operands, of which it may need fewer. */
export const PARAMETERS = [I32, I32, I32, I32, I32];
const TO = 0;
const END = 1;
const OPERAND = 2;

export interface Loop {
	readonly name: string;
	/** One letter for each operand: w a number a column, n one number for all, q four numbers for all. */
	readonly kinds: string;
	/** From the operands, in order, to one vector on the stack. */
	readonly body: (operands: readonly Code[]) => Code;
	/** Whether its results may be other than finite. */
	readonly checksFinite?: boolean;
	/** Whether it reads what stands where its results go, as its first operand. */
	readonly gathers?: boolean;
	/** What all lanes must say, instead of that results be finite: from the operands to a mask. */
	readonly holds?: (operands: readonly Code[]) => Code;
}

export function bodyOf({ name, kinds, body, checksFinite, gathers, holds }: Loop): FunctionBody {
	const locals: number[] = [];
	const local = () => PARAMETERS.length + locals.push(V128) - 1;
	const hand = local();
	const judges = [local(), local()];
	const before: number[] = [];
	/** Loads what is the same in all columns once, into locals. */
	const hold = (operand: number, offset: number): Code => {
		const held = local();
		before.push(...get(operand), ...vectorOp(LOAD_SPLAT), 3, offset, ...set(held));
		return get(held);
	};
	const operands = [...kinds].map((kind, i) => {
		const operand = OPERAND + i;
		if (kind === 'w')
			return (offset: number) => [[...get(operand), ...vectorOp(LOAD), 4, ...unsigned(offset)]];
		const held = (kind === 'q' ? [0, 8, 16, 24] : [0]).map((place) => hold(operand, place));
		return () => held;
	});
	const standing = (offset: number): Code => [
		...get(TO),
		...vectorOp(LOAD),
		4,
		...unsigned(offset)
	];
	const all = (offset: number): Code[] => [
		...(gathers ? [standing(offset)] : []),
		...operands.flatMap((operand) => operand(offset))
	];
	const checkFinite = (lane: number): Code => {
		const own = judges[lane]!;
		if (holds) return [...get(own), ...holds(all(16 * lane)), ...AND, ...set(own)];
		// x − x is 0 for a finite number and NaN for any other; NaN stays in a sum.
		if (checksFinite) return [...get(own), ...get(hand), ...get(hand), ...SUB, ...ADD, ...set(own)];
		return [];
	};
	const turn = (lane: number): Code => [
		...get(TO),
		...body(all(16 * lane)),
		...tee(hand),
		...vectorOp(STORE),
		4,
		...unsigned(16 * lane),
		...checkFinite(lane)
	];
	const step = (place: number): Code => [...get(place), ...i32(32), ...PLUS, ...set(place)];
	const [low, high] = judges as [number, number];
	const verdict: Code = holds
		? [...get(low), ...get(high), ...AND, ...ALL_TRUE]
		: checksFinite
			? [
					...[...get(low), ...get(high), ...ADD, ...tee(hand), ...EXTRACT, 0],
					...[...get(hand), ...EXTRACT, 1],
					// Their sum is 0.
					...[...F64_ADD, ...F64_ZERO, ...F64_EQUAL]
				]
			: i32(1);
	return {
		name: `${name}_${kinds}`,
		parameters: PARAMETERS,
		result: I32,
		code: [
			...before,
			...(holds ? judges.flatMap((own) => [...ALL_BITS, ...set(own)]) : []),
			// Again and again until the results have reached their end.
			...[...LOOP, ...turn(0), ...turn(1)],
			...[...kinds].flatMap((kind, i) => (kind === 'w' ? step(OPERAND + i) : [])),
			...[...step(TO), ...get(TO), ...get(END), ...BELOW, ...AGAIN_IF, ...END_OF_LOOP],
			...verdict
		],
		locals
	};
}
