/** One entered scalar as the engines carry it: a number, yes and no as 1 and 0, a member as its place in its set. */
import type { Scalar } from '$lib/workbook/schema';

/** The number that an entry stands for; undefined where it stands for none. */
export function numberOf(
	scalar: Scalar | undefined,
	ordinals: ReadonlyMap<string, number> | undefined
): number | undefined {
	if (typeof scalar === 'number') return Number.isFinite(scalar) ? scalar : undefined;
	if (typeof scalar === 'boolean') return scalar ? 1 : 0;
	return typeof scalar === 'string' ? ordinals?.get(scalar) : undefined;
}
