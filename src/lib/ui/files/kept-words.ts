/** What a kept table holds, in a line: what its rows are about, and which quantities. */
import { axesOf } from '$lib/workbook/axes';
import { findQuantity, findRelation, findSet } from '$lib/workbook/lookup';
import type { KeptTable, Workbook } from '$lib/workbook/schema';
import { texts as logTexts } from './log-texts';
import { texts as pairTexts } from './pair-texts';
import { texts } from './texts';

const MOST = 4;

export function keptSummary(
	{ columns, quantity, log, pairs }: KeptTable,
	workbook: Workbook
): string {
	if (log)
		return logTexts.logHolds(
			log.sums.map((sum) => findQuantity(workbook, sum.quantity)?.label ?? sum.quantity)
		);

	if (pairs)
		return pairTexts.pairsOf(findRelation(workbook, pairs.relation)?.label ?? pairs.relation);

	const names = columns.flatMap((column) =>
		column.is === 'value' ? (column.quantity ?? quantity ?? []) : []
	);
	const axes = names.flatMap((name) => {
		const found = findQuantity(workbook, name);
		return found ? axesOf(found) : [];
	});
	/** A column may name members of something that nothing here is by. */
	const isUsed = (of: string) =>
		names.length === 0 || axes.some(({ name, set }) => name === of || set === of);
	const rows = columns.flatMap((column) =>
		column.is === 'member' && isUsed(column.of)
			? [(findSet(workbook, column.of)?.label ?? column.of).toLowerCase()]
			: []
	);
	const labels = [...new Set(names)].map((name) => findQuantity(workbook, name)?.label ?? name);
	return texts.matchesHold(rows, labels.slice(0, MOST), labels.length - MOST);
}
