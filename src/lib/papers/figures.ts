/** Parts of a paper that show figures: a row a figure and a column a scenario, or a row a member and a column a figure. */
import type { QuantityLayout } from '$lib/engine/layout';
import { listed } from '$lib/ui/figure/words';
import { memberName } from '$lib/ui/member-name';
import type { PaperSection } from '$lib/workbook/paper-schema';
import {
	cellOf,
	cellWords,
	isNumber,
	membersWords,
	saysNothing,
	titleWithUnit
} from './cell-words';
import { chosen, sidesOf, type Making, type Side } from './making';
import type { Block, Row, Table } from './paper';
import { texts } from './texts';

/** Rows of one figure; more are counted and left out. */
const MOST_ROWS = 60;

const quantitiesOf = ({ open }: Making, { quantities = [] }: PaperSection): QuantityLayout[] =>
	quantities.flatMap((name) => open.layout.byName.get(name) ?? []);

/** Members of which no scenario has anything are left out. */
const cellsSaid = ({ base, count, axes }: QuantityLayout, sides: readonly Side[]): number[] =>
	Array.from({ length: count }, (_, i) => base + i).filter(
		(cell) => axes.length === 0 || !sides.every((side) => saysNothing(side, cell))
	);

export function figuresPart(making: Making, section: PaperSection): Block[] {
	const sides = sidesOf(making);
	const rows: Row[] = [];
	for (const quantity of quantitiesOf(making, section)) {
		const cells = cellsSaid(quantity, sides);
		const title = titleWithUnit(quantity);
		const texted = (cell: number, name: string): Row => ({
			cells: [name, ...sides.map((side) => cellWords(making, side, quantity, cell))]
		});
		if (quantity.axes.length === 0) {
			rows.push(...cells.map((cell) => texted(cell, title)));
			continue;
		}
		if (cells.length === 0) continue;
		rows.push({ kind: 'group', cells: [title] });
		rows.push(
			...cells.slice(0, MOST_ROWS).map((cell) => texted(cell, membersWords(making, quantity, cell)))
		);
		if (cells.length > MOST_ROWS)
			rows.push({ cells: [texts.more(cells.length - MOST_ROWS), ...sides.map(() => '')] });
	}
	if (rows.length === 0) return [{ kind: 'paragraph', text: texts.nothingHere }];
	return [
		{
			kind: 'table',
			caption: listed(sides.map(({ title }) => title)),
			columns: [
				{ title: texts.figure },
				...sides.map(({ title }) => ({ title, isNumber: true as const }))
			],
			rows
		}
	];
}

/** One table a scenario: years, products or whatever the set has, with the figures beside each. */
export function tablePart(making: Making, section: PaperSection): Block[] {
	const set = making.open.layout.sets.get(section.set ?? '');
	if (!set) return [{ kind: 'paragraph', text: texts.noSet(section.set ?? ''), weight: 'caution' }];
	const columns = quantitiesOf(making, section).flatMap((quantity) =>
		columnsOf(making, quantity, set.name)
	);
	// Columns that are parts of one figure bear the names of the parts alone.
	const parted = new Set(
		columns.filter(({ at }) => Object.keys(at).length > 0).map(({ quantity }) => quantity)
	);
	const partsNote = [...parted]
		.map((quantity) =>
			texts.partsOf(
				titleWithUnit(quantity),
				columns.filter((one) => one.quantity === quantity).map(({ title }) => title)
			)
		)
		.join(' ');
	const tables = chosen(making).map((side): Table => {
		const rows = set.members.flatMap((member, ordinal): Row[] => {
			const cells = columns.map(({ quantity, at }) =>
				cellOf(quantity, { ...at, [set.name]: ordinal })
			);
			if (cells.every((cell) => cell < 0 || saysNothing(side, cell))) return [];
			return [
				{
					cells: [
						memberName(set, member),
						...columns.map(({ quantity }, i) =>
							cells[i]! < 0 ? '' : cellWords(making, side, quantity, cells[i]!)
						)
					]
				}
			];
		});
		return {
			kind: 'table',
			caption:
				making.open.layout.workbook.scenarios.length > 1
					? texts.inScenario(section.title, side.title)
					: section.title,
			columns: [
				{ title: set.label },
				...columns.map(({ title, quantity }) => ({ title, isNumber: isNumber(quantity) }))
			],
			rows,
			...(partsNote && { note: partsNote })
		};
	});
	return tables.map((table) =>
		table.rows.length > 0 ? table : { kind: 'paragraph', text: texts.nothingIn(table.caption) }
	);
}

interface TableColumn {
	readonly title: string;
	readonly quantity: QuantityLayout;
	readonly at: Readonly<Record<string, number>>;
}

/** A figure is a column; one that is per another set as well is one for each of its members that is anything anywhere. */
function columnsOf(making: Making, quantity: QuantityLayout, set: string): TableColumn[] {
	const other = quantity.axes.find((axis) => axis.set !== set);
	if (!other) return [{ title: titleWithUnit(quantity), quantity, at: {} }];
	const members = making.open.layout.sets.get(other.set)?.members ?? [];
	const rows = making.open.layout.sets.get(set)?.members ?? [];
	return members.flatMap(({ id, label }, ordinal): TableColumn[] => {
		const at = { [other.set]: ordinal };
		const isAnywhere = chosen(making).some((side) =>
			rows.some((_, row) => {
				const cell = cellOf(quantity, { ...at, [set]: row });
				return cell >= 0 && !saysNothing(side, cell);
			})
		);
		return isAnywhere ? [{ title: label ?? id, quantity, at }] : [];
	});
}

/** What the paper rests on: each value with its source and its date. */
export function assumptionsPart(making: Making, section: PaperSection): Block[] {
	const sides = sidesOf(making);
	const shown = quantitiesOf(making, section).map((quantity) => ({
		quantity,
		cells: cellsSaid(quantity, sides)
	}));
	const lacksSource = shown.some(
		({ quantity, cells }) => cells.length > 0 && !quantity.quantity.source
	);
	const rows = shown.flatMap(({ quantity, cells }): Row[] => {
		const { source = '', date = '' } = quantity.quantity;
		return cells.slice(0, MOST_ROWS).map((cell, i) => {
			const members = membersWords(making, quantity, cell);
			const title = titleWithUnit(quantity);
			return {
				cells: [
					members ? `${title}: ${members}` : title,
					valueOf(making, sides, quantity, cell),
					// Said once for all members of a figure.
					i === 0 ? source : '',
					i === 0 ? date : ''
				]
			};
		});
	});
	if (rows.length === 0) return [{ kind: 'paragraph', text: texts.nothingHere }];
	return [
		{
			kind: 'table',
			caption: texts.assumptions,
			columns: [
				{ title: texts.figure },
				{ title: texts.value, isNumber: true },
				{ title: texts.source },
				{ title: texts.asOf }
			],
			rows,
			...(lacksSource && { note: texts.noSource })
		}
	];
}

/** Once where all scenarios have the same. */
function valueOf(making: Making, sides: readonly Side[], quantity: QuantityLayout, cell: number) {
	const words = sides.map((side) => cellWords(making, side, quantity, cell));
	if (new Set(words).size === 1) return words[0]!;
	return sides.map(({ title }, i) => `${title}: ${words[i]}`).join('; ');
}
