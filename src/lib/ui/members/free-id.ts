/**
 * A name for a copy: L2 becomes the next free L with a number, PX15B becomes "PX15B 2".
 */
import type { SetDefinition } from '$lib/workbook/schema';

export function freeId(set: SetDefinition, like: string): string {
	const taken = new Set(set.members.map((member) => member.id));
	const counted = /^(\D+)(\d+)$/.exec(like);
	if (counted) {
		const [, stem = '', number = '0'] = counted;
		for (let next = Number(number) + 1; ; next++)
			if (!taken.has(`${stem}${next}`)) return `${stem}${next}`;
	}
	for (let next = 2; ; next++) if (!taken.has(`${like} ${next}`)) return `${like} ${next}`;
}
