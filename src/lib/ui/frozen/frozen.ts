/** What the page says of a frozen copy: what of it is no longer in the workbook, and all its values as a table. */
import { frozenColumn } from '$lib/engine/frozen';
import type { Layout } from '$lib/engine/layout';
import { ABSENT } from '$lib/engine/state';
import { MEMBER_MARK } from '$lib/exchange/csv/sheet';
import type { PlainTable } from '$lib/exchange/csv/write';
import type { Frozen, FrozenQuantity } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { texts } from './texts';

/** Quantities of which no value can be read today: they are gone, or have another unit or other sets. */
export function goneSince(layout: Layout, copy: Frozen): readonly FrozenQuantity[] {
	const { states } = frozenColumn(layout, copy);
	return copy.quantities.filter(({ name }) => {
		const place = layout.byName.get(name);
		if (!place) return true;
		return states.subarray(place.base, place.base + place.count).every((state) => state === ABSENT);
	});
}

/** Every value that a copy holds, under the names that it has there. */
export const frozenTable = (copy: Frozen): PlainTable => ({
	caption: copy.title,
	columns: texts.columns,
	rows: copy.quantities.flatMap(({ name, label, unit, formula, value }) =>
		flatten(value).map(({ at, value: scalar }) => [
			...[name, label, at.join(MEMBER_MARK), unit ?? '', formula ?? ''],
			typeof scalar === 'boolean' ? (scalar ? 'yes' : 'no') : scalar
		])
	)
});
