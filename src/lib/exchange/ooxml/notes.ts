/** The last sheet: what the file is, which scenarios it holds, and what each changes and why. */
import { findQuantity, scenarioTitle } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { at, type FileCell, type FileSheet } from './cell';

export function notesSheet(workbook: Workbook, name: string): FileSheet {
	const cells = new Map<string, FileCell>();
	let row = 0;
	const line = (texts: readonly string[], look: FileCell['look']) => {
		texts.forEach((value, column) => value && cells.set(at(row, column), { value, look }));
		row++;
	};
	line(['What this file is'], 'title');
	line(
		[
			'A workbook of Metrewright with live formulas. What is computed here recalculates; what is entered there is changed there.'
		],
		'words'
	);
	if (workbook.about) line([workbook.about], 'words');
	if (workbook.invented) line(['Its figures are invented.'], 'words');
	line(
		[
			'#N/A: no answer, or beyond the end of a row of members. #NULL!: an input that nobody entered. "absent": a member that is not there in this scenario. Other errors are faults; the app says whose.'
		],
		'words'
	);
	row++;
	line(['Scenario', 'Changes', 'Values', 'Note'], 'head');
	for (const { title, parent, note, changes } of workbook.scenarios) {
		const over = parent === null ? '' : `over ${scenarioTitle(workbook, parent)}`;
		line([title, over, '', note ?? ''], 'part');
		for (const change of changes)
			line(
				[
					'',
					findQuantity(workbook, change.quantity)?.label ?? change.quantity,
					String(countOf(change.value)),
					change.note ?? ''
				],
				'words'
			);
	}
	return { name, widths: [34, 44, 10, 80], frozenRows: 0, cells };
}

function countOf(value: unknown): number {
	if (typeof value !== 'object' || value === null) return 1;
	return Object.values(value).reduce<number>((sum, inner) => sum + countOf(inner), 0);
}
