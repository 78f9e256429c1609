/**
 * Scenarios in words: on what one stands, and how much it changes.
 */
import { findFrozen } from '$lib/workbook/frozen';
import { countChanges } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';

/** "as entered" for the base; "on base, 4 changes" for another; of a frozen copy, its day and what it was made of. */
export function fingerprintOf(workbook: Workbook, id: string): string {
	const copy = findFrozen(workbook, id);
	if (copy) return `frozen ${copy.date}, of ${copy.of}`;
	const scenario = workbook.scenarios.find((scenario) => scenario.id === id);
	if (!scenario || scenario.parent === null) return 'as entered';
	const parent = workbook.scenarios.find((one) => one.id === scenario.parent);
	const on = parent && parent.parent !== null ? parent.title : 'base';
	const count = countChanges(workbook, id);
	const changes = count === 0 ? 'no changes' : count === 1 ? '1 change' : `${count} changes`;
	return `on ${on}, ${changes}`;
}

/** A title that no scenario has yet: "Weekend crews 2". */
export function freeTitle(workbook: Workbook, wanted: string): string {
	const taken = new Set(workbook.scenarios.map((scenario) => scenario.title.toLowerCase()));
	if (!taken.has(wanted.toLowerCase())) return wanted;
	for (let number = 2; ; number++)
		if (!taken.has(`${wanted} ${number}`.toLowerCase())) return `${wanted} ${number}`;
}

/** An id from words, free among those taken: "A weekend crew" gives a_weekend_crew. */
export function idFrom(words: string, taken: ReadonlySet<string>, otherwise: string): string {
	const plain = words
		.normalize('NFKD')
		.replace(/\p{M}/gu, '')
		.toLowerCase()
		.replace(/[^\p{L}\p{N}]+/gu, '_')
		.replace(/^[^\p{L}]+|_+$/gu, '')
		.slice(0, 48);
	const stem = plain || otherwise;
	if (!taken.has(stem)) return stem;
	for (let number = 2; ; number++) if (!taken.has(`${stem}_${number}`)) return `${stem}_${number}`;
}
