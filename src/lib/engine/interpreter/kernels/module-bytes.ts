/**
 * Writes a WebAssembly module of plain loops: functions over one imported memory, each exported under its name.
 * Only what the kernels need of the binary format (WebAssembly Core Specification 2.0, chapter 5, with the fixed-width
 * vectors of chapter 5.4.8).
 */

/** Value types. */
export const I32 = 0x7f;
export const V128 = 0x7b;

export interface FunctionBody {
	readonly name: string;
	readonly parameters: readonly number[];
	readonly result: number;
	readonly locals: readonly number[];
	readonly code: readonly number[];
}

/** An unsigned number in groups of seven bits. */
export function unsigned(value: number): number[] {
	const bytes: number[] = [];
	let rest = value;
	do {
		const low = rest & 0x7f;
		rest >>>= 7;
		bytes.push(rest === 0 ? low : low | 0x80);
	} while (rest !== 0);
	return bytes;
}

/** A signed number in groups of seven bits. */
export function signed(value: number): number[] {
	const bytes: number[] = [];
	let rest = value;
	for (;;) {
		const low = rest & 0x7f;
		rest >>= 7;
		const isLast = (rest === 0 && (low & 0x40) === 0) || (rest === -1 && (low & 0x40) !== 0);
		bytes.push(isLast ? low : low | 0x80);
		if (isLast) return bytes;
	}
}

const text = (value: string) => vector([...new TextEncoder().encode(value)].map((byte) => [byte]));
const vector = (items: readonly (readonly number[])[]) => [
	...unsigned(items.length),
	...items.flat()
];
const section = (id: number, content: readonly number[]) => [
	id,
	...unsigned(content.length),
	...content
];

/**
 * A module that imports `env.memory` and exports the functions. The first `inTable` of them stand in its one table too,
 * under their numbers, and are all of the type of the first.
 */
export function moduleBytes(
	functions: readonly FunctionBody[],
	inTable: number
): Uint8Array<ArrayBuffer> {
	const types = functions.map(({ parameters, result }) => [
		0x60,
		...vector(parameters.map((type) => [type])),
		...vector([[result]])
	]);
	const memory = [...text('env'), ...text('memory'), 0x02, 0x00, ...unsigned(1)];
	const table = [0x70, 0x00, ...unsigned(inTable)];
	const exported = functions.map(({ name }, i) => [...text(name), 0x00, ...unsigned(i)]);
	const numbers = Array.from({ length: inTable }, (_, i) => unsigned(i));
	const elements = [0x00, 0x41, 0x00, 0x0b, ...vector(numbers)];
	const bodies = functions.map(({ locals, code }) => {
		const body = [...vector(locals.map((type) => [...unsigned(1), type])), ...code, 0x0b];
		return [...unsigned(body.length), ...body];
	});
	return Uint8Array.from([
		...[0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00],
		...section(1, vector(types)),
		...section(2, vector([memory])),
		...section(3, vector(functions.map((_, i) => unsigned(i)))),
		...section(4, vector([table])),
		...section(7, vector(exported)),
		...section(9, vector([elements])),
		...section(10, vector(bodies))
	]);
}
