/**
 * One stop for the Tab key in a table of figures; arrow keys, Home and End go from one to the next.
 */
export interface Stop {
	readonly row: number;
	readonly column: number;
}

/** Where a key leads from here; null for a key that leads nowhere. */
export function stepped(at: Stop, key: string, rows: number, columns: number): Stop | null {
	const clamp = (value: number, count: number) => Math.max(0, Math.min(count - 1, value));
	const to = (row: number, column: number) => ({
		row: clamp(row, rows),
		column: clamp(column, columns)
	});
	switch (key) {
		case 'ArrowDown':
			return to(at.row + 1, at.column);
		case 'ArrowUp':
			return to(at.row - 1, at.column);
		case 'ArrowRight':
			return to(at.row, at.column + 1);
		case 'ArrowLeft':
			return to(at.row, at.column - 1);
		case 'Home':
			return to(at.row, 0);
		case 'End':
			return to(at.row, columns - 1);
		default:
			return null;
	}
}
