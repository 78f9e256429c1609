/** What a scenario enters that what it is compared with does not: the whole of the option, input by input. */
import { isInputCell } from '$lib/engine/input-cell';
import type { QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { ABSENT, NOT_ENTERED } from '$lib/engine/state';
import { isSame } from '$lib/ui/cells';
import { referenceOf, scenarioChain } from '$lib/workbook/scenario';
import { cellWords, membersWords, titleWithUnit } from './cell-words';
import { chosen, references, sidesOf, type Making, type Side } from './making';
import type { Block, Row } from './paper';
import { texts } from './texts';

/** More of one figure are told as a count. */
const MOST_CELLS = 12;

export function changesPart(making: Making): Block[] {
	return chosen(making).map((side) => changesOf(making, side));
}

function changesOf(making: Making, side: Side): Block {
	const { layout } = making.open;
	const { workbook } = layout;
	const known = [...references(making), ...sidesOf(making)];
	const id = referenceOf(workbook, side.id).id;
	const from = known.find((one) => one.id === id);
	const [own, other] = [side.source.results, from?.source.results];
	if (!from || !own || !other || from.id === side.id)
		return { kind: 'paragraph', text: texts.changesNothing(side.title) };
	const notes = new Map(
		scenarioChain(workbook, side.id).flatMap(({ changes }) =>
			changes.flatMap(({ quantity, note }) => (note ? [[quantity, note] as const] : []))
		)
	);
	const rows = layout.quantities.flatMap((quantity): Row[] => {
		const cells: number[] = [];
		for (let cell = quantity.base; cell < quantity.base + quantity.count; cell++)
			if (
				!isSame(own, other, cell) &&
				isInputCell(workbook, quantity, cell) &&
				!(isNothing(own, cell) && isNothing(other, cell))
			)
				cells.push(cell);
		const said = notes.get(quantity.quantity.name) ?? '';
		if (cells.length > MOST_CELLS)
			return [{ cells: [titleWithUnit(quantity), '', texts.values(cells.length), said] }];
		return cells.map((cell, i) => rowOf(making, from, side, quantity, cell, i === 0 ? said : ''));
	});
	if (rows.length === 0) return { kind: 'paragraph', text: texts.changesNothing(side.title) };
	const hasRemarks = rows.some(({ cells }) => cells[3]);
	return {
		kind: 'table',
		caption: texts.whatItChanges(side.title, from.title),
		columns: [
			{ title: texts.figure },
			{ title: from.title, isNumber: true },
			{ title: side.title, isNumber: true },
			...(hasRemarks ? [{ title: texts.remark }] : [])
		],
		rows: hasRemarks ? rows : rows.map(({ cells }) => ({ cells: cells.slice(0, 3) }))
	};
}

/** Not there, or nothing entered: two of these say nothing. */
const isNothing = ({ states }: Results, cell: number) =>
	states[cell] === ABSENT || states[cell] === NOT_ENTERED;

function rowOf(
	making: Making,
	from: Side,
	to: Side,
	quantity: QuantityLayout,
	cell: number,
	said: string
): Row {
	const members = membersWords(making, quantity, cell);
	const title = titleWithUnit(quantity);
	return {
		cells: [
			members ? `${title}: ${members}` : title,
			cellWords(making, from, quantity, cell),
			cellWords(making, to, quantity, cell),
			said
		]
	};
}
