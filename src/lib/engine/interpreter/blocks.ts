/**
 * Aggregates over a block of columns whose operands all have a value in it, where the calls of `kernels/` do not do
 * them whole. What gives no finite number in some column is left to the careful ways of `machine.ts`, which then do
 * the block again and find the reason. States of good results are the caller's to set.
 */
import { Op } from '$lib/engine/operations';
import { sumBlock } from './block-terms';
import { averageBlock, bestBlock, countBlock, endBlock, npvBlock } from './block-gathered';
import type { Kernels } from './kernels/kernels';
import type { Memory } from './memory';

/** Whether all results are good; false: look again. */
export function gatherBlock(
	kernels: Kernels,
	op: number,
	memory: Memory,
	to: number,
	count: number,
	terms: number
): boolean {
	switch (op) {
		case Op.Sum:
			return sumBlock(kernels, memory, to, count, terms);
		case Op.Average:
			return averageBlock(kernels, memory, to, count, terms);
		case Op.Count:
			return countBlock(memory, to, count, terms);
		case Op.ArgMin:
		case Op.ArgMax:
			return bestBlock(op, memory, to, count, terms);
		case Op.First:
		case Op.Last:
			return endBlock(op, memory, to, count, terms);
		case Op.Npv:
			return npvBlock(memory, to, count, terms);
		default:
			return false;
	}
}
