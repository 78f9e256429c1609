/** What the table of items says. */
import { inLanguage } from '../../language';

interface Said {
	readonly id: string;
	readonly value: string;
}

const en = {
	soldAs: (subject: string, count: number) =>
		count === 0
			? `${subject} has no items`
			: count === 1
				? `${subject} is sold as one item`
				: `${subject} is sold as ${count} items`,
	between: (label: string, least: Said, most: Said, unit: string) =>
		`${label}: ${least.value} (${least.id}) to ${most.value} ${unit} (${most.id})`,
	rowInWords: (name: string, figures: readonly string[]) => `${name}: ${figures.join(', ')}.`,
	none: 'None lies under it yet: add one on the Lists page, and say there or in the workbook what it belongs to.',
	quote: 'Quote',
	quoteIt: (id: string) => `Quote ${id}`
};

export const texts = inLanguage({ en });
