/** Members of a long list found by what is typed: every word must occur in the name, the label or the note. */
import type { Member } from '$lib/workbook/schema';
import { plainWords } from '../find';

/** From so many members on a list is worth a search. */
export const WORTH_FINDING = 20;

export function foundMembers(members: readonly Member[], typed: string): readonly Member[] {
	const words = plainWords(typed);
	if (words.length === 0) return members;
	return members.filter(({ id, label = '', note = '' }) => {
		const text = plainWords(`${id} ${label} ${note}`).join(' ');
		return words.every((word) => text.includes(word));
	});
}
