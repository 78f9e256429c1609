/** What is said of a block of marks that cannot be entered. */
import { inLanguage } from '../language';

const lines = (count: number) => (count === 1 ? '1 line' : `${count} lines`);
const columns = (count: number) => (count === 1 ? '1 column' : `${count} columns`);

const en = {
	noMark: (text: string, row: string, column: string) =>
		`“${text}” for ${row} with ${column} is no mark: write x, 1 or yes where the pair exists, and 0, no or nothing where it does not. Nothing was entered.`,
	tooLarge: (down: number, across: number, rows: number, wide: number) =>
		`The block has ${lines(down)} and ${columns(across)}; from here on the table has ${lines(rows)} and ${columns(wide)}. Begin further up or to the left, or show the rows that are left out. Nothing was entered.`
};

export const texts = inLanguage({ en });
