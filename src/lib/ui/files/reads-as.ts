/** How a column's first number is read, in words: "26,90 is 0.269 EUR/m". */
import type { Layout } from '$lib/engine/layout';
import type { Cell } from '$lib/exchange/table/grid';
import type { Mapping, ValueMeaning } from '$lib/exchange/table/mapping';
import { CellReader } from '$lib/exchange/table/read-cell';
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { formatUnit } from '../format';
import { asEntered, scalarWords } from '../scalar-words';
import { texts } from './texts';

/** Empty where there is nothing to read, or units stand in the rows. */
export function readAs(
	layout: Layout | null,
	{ quantity, columns }: Mapping,
	column: number,
	sample: Cell | undefined
): string {
	const now = columns[column];
	if (!layout || !now || sample === undefined || now.meaning.is !== 'value') return '';
	const place = layout.byName.get(now.meaning.quantity ?? quantity ?? '');
	if (!place || columns.some(({ meaning }) => meaning.is === 'unit')) return '';
	const read = new CellReader(layout).read(sample, place, now, '');
	if (!read.ok) return '';
	const unit = formatUnit(place.quantity.unit);
	const value = scalarWords(read.value, place.quantity, {
		nothing: texts.none,
		number: (number) => asEntered(number, 'en'),
		workbooks: [layout.workbook]
	});
	return texts.sampleIs(String(sample), [value, unit]);
}

/** The unit that holds where none is written. */
export const unitPlaceholder = (
	workbook: Workbook,
	mapping: Mapping,
	{ quantity }: ValueMeaning
): string => formatUnit(findQuantity(workbook, quantity ?? mapping.quantity ?? '')?.unit) || '1';
