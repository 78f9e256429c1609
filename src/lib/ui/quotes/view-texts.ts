/** What stands around an offer on screen. */
import { inLanguage } from '../language';

const en = {
	offer: 'Offer for the customer',
	print: 'Print',
	pdf: 'Save as PDF',
	making: 'Making the PDF …',
	saved: (missing: readonly string[]) =>
		missing.length === 0
			? 'Saved.'
			: `Saved. The font has no sign for ${missing.join(' ')}; "?" stands in its place.`,
	failed: (why: string) => `The PDF was not made: ${why}`,
	notFetched:
		'a part of the program was not fetched. Check the connection and take it again, or print.',
	copy: 'Copy as text',
	save: 'Save as a file',
	close: 'Back to the quote',
	copied: 'Copied.',
	notCopied: 'The browser did not let it be copied. Save it as a file instead.',
	letterhead: 'Letterhead of all offers',
	name: 'Name of the firm',
	address: 'Address',
	contact: 'Contact',
	opening: 'Before the items',
	closing: 'After them',
	foot: 'At the foot'
};

export const viewTexts = inLanguage({ en });
