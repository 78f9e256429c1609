/**
 * A program laid out for the loops: one call or more for each instruction on wide slots that a loop can do, and a
 * call that is never done for every other, so that the machine takes over there.
 */
import { isAggregate, Op, parameterCount } from '$lib/engine/operations';
import { COPY, NO_SLOT, type Program } from '../program';
import { openKernels, type Kernels } from './kernels';
import { LOOP_NUMBERS, TURN } from './loops';

const BINARY: ReadonlyMap<number, string> = new Map<number, string>([
	[Op.Add, 'add'],
	[Op.Subtract, 'subtract'],
	[Op.Multiply, 'multiply'],
	[Op.Divide, 'divide'],
	[Op.Equal, 'equal'],
	[Op.NotEqual, 'unequal'],
	[Op.Less, 'less'],
	[Op.LessOrEqual, 'atMost'],
	[Op.Greater, 'more'],
	[Op.GreaterOrEqual, 'atLeast']
]);
const UNARY: ReadonlyMap<number, string> = new Map<number, string>([
	[Op.Negate, 'negate'],
	[Op.Abs, 'abs'],
	[Op.Not, 'not'],
	[Op.Sqrt, 'sqrt']
]);
/** By aggregate: the loop for a term, and what it starts from. */
const GATHERING: ReadonlyMap<number, readonly [loop: string, start: number]> = new Map([
	[Op.Sum, ['addTo', 0]],
	[Op.Min, ['leastOf', Infinity]],
	[Op.Max, ['greatestOf', -Infinity]],
	[Op.Any, ['or', 0]],
	[Op.All, ['and', 1]]
]);

/** A memory with the slots of a program, their flags and its turns. */
export class CallList {
	readonly values: Float64Array;
	/** By slot, narrow ones first: whether any of its columns is bad. */
	readonly flags: Uint8Array;
	readonly kernels: Kernels;
	/** By call: the instruction it belongs to. */
	readonly #instructions: Int32Array;
	readonly #start: number;
	readonly #bytes: number;

