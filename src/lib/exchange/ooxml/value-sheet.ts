/**
 * The sheet of one scenario: the base's holds every value, another's what its changes reach. Inputs are numbers to be
 * overwritten, results are formulas that recalculate.
 */
import type { Book } from '$lib/engine/cells/book';
import { ROWS, type Content } from '$lib/engine/cells/grid';
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { staleHead, STALE_WORDS } from '$lib/engine/stale-words';
import { OK } from '$lib/engine/state';
import type { Scenario } from '$lib/workbook/schema';
import {
	BLOCK,
	FORMULA,
	HEAD,
	LABEL,
	MEMBERS,
	NOTE,
	opensSheet,
	spotOf,
	UNIT,
	VALUE,
	type Spot
} from './arrangement';
import { at, type FileCell, type FileSheet, type Look, type StaleMarks } from './cell';
import { fileFormula, textLiteral } from './texts';

/** A choice among more members than this shows its place in the set alone. */
const MOST_NAMED = 200;

export interface SheetOf {
	readonly layout: Layout;
	readonly book: Book;
	/** Its place among the book's sources, and what was computed for it. */
	readonly place: number;
	readonly scenario: Scenario;
	readonly results: Results;
	readonly name: string;
	readonly isBase: boolean;
	readonly stale: StaleMarks | null;
}

export function valueSheet(of: SheetOf): FileSheet {
	const { layout, book, place, scenario, isBase } = of;
	const cells = new Map<string, FileCell>();
	const put = (row: number, column: number, cell: FileCell) => cells.set(at(row, column), cell);
	const blocks = book.valueColumnsOf(place);

	put(0, 0, { value: `${layout.workbook.title}: ${scenario.title}`, look: 'title' });
	const because = of.stale?.inScenario(scenario.id);
	const how = [because && staleHead(because), howToRead(isBase)].filter(Boolean).join(' ');
	put(1, 0, { value: how, look: 'words' });
	const heads = ['Quantity', 'For', 'Value', 'Unit', 'Formula', 'Note'];
	for (let block = 0; block < blocks; block++)
		heads.forEach((value, i) => put(HEAD - 1, block * BLOCK + i, { value, look: 'head' }));

	const { grid } = book.write(place);
	const seen = new Set<number>();
	for (const { cell, place: where } of book.cellsOf(place)) {
		const spot = spotOf(where, blocks);
		const content = grid.at(where);
		if (cell >= layout.cells) {
			put(spot.row, spot.column, contentCell(content, null, 'helper'));
			continue;
		}
		const quantity = layout.quantities[layout.quantityOfCell[cell]!]!;
		const first = !seen.has(quantity.index);
		seen.add(quantity.index);
		writeRow(of, put, { cell, spot, content, quantity, first });
	}
	const helpers = writeHelpers(put, grid.columns, blocks);
	return {
		name: of.name,
		widths: Array.from({ length: blocks }, () => [44, 24, 16, 12, 60, 60, 3]).flat(),
		...(helpers > 0 && { folded: [blocks * BLOCK, blocks * BLOCK + helpers - 1] as const }),
		frozenRows: HEAD,
		cells
	};
}

type Put = (row: number, column: number, cell: FileCell) => void;

interface Row {
	readonly cell: number;
	readonly spot: Spot;
	readonly content: Content;
	readonly quantity: QuantityLayout;
	/** Whether it is the first of its quantity on this sheet. */
	readonly first: boolean;
}

