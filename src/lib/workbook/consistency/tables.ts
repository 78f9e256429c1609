/**
 * Kept tables: titles that differ. That what a column means exists is not asked here: a table outlives it, and whoever
 * uses it is told, see `exchange/table/kept.ts`.
 */
import type { Findings } from './findings';

export function checkTables(findings: Findings): void {
	const seen = new Set<string>();
	(findings.workbook.tables ?? []).forEach(({ title, columns, log, pairs }, i) => {
		if (seen.has(title))
			findings.add(
				['tables', i, 'title'],
				'duplicate-table',
				`there are two tables kept as ${title}`,
				'Give one of them another name.'
			);
		seen.add(title);
		const places = [log?.only, ...(log?.sums ?? [])].flatMap((one) =>
			one ? [one.column, 'by_column' in one ? one.by_column : undefined] : []
		);
		const missing = places.find((place) => place !== undefined && place >= columns.length);
		if (missing !== undefined)
			findings.add(
				['tables', i, 'log'],
				'no-column',
				`the log kept as ${title} sums column ${missing}, and the table has ${columns.length}`,
				'Name one of its columns by its place, from 0.'
			);
		const named = [pairs?.first, pairs?.second, pairs?.mark].flatMap((place) => place ?? []);
		const beyond = named.find((place) => place >= columns.length);
		if (beyond !== undefined)
			findings.add(
				['tables', i, 'pairs'],
				'no-column',
				`the pairs kept as ${title} stand in column ${beyond}, and the table has ${columns.length}`,
				'Name one of its columns by its place, from 0.'
			);
	});
}
