/** Finding frozen copies, what stands in them, and which formulas read them. */
import { formulasOf, mentionsQuantity } from './formula-names';
import type { Frozen, FrozenQuantity } from './frozen-schema';
import { kept } from './kept';
import { quantityPlaces } from './lookup';
import type { Workbook } from './schema';

const byId = kept(
	(all: readonly Frozen[]): ReadonlyMap<string, Frozen> => new Map(all.map((one) => [one.id, one]))
);

export const findFrozen = ({ frozen }: Pick<Workbook, 'frozen'>, id: string): Frozen | undefined =>
	frozen && byId(frozen).get(id);

/** The quantities of a copy, by name. */
export const frozenQuantities = kept(
	(copy: Frozen): ReadonlyMap<string, FrozenQuantity> =>
		new Map(copy.quantities.map((one) => [one.name, one]))
);

/** The labels of the quantities whose formulas name a copy. */
export const formulasThatRead = (workbook: Workbook, id: string): string[] =>
	[...quantityPlaces(workbook).values()].flatMap(({ quantity }) =>
		formulasOf(quantity).some((text) => mentionsQuantity(text, id)) ? [quantity.label] : []
	);
