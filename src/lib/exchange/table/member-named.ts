/** Members as files name them: by their ids or by their labels, in whatever case; dated months by any of their days too. */
import { memberPlaces } from '$lib/workbook/lookup';
import type { SetDefinition } from '$lib/workbook/schema';
import { datedMonth, isDatedMonths } from './dated-months';

/** The member of that name; null where there is none, or where several are called so. */
export function memberNamed(set: SetDefinition, text: string): string | null {
	if (memberPlaces(set).has(text)) return text;
	const named = namesOf(set).get(text.toLowerCase());
	if (named !== undefined) return named;
	const month = isDatedMonths(set) ? datedMonth(text) : null;
	return month !== null && memberPlaces(set).has(month) ? month : null;
}

const named = new WeakMap<SetDefinition, ReadonlyMap<string, string | null>>();
function namesOf(set: SetDefinition): ReadonlyMap<string, string | null> {
	const known = named.get(set);
	if (known) return known;
	const names = new Map<string, string | null>();
	for (const { id, label } of set.members)
		for (const name of new Set([id.toLowerCase(), (label ?? id).toLowerCase()]))
			names.set(name, names.has(name) ? null : id);
	named.set(set, names);
	return names;
}
