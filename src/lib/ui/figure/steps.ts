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

/** Takes the focus to where a key leads from here, if something stands there; the focus then tells the table its new stop. */
export function stepFocus(
	event: KeyboardEvent,
	at: Stop,
	rows: number,
	columns: number,
	table: HTMLElement | undefined
): void {
	const next = stepped(at, event.key, rows, columns);
	const found =
		next && table?.querySelector<HTMLElement>(`[data-stop="${next.row} ${next.column}"]`);
	if (!found) return;
	event.preventDefault();
	found.focus();
}

/** In a field the keys that move in its text move there, once something was typed. */
export const movesInText = ({ target, key }: KeyboardEvent): boolean =>
	target instanceof HTMLInputElement &&
	target.value !== target.defaultValue &&
	!['ArrowUp', 'ArrowDown'].includes(key);
