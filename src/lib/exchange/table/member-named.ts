/** Members as files name them: by their ids or by their labels, in whatever case. */
import { memberPlaces } from '$lib/workbook/lookup';
import type { SetDefinition } from '$lib/workbook/schema';

/** The member of that name; null where there is none, or where several are called so. */
export function memberNamed(set: SetDefinition, text: string): string | null {
	if (memberPlaces(set).has(text)) return text;
	return namesOf(set).get(text.toLowerCase()) ?? null;
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