	private constructor(
		opened: { readonly buffer: ArrayBuffer; readonly kernels: Kernels },
		{ slots, flagged, numbers }: Places,
		width: number,
		list: TurnList
	) {
		this.kernels = opened.kernels;
		this.values = new Float64Array(opened.buffer, 0, slots);
		this.flags = new Uint8Array(opened.buffer, 8 * slots, flagged);
		new Float64Array(opened.buffer, numbers, list.numbers.length).set(list.numbers);
		this.#start = numbers + 8 * list.numbers.length;
		new Int32Array(opened.buffer, this.#start, list.words.length).set(list.words);
		this.#instructions = Int32Array.from(list.instructions);
		this.#bytes = 8 * width;
	}

	/** Null where there are no loops. */
	static open(program: Program, narrow: number, width: number): CallList | null {
		const slots = narrow + program.wide * width;
		// One flag more, which is never set.
		const flagged = narrow + program.wide + 1;
		const places: Places = { slots, flagged, numbers: 8 * (slots + Math.ceil(flagged / 8)) };
		const list = new TurnList(program, narrow, width, places);
		const opened = openKernels(places.numbers + 8 * list.numbers.length + 4 * list.words.length);
		return opened ? new CallList(opened, places, width, list) : null;
	}

	/** Runs all calls; `scalarStep` does an instruction that the loops leave, whose other calls are then passed over. */
	run(scalarStep: (instruction: number) => void): void {
		const size = 4 * TURN;
		const end = this.#start + size * this.#instructions.length;
		let at = this.#start;
		for (;;) {
			at = this.kernels.turns(at, end, this.#bytes);
			if (at >= end) return;
			const instruction = this.#instructions[(at - this.#start) / size]!;
			scalarStep(instruction);
			do at += size;
			while (at < end && this.#instructions[(at - this.#start) / size] === instruction);
		}
	}
}

interface Places {
	/** Numbers in all slots. */
	readonly slots: number;
	readonly flagged: number;
	/** Address of the numbers that calls need beyond the program's own. */
	readonly numbers: number;
}

class TurnList {
	readonly words: number[] = [];
	readonly instructions: number[] = [];
	/** Starts of aggregates, and limits in fours. */
	readonly numbers: number[] = [];
	readonly #narrow: number;
	readonly #width: number;
	readonly #places: Places;
	/** The instruction in hand. */
	#instruction = 0;

	constructor(
		readonly program: Program,
		narrow: number,
		width: number,
		places: Places
	) {
		this.#narrow = narrow;
		this.#width = width;
		this.#places = places;
		const { code } = program;
		for (let pc = 0; pc < code.length; pc += 3 + code[pc + 1]!) {
			this.#instruction = pc;
			const before = this.instructions.length;
			if (code[pc + 2]! >= 0 || !this.#lay(code[pc]!, pc + 3, code[pc + 1]!, code[pc + 2]!)) {
				// What was begun is not gone on with.
				this.instructions.length = before;
				this.words.length = before * TURN;
				this.#call('none', NO_SLOT, []);
			}
		}
	}

	/** Whether there are loops for all of it. */
	#lay(op: number, from: number, count: number, to: number): boolean {
		const own = Array.from(this.program.code.subarray(from, from + count));
		const [a = NO_SLOT, b = NO_SLOT] = own;
		const kinds = this.#kindsOf(own);
		if (isAggregate(op)) return this.#layTerms(op, own.slice(0, count - parameterCount(op)), to);
		if (op === COPY) return this.#call('spread', to, [a]);
		if (op === Op.And || op === Op.Or) return this.#layLogic(op, own, to);
		if (op === Op.If) return kinds.startsWith('w') && this.#call('choose', to, own);
		if (op === Op.Guard) return kinds.startsWith('w') && this.#call('guard', to, own);
		// A value that is there is taken, whatever else would have been.
		if (op === Op.IfError || op === Op.OrElse) return this.#call('spread', to, [a]);
		if (op === Op.InRange) return this.#layRange(own, to);
		const unary = UNARY.get(op);
		if (unary) return this.#call(unary, to, [a]);
		const binary = BINARY.get(op);
		return binary !== undefined && this.#call(binary, to, [a, b]);
	}

	#layTerms(op: number, terms: readonly number[], to: number): boolean {
		const gathering = GATHERING.get(op);
		if (!gathering || terms.length === 0) return false;
		const [loop, start] = gathering;
		let anyKept = false;
		this.#start(start, to);
		for (let i = 0; i < terms.length; i += 3) {
			const [term = NO_SLOT, filter = NO_SLOT, position = NO_SLOT] = terms.slice(i, i + 3);
			// What is kept or left out in every column alike is settled by the machine, and so is a place without a use.
			if ((filter !== NO_SLOT && filter >= 0) || position !== NO_SLOT) return false;
			if (filter === NO_SLOT) anyKept = true;
			this.#call(filter === NO_SLOT ? loop : `${loop}If`, to, [
				term,
				...(filter === NO_SLOT ? [] : [filter])
			]);
		}
		// The least or greatest of nothing is still infinite.
		return anyKept || Number.isFinite(start) || this.#call('finite', to, []);
	}

	#layLogic(op: number, operands: readonly number[], to: number): boolean {
		this.#start(op === Op.And ? 1 : 0, to);
		for (const operand of operands) this.#call(op === Op.And ? 'and' : 'or', to, [operand]);
		return true;
	}

	#layRange([value = NO_SLOT, ...limits]: readonly number[], to: number): boolean {
		const { constants, plan } = this.program;
		const limit = (which: number, none: number) =>
			limits[which] === NO_SLOT ? none : plan.nodes.constants[limits[which]! - constants]!;
		const four = this.#number(
			limit(0, -Infinity),
			limit(1, Infinity),
			limit(2, -Infinity),
			limit(3, Infinity)
		);
		return this.#push('within_wq', to, [this.#addressOf(value), four], [value]);
	}

	#start(value: number, to: number): void {
		this.#push('spread_n', to, [this.#number(value)], []);
	}

	#call(loop: string, to: number, operands: readonly number[]): true {
		const kinds = this.#kindsOf(operands);
		const name = loop === 'none' ? loop : `${loop}_${kinds}`;
		return this.#push(
			name,
			to,
			operands.map((slot) => this.#addressOf(slot)),
			operands
		);
	}

	#push(name: string, to: number, operands: readonly number[], flagged: readonly number[]): true {
		const number = LOOP_NUMBERS.get(name);
		if (number === undefined) throw new RangeError(`There is no loop ${name}.`);
		this.instructions.push(this.#instruction);
		const [a = 0, b = 0, c = 0] = operands;
		const flags = [to, ...flagged];
		this.words.push(number, to === NO_SLOT ? 0 : this.#addressOf(to), a, b, c);
		for (let i = 0; i < 4; i++) this.words.push(this.#flagOf(flags[i] ?? NO_SLOT));
		return true;
	}

	#kindsOf = (slots: readonly number[]) => slots.map((slot) => (slot < 0 ? 'w' : 'n')).join('');

	#addressOf(slot: number): number {
		return 8 * (slot < 0 ? this.#narrow - (slot + 1) * this.#width : slot);
	}

	#flagOf(slot: number): number {
		const { slots, flagged } = this.#places;
		const flag = slot === NO_SLOT ? flagged - 1 : slot < 0 ? this.#narrow - slot - 1 : slot;
		return 8 * slots + flag;
	}

	/** The address of numbers in a row, kept once. */
	#number(...own: readonly number[]): number {
		let at = this.numbers.findIndex((_, i) => own.every((one, k) => this.numbers[i + k] === one));
		if (at < 0) at = this.numbers.push(...own) - own.length;
		return this.#places.numbers + 8 * at;
	}
}
