/** What a member is called where a value is shown. */
import { kept } from '$lib/workbook/kept';
import type { Member, SetDefinition } from '$lib/workbook/schema';

/** The longest label that a column has room for. */
export const ROOM = 21;
const isShort = kept((set: SetDefinition) =>
	set.members.every((each) => (each.label ?? each.id).length <= ROOM)
);

/**
 * By its label in a set whose labels are all short, else by its id: the trade says 5x24, and DN20. An id of several
 * words is the workbook's own, which no screen shows where there is a label.
 */
export function memberName(set: SetDefinition, { id, label }: Member): string {
	return (isShort(set) || id.includes('_') ? label : undefined) || id;
}

/** As much of it as a column has room for, whole words of it. */
export function cutToRoom(name: string): string {
	if (name.length <= ROOM) return name;
	const words = name.slice(0, ROOM).replace(/[\s,;:]+\S*$/, '');
	return `${words}…`;
}
