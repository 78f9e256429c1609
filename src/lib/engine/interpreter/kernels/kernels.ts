/**
 * Fixed loops in WebAssembly for blocks of columns whose operands all have a value. They are the same for every
 * workbook. Where a program has no WebAssembly with vectors, or a policy forbids it, there are none, and the machine
 * goes column by column: slower, and to the same results.
 */
import { loopBytes } from './loops';

/**
 * Addresses: where the results start and end, then the operands. 0: some result is not good, look again; 1: all
 * are.
 */
export type Kernel = (to: number, end: number, a?: number, b?: number, c?: number) => number;
/** By whether the term is wide or narrow. */
export type ByTerm = readonly [w: Kernel, n: Kernel];

/** The loops that are called one by one; `turns` runs a list of them. */
export interface Kernels {
	/** The first turn left undone; the end when all is done. */
	readonly turns: (at: number, end: number, bytes: number) => number;
	/** Into what stands there: a term; a term and the wide filter that keeps it. */
	readonly addTo: ByTerm;
	readonly addToIf: ByTerm;
}

/** Columns that the loops take at a time. */
export const STRIDE = 4;
const PAGE = 65_536;

/** Compiled at first use; null where it cannot be. */
let compiled: WebAssembly.Module | null | undefined;

/** Room for so many bytes with the loops that work on it, or null where there are none. */
export function openKernels(
	bytes: number
): { readonly buffer: ArrayBuffer; readonly kernels: Kernels } | null {
	compiled ??= compile();
	if (!compiled) return null;
	const pages = Math.ceil(bytes / PAGE);
	const memory = new WebAssembly.Memory({ initial: pages, maximum: pages });
	const { exports } = new WebAssembly.Instance(compiled, { env: { memory } });
	return { buffer: memory.buffer, kernels: kernelsOf(exports as Record<string, Kernel>) };
}

function compile(): WebAssembly.Module | null {
	if (typeof WebAssembly === 'undefined') return null;
	try {
		return new WebAssembly.Module(loopBytes());
	} catch {
		// No vectors here, or a policy that forbids it.
		return null;
	}
}

function kernelsOf(loops: Readonly<Record<string, Kernel>>): Kernels {
	const byTerm = (name: string): ByTerm => [loops[`${name}_w`]!, loops[`${name}_n`]!];
	const filtered = (name: string): ByTerm => [loops[`${name}_ww`]!, loops[`${name}_nw`]!];
	return {
		turns: loops.turns as Kernels['turns'],
		addTo: byTerm('addTo'),
		addToIf: filtered('addToIf')
	};
}
