/** What is to be said of every figure in a picture, by whoever shows it: on the page, in its files and in its table. */
import { getContext, setContext } from 'svelte';
import type { PlainTable } from '$lib/exchange/csv/write';
import type { Said } from '../said-beside';

export interface FigureCaution {
	readonly text: string;
	/** A caution of the workbook, with the way to what mends it; none where plans are behind. */
	readonly said: Said | null;
}

const KEY = Symbol('caution');
type Cautions = () => readonly FigureCaution[];

/** Empty where there is nothing to say. */
export const setCautionsOfFigures = (cautions: Cautions): unknown => setContext(KEY, cautions);

export const cautionsOfFigures = (): Cautions =>
	getContext<Cautions | undefined>(KEY) ?? (() => []);

/** All of them as one text. */
export const inOneText = (cautions: readonly FigureCaution[]): string =>
	cautions.map(({ text }) => text).join(' ');

/** The caution in each row, so that a figure copied out of the table keeps it. */
export const withCaution = (table: PlainTable, caution: string): PlainTable =>
	caution === ''
		? table
		: {
				...table,
				columns: [...table.columns, ''],
				rows: table.rows.map((row) => [...row, caution])
			};
