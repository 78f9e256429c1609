/** Which column names what of a pair, as lists to choose from, and back. */
import { pairRelations, type PairColumn, type PairMapping } from '$lib/exchange/table/pair-mapping';
import type { Workbook } from '$lib/workbook/schema';
import type { ListOption } from '../choose/options';
import { texts as logTexts } from './log-texts';
import { texts } from './pair-texts';
import { texts as fileTexts } from './texts';

export const columnText = (column: PairColumn): string => String(column ?? '');
export const columnThat = (text: string): PairColumn =>
	text === '' ? null : text === 'heads' ? 'heads' : Number(text);

const columns = (head: readonly string[]): ListOption[] =>
	head.map((name, column) => ({
		value: String(column),
		text: name || fileTexts.columnNumber(column + 1)
	}));

export const columnOptions = (head: readonly string[], now: PairColumn): ListOption[] => [
	...(now === null ? [{ value: '', text: texts.choose }] : []),
	...columns(head),
	{ value: 'heads', text: texts.theHeadings }
];

export const markOptions = (head: readonly string[], { of }: PairMapping): ListOption[] => [
	{ value: '', text: texts.everyRow },
	...columns(head).filter(({ value }) => !of.includes(Number(value)))
];

/** No relation is called so. */
export const LOG = ':log';

/** What a table can hold: values, a log, or pairs of one of the relations; empty stands for values. */
export const holdsOptions = (workbook: Workbook): ListOption[] => [
	{ value: '', text: texts.valuesOfQuantities },
	{ value: LOG, text: logTexts.aLog },
	...pairRelations(workbook).map(({ name, label }) => ({
		value: name,
		text: label ?? name,
		group: texts.pairsGroup
	}))
];
