import type { Workbook } from './schema';

/** The results that the workbook itself puts first, in its order: the facts of its first screen and of its starting views. */
export function headlinesOf({ front, starts }: Workbook): string[] {
	const facts = [front?.facts, ...(starts ?? []).map((start) => start.facts)];
	return [...new Set(facts.flatMap((some) => some ?? []).map(({ quantity }) => quantity))];
}
