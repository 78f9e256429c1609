/** What the table of items says: how many there are, and between what its last column lies. */
import { figureText, type ItemRow, type Items } from './items';
import { texts } from './texts';

export const itemsTitle = (subject: string, rows: readonly ItemRow[]): string =>
	texts.soldAs(subject, rows.length);

/** The least and the greatest of the last column, with whose they are; empty where there are not two. */
export function itemsLine(items: Items, rows: readonly ItemRow[], locale: string): string {
	const last = items.columns.length - 1;
	const known = rows
		.filter(({ readings }) => readings[last]?.kind === 'value')
		.toSorted((a, b) => a.readings[last]!.value - b.readings[last]!.value);
	const [least, most] = [known[0], known.at(-1)];
	const { label, unit } = items.columns[last]!;
	if (!least || !most || least === most) return '';
	const said = (row: ItemRow) => ({ id: row.id, value: figureText(items, row, last, locale) });
	return texts.between(label, said(least), said(most), unit);
}

export const itemsSummary = (items: Items, rows: readonly ItemRow[], locale: string): string =>
	rows
		.map((row) =>
			texts.rowInWords(
				row.label || row.id,
				items.columns.map(({ label, unit }, i) =>
					[`${label} ${figureText(items, row, i, locale)}`, unit].filter(Boolean).join(' ')
				)
			)
		)
		.join(' ');
