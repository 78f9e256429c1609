/** Requirements as they stand under the plan: what is used, what is there, and who uses it. */
import { unitOfRow } from '../words';
import type { Room, Share } from './questions';
import { entriesOf, type Settled } from './settled';

/** Without requirements that no decision moves. */
export const roomsOf = (settled: Settled): Room[] =>
	settled.part.rows.flatMap((_, row) => roomOf(settled, row) ?? []);

export function roomOf({ model, part, stands }: Settled, row: number): Room | null {
	const entries = entriesOf(part, row);
	if (entries.length === 0) return null;
	const { rowLower, rowUpper } = part.programme;
	const [low, high] = [rowLower[row]!, rowUpper[row]!];
	const way = low === high ? 'equal' : high === Infinity ? 'least' : 'most';
	const bound = way === 'least' ? low : high;
	// What is required of a sum with a negative bound is said of the other side: "sold <= demand", not "−sold >= −demand".
	const turned = way !== 'equal' && bound < 0 ? -1 : 1;
	const shares: Share[] = [];
	let used = 0;
	let given = 0;
	for (const { column, factor } of entries) {
		const amount = turned * factor * stands[column]!;
		if (amount > 0) {
			used += amount;
			shares.push({ cell: part.cells[column]!, amount });
		} else given -= amount;
	}
	const { cell } = part.rows[row]!;
	return {
		cell,
		way: turned === 1 || way === 'equal' ? way : way === 'most' ? 'least' : 'most',
		used,
		there: turned * bound + given,
		unit: unitOfRow(model.plan, cell) ?? '',
		shares
	};
}
