/** What stands around an offer on screen. */
import { inLanguage } from '../language';

const en = {
	offer: 'Offer for the customer',
	print: 'Print',
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
