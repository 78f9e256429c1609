/** A sheet as its form has it, and the command that keeps it. */
import type { Command } from '$lib/workbook/commands';
import type { Sheet, Workbook } from '$lib/workbook/schema';
import { texts } from './texts';

export interface SheetDraft {
	readonly title: string;
	readonly note: string;
	/** Name of the quantity beside its title in the contents; '' for none. */
	readonly headline: string;
}

export const draftOf = (sheet: Sheet | null): SheetDraft => ({
	title: sheet?.title ?? '',
	note: sheet?.note ?? '',
	headline: sheet?.headline ?? ''
});

/** At `place`; null: a new sheet, after the others. A string says what is wrong. */
export function keepSheet(
	{ sheets }: Workbook,
	place: number | null,
	draft: SheetDraft
): Command | string {
	const title = draft.title.trim();
	const note = draft.note.trim();
	if (title === '') return texts.missing;
	// Two of one title could not be told apart in the contents.
	if (sheets.some((sheet, i) => i !== place && sheet.title === title)) return texts.taken(title);
	if (place === null)
		return {
			kind: 'add_sheet',
			index: sheets.length,
			sheet: { title, ...(note && { note }), quantities: [] }
		};
	const headline = draft.headline || null;
	return { kind: 'rename_sheet', sheet: place, title, note: note || null, headline };
}
