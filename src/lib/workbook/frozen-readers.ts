/** Which formulas read a frozen copy. */
import { formulasOf, mentionsQuantity } from './formula-names';
import { quantityPlaces } from './lookup';
import type { Workbook } from './schema';

/** The labels of the quantities whose formulas name a copy. */
export const formulasThatRead = (workbook: Workbook, id: string): string[] =>
	[...quantityPlaces(workbook).values()].flatMap(({ quantity }) =>
		formulasOf(quantity).some((text) => mentionsQuantity(text, id)) ? [quantity.label] : []
	);
