/** With `read.ts` the only module that knows the library which packs sheets into a file. */
import { writeXlsx, type CellStyle, type WriteSheet } from 'hucre/xlsx';
import type { FileCell, FileSheet, Look } from './cell';

const LINE = { style: 'thin', color: { rgb: '8A9096' } } as const;
const QUIET = { color: { rgb: '5E666D' } };

const LOOKS: Readonly<Record<Look, CellStyle>> = {
	title: { font: { bold: true, size: 15 } },
	words: { font: QUIET },
	head: { font: { bold: true }, border: { bottom: LINE } },
	part: { font: { bold: true, size: 12 } },
	label: {},
	input: { border: { top: LINE, bottom: LINE, left: LINE, right: LINE } },
	changed: {
		border: { top: LINE, bottom: LINE, right: LINE, left: { ...LINE, style: 'thick' } },
		font: { bold: true }
	},
	result: {},
	unit: { font: QUIET },
	helper: { font: QUIET },
	stale: { font: { ...QUIET, italic: true } }
};

const YES_NO = '[=1]"yes";[=0]"no";General';

const styles = new Map<string, CellStyle>();

function styleOf({ look, yesNo }: FileCell): CellStyle {
	const key = `${look} ${yesNo ?? false}`;
	let style = styles.get(key);
	if (!style) {
		style = yesNo ? { ...LOOKS[look], numFmt: YES_NO } : LOOKS[look];
		styles.set(key, style);
	}
	return style;
}

/** The bytes of the file. */
export function writeFile(sheets: readonly FileSheet[], title: string): Promise<Uint8Array> {
	return writeXlsx({ sheets: sheets.map(sheetFor), properties: { title } });
}

function sheetFor({ name, widths, folded, frozenRows, cells }: FileSheet): WriteSheet {
	const written: NonNullable<WriteSheet['cells']> = new Map();
	for (const [key, cell] of cells) {
		const { value = null, formula } = cell;
		written.set(key, {
			style: styleOf(cell),
			...(formula === undefined
				? { value, type: typeof value === 'number' ? 'number' : 'string' }
				: {
						value: null,
						type: 'formula',
						formula,
						...(value !== null && { formulaResult: value })
					})
		});
	}
	const columns: NonNullable<WriteSheet['columns']> = widths.map((width) => ({ width }));
	if (folded)
		for (let column = folded[0]; column <= folded[1]; column++)
			columns[column] = { width: 12, outlineLevel: 1, hidden: true, collapsed: true };
	return {
		name,
		columns,
		cells: written,
		...(frozenRows > 0 && { freezePane: { rows: frozenRows } })
	};
}
