/** What the inputs of one product say. */
import { inLanguage } from '../language';

const en = {
	title: (id: string) => `All that is entered for ${id}`,
	count: (quantities: number) =>
		`${quantities} quantities, by sheet. What is typed here stands in the workbook at once, and undo takes it back.`,
	leftOut: (count: number, plural: string, sheet: string) =>
		`Its ${count} ${plural.toLowerCase()} are too many for this page; they stand on the sheet ${sheet}.`
};

export const texts = inLanguage({ en });
