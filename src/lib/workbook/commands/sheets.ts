/** Adding, renaming, moving and removing sheets. */
import { canonicalSheet } from '../canonical';
import { sheetSchema, type Workbook } from '../schema';
import { edited, refused, type Edit, type SheetCommand } from './command';
import { inserted, listed, withEntry, without } from './lists';
import { usersOf, withoutUses } from './quantities';
import { shapeRefusal } from './refusal';

export function editSheet(workbook: Workbook, command: SheetCommand): Edit {
	if (command.kind === 'add_sheet') {
		const bad = shapeRefusal(sheetSchema, command.sheet, 'The new sheet');
		if (bad) return bad;
		return edited({
			...workbook,
			sheets: inserted(workbook.sheets, command.index, canonicalSheet(command.sheet))
		});
	}
	const sheet = workbook.sheets[command.sheet];
	if (!sheet)
		return refused(
			'unknown-sheet',
			`There is no sheet number ${command.sheet + 1}. Choose one of the workbook's.`
		);
	switch (command.kind) {
		case 'rename_sheet': {
			const { note, headline, ...rest } = sheet;
			const wanted = { note: command.note, headline: command.headline };
			const nextNote = wanted.note === undefined ? note : wanted.note;
			const nextHeadline = wanted.headline === undefined ? headline : wanted.headline;
			const next = {
				...rest,
				title: command.title,
				...(nextNote === undefined || nextNote === null ? {} : { note: nextNote }),
				...(nextHeadline === undefined || nextHeadline === null ? {} : { headline: nextHeadline })
			};
			const bad = shapeRefusal(sheetSchema, next, sheet.title);
			if (bad) return bad;
			return edited({ ...workbook, sheets: withEntry(workbook.sheets, command.sheet, next) });
		}
		case 'move_sheet':
			return edited({
				...workbook,
				sheets: inserted(without(workbook.sheets, command.sheet), command.index, sheet)
			});
		case 'remove_sheet': {
			const names = new Set(sheet.quantities.map(({ name }) => name));
			const users = usersOf(workbook, names);
			if (users.length > 0 && command.also !== true)
				return refused(
					'in-use',
					`Quantities of the sheet ${sheet.title} are used by ${listed(users)}. Change these first, or remove it anyway.`
				);
			const rest = { ...workbook, sheets: without(workbook.sheets, command.sheet) };
			return edited(withoutUses(rest, names));
		}
	}
}
