/** What is said of a PDF that is taken. */
import { inLanguage } from '../language';

const en = {
	take: 'Save as PDF',
	making: 'Making the PDF …',
	saved: (missing: readonly string[]) =>
		missing.length === 0
			? 'Saved.'
			: `Saved. The font has no sign for ${missing.join(' ')}; "?" stands in its place.`,
	failed: (why: string) => `The PDF was not made: ${why}`,
	notFetched:
		'a part of the program was not fetched. Check the connection and take it again, or print.'
};

export const pdfTexts = inLanguage({ en });
