/** Edits of the lists in a study's settings: one entry changed, added or taken out. */
export const changedAt = <T>(list: readonly T[], index: number, change: Partial<T>): T[] =>
	list.map((one, i) => (i === index ? { ...one, ...change } : one));

export const withoutAt = <T>(list: readonly T[], index: number): T[] =>
	list.filter((_, i) => i !== index);

/** A name that none of these has: "Input 3". */
export function freeLabel(taken: readonly string[], wanted: string): string {
	if (!taken.includes(wanted)) return wanted;
	for (let number = 2; ; number++)
		if (!taken.includes(`${wanted} ${number}`)) return `${wanted} ${number}`;
}
