/**
 * Months as members of a set that is marked as time: written as ISO 8601 writes year and month, "2027-04". Words and
 * arithmetic of them alone; no clock.
 */
const WRITTEN = /^(\d{4})-(0[1-9]|1[0-2])$/;

/** Months since January of year 0; null where the id is no month. */
export function monthNumber(id: string): number | null {
	const found = WRITTEN.exec(id);
	return found ? Number(found[1]) * 12 + Number(found[2]) - 1 : null;
}

/** The id of so many months since January of year 0. */
export const monthId = (number: number): string =>
	`${String(Math.floor(number / 12)).padStart(4, '0')}-${String((number % 12) + 1).padStart(2, '0')}`;
