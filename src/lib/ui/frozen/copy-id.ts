/** What formulas are to call a new frozen copy: from its title, and free of every name that means something already. */
import { quantityPlaces } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { idFrom } from '../scenarios/words';

export function copyId(workbook: Workbook, title: string): string {
	const taken = new Set([
		...quantityPlaces(workbook).keys(),
		...workbook.sets.flatMap(({ name, members }) => [name, ...members.map(({ id }) => id)]),
		...[...workbook.scenarios, ...(workbook.frozen ?? [])].map(({ id }) => id)
	]);
	return idFrom(title, taken, 'copy');
}
