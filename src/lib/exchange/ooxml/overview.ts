/** The first sheet: every quantity that is one value, side by side for all scenarios, read from their sheets. */
import type { Book } from '$lib/engine/cells/book';
import type { Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { staleHead } from '$lib/engine/stale-words';
import { at, type FileCell, type FileSheet, type StaleMarks } from './cell';
import { quoted } from './names';

const HEAD = 3;

export interface OverviewOf {
	readonly layout: Layout;
	readonly book: Book;
	readonly results: readonly Results[];
	readonly name: string;
	/** Of the scenarios' sheets, not quoted. */
	readonly sheetNames: readonly string[];
	readonly stale: StaleMarks | null;
}

export function overviewSheet({
	layout,
	book,
	results,
	name,
	sheetNames,
	stale
}: OverviewOf): FileSheet {
	const { workbook } = layout;
	const cells = new Map<string, FileCell>();
	const put = (row: number, column: number, cell: FileCell) => cells.set(at(row, column), cell);
	put(0, 0, { value: workbook.title, look: 'title' });
	put(0, 2, {
		value: workbook.invented ? 'Invented figures, for trying out.' : '',
		look: 'words'
	});
	const heads = ['Quantity', 'Unit', ...workbook.scenarios.map(({ title }) => title)];
	heads.forEach((value, column) => put(HEAD - 1, column, { value, look: 'head' }));
	workbook.scenarios.forEach(({ id }, scenario) => {
		const because = stale?.inScenario(id);
		if (because) put(1, 2 + scenario, { value: staleHead(because), look: 'words' });
	});

	let row = HEAD;
	let part = -1;
	for (const { quantity, sheet, base, count } of layout.quantities) {
		if (count !== 1 || typeof quantity.type === 'object') continue;
		if (sheet !== part) {
			part = sheet;
			put(row + 1, 0, { value: workbook.sheets[sheet]?.title ?? '', look: 'part' });
			row += 2;
		}
		put(row, 0, { value: quantity.label, look: 'label' });
		if (quantity.unit) put(row, 1, { value: quantity.unit, look: 'unit' });
		workbook.scenarios.forEach((_, scenario) => {
			const found = book.locate(scenario, base);
			if (!found) return;
			const { values, states } = results[scenario]!;
			const address = book.addressOn(found.sheet, found.place);
			put(row, 2 + scenario, {
				formula: `${quoted(sheetNames[found.sheet]!)}!${address}`,
				...(states[base] === OK && { value: values[base]! }),
				look: stale?.of(results[scenario]!.scenario, base) ? 'stale' : 'result',
				...(quantity.type === 'yes_no' && { yesNo: true })
			});
		});
		row++;
	}
	return { name, widths: [46, 14, ...workbook.scenarios.map(() => 18)], frozenRows: HEAD, cells };
}