function writeRow(of: SheetOf, put: Put, { cell, spot, content, quantity, first }: Row): void {
	const { layout, results } = of;
	const definition = quantity.quantity;
	const left = spot.column - VALUE;
	if (first && opensSheet(layout, quantity.index))
		put(spot.row - 1, left, {
			value: layout.workbook.sheets[quantity.sheet]?.title ?? '',
			look: 'part'
		});
	put(spot.row, left + LABEL, { value: definition.label, look: 'label' });
	const members = membersAt(layout, quantity, cell);
	if (members) put(spot.row, left + MEMBERS, { value: members, look: 'label' });

	const cached = results.states[cell] === OK ? results.values[cell]! : null;
	const entered = definition.formula === undefined || typeof content !== 'string';
	const because = of.stale?.of(of.scenario.id, cell) ?? null;
	const result = because ? 'stale' : 'result';
	const look: Look = !entered ? result : of.isBase ? 'input' : 'changed';
	put(spot.row, spot.column, {
		...contentCell(content, cached, look),
		...(definition.type === 'yes_no' && { yesNo: true })
	});

	const unit = left + UNIT;
	const names = choiceNames(layout, quantity);
	if (names) {
		const chosen = cached === null ? null : (names[cached] ?? null);
		const here = of.book.addressOn(of.place, of.book.locate(of.place, cell)!.place);
		put(spot.row, unit, {
			value: chosen,
			formula: `CHOOSE(${here}+1,${names.map(textLiteral).join(',')})`,
			look: 'unit'
		});
	} else if (definition.unit) put(spot.row, unit, { value: definition.unit, look: 'unit' });
	if (because)
		put(spot.row, left + NOTE, { value: `Out of date: ${STALE_WORDS[because]}.`, look: 'words' });
	if (!first) return;
	const words = formulaWords(quantity);
	if (words) put(spot.row, left + FORMULA, { value: words, look: 'words' });
	const note = [
		because && `Out of date: ${STALE_WORDS[because]}.`,
		definition.note,
		definition.source && `Source: ${definition.source}`
	]
		.filter(Boolean)
		.join(' ');
	if (note) put(spot.row, left + NOTE, { value: note, look: 'words' });
}

/** What is needed besides: parts of long formulas, without a name. Returns how many columns they take. */
function writeHelpers(put: Put, columns: readonly Content[][], blocks: number): number {
	for (let column = blocks; column < columns.length; column++)
		columns[column]!.forEach((content, row) => {
			if (content === null) return;
			const spot = spotOf(column * ROWS + row, blocks);
			put(spot.row, spot.column, contentCell(content, null, 'helper'));
		});
	const helpers = columns.length - blocks;
	if (helpers > 0) put(HEAD - 1, blocks * BLOCK, { value: 'Parts of long formulas', look: 'head' });
	return helpers;
}

function contentCell(content: Content, cached: number | null, look: Look): FileCell {
	if (typeof content !== 'string') return { value: content, look };
	return { formula: fileFormula(content), ...(cached !== null && { value: cached }), look };
}

export function membersAt(layout: Layout, quantity: QuantityLayout, cell: number): string {
	const { axes, base, members } = quantity;
	return axes
		.map((axis, i) => {
			const ordinal = members[(cell - base) * axes.length + i]!;
			return layout.sets.get(axis.set)?.members[ordinal]?.id ?? '';
		})
		.join(', ');
}

/** The members that a choice is among, by name; null for no choice, or one among too many. */
function choiceNames(layout: Layout, { quantity }: QuantityLayout): readonly string[] | null {
	if (typeof quantity.type !== 'object') return null;
	const members = layout.sets.get(quantity.type.member_of)?.members ?? [];
	if (members.length === 0 || members.length > MOST_NAMED) return null;
	const names = members.map(({ id, label }) => label ?? id);
	return names.every((name) => name.length <= 255) && names.join('').length < 6000 ? names : null;
}

/** The formula as people write it here. */
function formulaWords({ quantity }: QuantityLayout): string | null {
	const { formula } = quantity;
	if (formula === undefined) return null;
	if (typeof formula === 'string') return formula;
	return Object.entries(formula.cases)
		.map(([member, text]) => `${member}: ${text}`)
		.join(' | ');
}

const howToRead = (isBase: boolean) =>
	isBase
		? 'Boxed values are inputs: overwrite them and the rest follows. Values stand in the unit beside them; columns to the right hold parts of long formulas.'
		: 'Only what this scenario changes (marked) and what follows from it; everything else is read from the sheet of its parent.';
