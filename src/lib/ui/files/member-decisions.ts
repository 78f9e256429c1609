/** What can be decided of a name that the workbook has not, as a list to choose from, and back. */
import type { UnknownMember } from '$lib/exchange/table/import-table';
import type { Decision } from '$lib/exchange/table/new-members';
import { nearest } from '$lib/formula/names';
import { findSet } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { ListOption } from '../choose/options';
import { texts } from './texts';

export const decisionText = (decision: Decision): string => JSON.stringify(decision);
export const decisionOf = (text: string): Decision => JSON.parse(text) as Decision;

export const asNew = (like: string | null, label: string): Decision => ({
	as: 'new',
	like,
	...(label && { label })
});

/** The member whose name is nearest stands first among those that it may be. */
export function decisionOptions(
	workbook: Workbook,
	{ set, text, label }: Pick<UnknownMember, 'set' | 'text' | 'label'>
): ListOption[] {
	const ids = findSet(workbook, set)?.members.map(({ id }) => id) ?? [];
	const near = nearest(text, ids);
	const ordered = near === undefined ? ids : [near, ...ids.filter((id) => id !== near)];
	const option = (decision: Decision, words: string, group?: string): ListOption => ({
		value: decisionText(decision),
		text: words,
		...(group !== undefined && { group })
	});
	return [
		option({ as: 'left_out' }, texts.leftOut),
		option(asNew(null, label), texts.addEmpty),
		...ordered.map((id) => option(asNew(id, label), texts.addLike(id), texts.asACopy)),
		...ordered.map((from) => option({ as: 'renamed', from }, texts.newNameOf(from), texts.aNewName))
	];
}
