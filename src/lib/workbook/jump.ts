/**
 * By how much a number jumped where it doubled, halved or turned in sign, as a slip of a digit or a unit makes it: the new
 * one in the old. Null where it did not.
 */
export function jumpBetween(was: number, now: number): number | null {
	if (was === 0 || now === 0) return null;
	const ratio = now / was;
	return ratio >= 2 || ratio <= 0.5 ? ratio : null;
}
