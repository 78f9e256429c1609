/**
 * Kept tables: titles that differ. That what a column means exists is not asked here: a table outlives it, and whoever
 * uses it is told, see `exchange/table/kept.ts`.
 */
import type { Findings } from './findings';

export function checkTables(findings: Findings): void {
	const seen = new Set<string>();
	(findings.workbook.tables ?? []).forEach(({ title }, i) => {
		if (seen.has(title))
			findings.add(
				['tables', i, 'title'],
				'duplicate-table',
				`there are two tables kept as ${title}`,
				'Give one of them another name.'
			);
		seen.add(title);
	});
}
