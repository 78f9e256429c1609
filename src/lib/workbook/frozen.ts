/** Finding frozen copies and what stands in them. */
import type { Frozen, FrozenQuantity } from './frozen-schema';
import { kept } from './kept';
import type { Workbook } from './schema';

const byId = kept(
	(all: readonly Frozen[]): ReadonlyMap<string, Frozen> => new Map(all.map((one) => [one.id, one]))
);

export const findFrozen = ({ frozen }: Pick<Workbook, 'frozen'>, id: string): Frozen | undefined =>
	frozen && byId(frozen).get(id);

/** Whether it is a frozen copy, not a scenario, that has this id. */
export const isFrozenCopy = (
	{ frozen, scenarios }: Pick<Workbook, 'frozen' | 'scenarios'>,
	id: string
): boolean => !scenarios.some((one) => one.id === id) && findFrozen({ frozen }, id) !== undefined;

/** The quantities of a copy, by name. */
export const frozenQuantities = kept(
	(copy: Frozen): ReadonlyMap<string, FrozenQuantity> =>
		new Map(copy.quantities.map((one) => [one.name, one]))
);
