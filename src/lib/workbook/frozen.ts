/** Finding frozen copies and what stands in them. */
import type { Frozen, FrozenQuantity } from './frozen-schema';
import { kept } from './kept';
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
