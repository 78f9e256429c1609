/** A list of prices as a paper: every cell as it stands on screen, the rule by which it was rounded on the list itself. */
import { language } from '$lib/ui/language';
import { paragraph, type Paper } from './paper';

export interface PriceListShown {
	readonly title: string;
	/** Whose terms, which margin, which day: a line each. */
	readonly facts: readonly string[];
	readonly caption: string;
	/** The first names the goods; all others are numbers. */
	readonly columns: readonly string[];
	readonly rows: readonly (readonly string[])[];
	/** How prices were rounded. */
	readonly rule: string;
}

export function priceListPaper({
	title,
	facts,
	caption,
	columns,
	rows,
	rule
}: PriceListShown): Paper {
	return {
		...{ title, language, landscape: columns.length > 6 },
		blocks: [
			...facts.map((text) => paragraph(text)),
			{
				kind: 'table',
				caption,
				columns: columns.map((column, i) =>
					i === 0 ? { title: column } : { title: column, isNumber: true }
				),
				rows: rows.map((cells) => ({ cells })),
				note: rule
			}
		]
	};
}
