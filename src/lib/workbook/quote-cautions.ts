/** Cautions about a quote speak where quotes stand: in other scenarios nobody quotes, and what they would say is of no quote. */
import { kept } from './kept';
import { quotesStandOn } from './lookup';
import type { Workbook } from './schema';

/** Names of all quantities on the sheet of the order. */
const ofTheOrder = kept(({ pictures = [], sheets }: Workbook): ReadonlySet<string> => {
	const sizes = pictures.flatMap((picture) => (picture.kind === 'quote' ? [picture.size] : []));
	const own = sheets.filter(({ quantities }) =>
		quantities.some(({ name }) => sizes.includes(name))
	);
	return new Set(own.flatMap(({ quantities }) => quantities.map(({ name }) => name)));
});

/** Whether a caution of this quantity is of a quote, and quotes stand on another scenario. */
export const isOfQuoteElsewhere = (workbook: Workbook, name: string, scenario: string): boolean =>
	scenario !== quotesStandOn(workbook) && ofTheOrder(workbook).has(name);
