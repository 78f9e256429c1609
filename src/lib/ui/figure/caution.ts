/** What is to be said of every figure in a picture, by whoever shows it: on the page, in its files and in its table. */
import { getContext, setContext } from 'svelte';
import type { PlainTable } from '$lib/exchange/csv/write';

const KEY = Symbol('caution');
type Caution = () => string;

/** Empty where there is nothing to say. */
export const setCautionOfFigures = (caution: Caution): unknown => setContext(KEY, caution);

export const cautionOfFigures = (): Caution => getContext<Caution | undefined>(KEY) ?? (() => '');

/** The caution in each row, so that a figure copied out of the table keeps it. */
export const withCaution = (table: PlainTable, caution: string): PlainTable =>
	caution === ''
		? table
		: {
				...table,
				columns: [...table.columns, ''],
				rows: table.rows.map((row) => [...row, caution])
			};
