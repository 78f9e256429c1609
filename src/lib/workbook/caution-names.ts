/** The quantities that a caution names: those it is said beside, and those that mend it. */
import type { Quantity } from './schema';

/** Each under the name given for it; undefined takes it out. The same quantity where nothing changes. */
export function withCautionNames(
	quantity: Quantity,
	name: (old: string) => string | undefined
): Quantity {
	const { caution } = quantity;
	if (!caution) return quantity;
	const beside = renamed(caution.beside, name);
	const mended_by = renamed(caution.mended_by, name);
	if (beside === caution.beside && mended_by === caution.mended_by) return quantity;
	const { message } = caution;
	return {
		...quantity,
		caution: { message, ...(beside && { beside }), ...(mended_by && { mended_by }) }
	};
}

/** An empty list is none. */
function renamed(
	names: string[] | undefined,
	name: (old: string) => string | undefined
): string[] | undefined {
	if (!names || names.every((old) => name(old) === old)) return names;
	const next = names.flatMap((old) => name(old) ?? []);
	return next.length > 0 ? next : undefined;
}
