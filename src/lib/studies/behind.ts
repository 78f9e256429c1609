/** What a result is computed from, by name: quantities, and the programmes that decide some of them. */
import { axesOf } from '$lib/workbook/axes';
import { formulasOf, mentionsIn } from '$lib/workbook/formula-names';
import { findQuantity, findSet } from '$lib/workbook/lookup';
import { activeProgrammes, shadowQuantities } from '$lib/workbook/plans';
import type { Programme } from '$lib/workbook/programme-schema';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { resultsOf } from '$lib/workbook/study-gaps';
import type { Study } from '$lib/workbook/study-schema';

/** Whether anything that a study asks about is decided by a programme, or computed from what is. */
export function restsOnProgramme(workbook: Workbook, study: Study): boolean {
	if (activeProgrammes(workbook).length === 0) return false;
	const results = resultsOf(study).map(({ quantity }) => quantity);
	const names = new Set(behind(workbook, results).map(({ name }) => name));
	return programmesBehind(workbook, names).length > 0;
}

/** The quantities that these are computed from, these included, in the order of the sheets. */
export function behind(workbook: Workbook, results: readonly string[]): Quantity[] {
	const found = new Set<string>();
	const waiting = [...results];
	for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
		if (found.has(name)) continue;
		const quantity = findQuantity(workbook, name);
		if (!quantity) continue;
		found.add(name);
		waiting.push(...deciding(workbook, name));
		for (const mention of namesIn(quantity)) {
			waiting.push(mention);
			const present = findSet(workbook, mention)?.present;
			if (present !== undefined) waiting.push(present);
		}
		for (const { set } of axesOf(quantity)) {
			const present = findSet(workbook, set)?.present;
			if (present !== undefined) waiting.push(present);
		}
	}
	return workbook.sheets
		.flatMap(({ quantities }) => quantities)
		.filter(({ name }) => found.has(name));
}

/** What a programme that fills a quantity is derived from. */
const deciding = (workbook: Workbook, name: string): string[] =>
	programmesBehind(workbook, new Set([name])).flatMap(
		({ maximise, minimise, decisions, constraints }) => [
			...[maximise ?? minimise ?? []].flat(),
			...decisions,
			...constraints
		]
	);

export const programmesBehind = (workbook: Workbook, names: ReadonlySet<string>): Programme[] =>
	activeProgrammes(workbook).filter((programme) =>
		[...programme.decisions, ...shadowQuantities(programme)].some((name) => names.has(name))
	);

const known = new WeakMap<Quantity, readonly string[]>();

/** The names in the formulas of a quantity; each quantity is read once, for every edit asks again. */
export function namesIn(quantity: Quantity): readonly string[] {
	const found =
		known.get(quantity) ??
		formulasOf(quantity).flatMap((text) => mentionsIn(text).map(({ name }) => name));
	known.set(quantity, found);
	return found;
}
