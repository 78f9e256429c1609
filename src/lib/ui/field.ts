/**
 * What a cell's field takes: its type, unit, permitted range and choices, and how units are converted.
 */
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import { convert } from '$lib/units/convert';
import { sameDimension } from '$lib/units/algebra';
import type { UnitSystem } from '$lib/units/system';
import { pathsOf } from '$lib/workbook/paths';
import { choiceSet } from './cells';
import type { Converted, FieldSpec } from './entry';
import { formatUnit } from './format';

/** A number in one unit, in another; or a sentence that says why it has none. */
export function converter(units: UnitSystem, own: string): FieldSpec['convert'] {
	return (value, written): Converted => {
		const from = units.parse(written);
		if (!from.ok) return { ok: false, message: from.problem.message };
		const to = units.parse(own);
		if (!to.ok) return { ok: false, message: to.problem.message };
		if (!sameDimension(from.unit, to.unit))
			return {
				ok: false,
				message: `${formatUnit(written)} cannot become ${formatUnit(own) || 'a plain number'}: they measure different things. Write a value in ${formatUnit(own) || 'no unit'}.`
			};
		return { ok: true, value: convert(value, from.unit, to.unit) };
	};
}

export function fieldSpec(
	layout: Layout,
	quantity: QuantityLayout,
	units: UnitSystem,
	locale: string
): FieldSpec {
	const { type, unit = '1' } = quantity.quantity;
	const path = pathsOf(layout.workbook).byPath.get(quantity.quantity.name);
	const moved = path && layout.byName.get(path.moved.name);
	// What is typed on a path in time goes into the inputs of its steps.
	const { range, usual } = path?.set ?? quantity.quantity;
	return {
		type: typeof type === 'object' ? 'member' : (type ?? 'number'),
		date: quantity.quantity.shown === 'date',
		unit,
		range: range ?? null,
		usual: usual ?? null,
		members: (choiceSet(layout, quantity)?.members ?? []).map(({ id, label }) => ({
			id,
			label: label ?? ''
		})),
		locale,
		convert: converter(units, unit),
		...(moved && { moves: fieldSpec(layout, moved, units, locale) })
	};
}

/** A number that is no value of a quantity: a setting of a study, the number of a member, the end of a range. */
export interface PlainNumber {
	readonly locale: string;
	readonly unit?: string;
	/** What stands there, of which "+2 %" is taken; null: nothing. */
	readonly stands?: number | null;
	/** What is said of a unit that is not its own. */
	readonly otherUnit: (written: string) => string;
}

export const plainSpec = ({ locale, unit = '', stands, otherUnit }: PlainNumber): FieldSpec => ({
	...{ type: 'number', date: false, unit, range: null, members: [], locale },
	...{ stands: stands ?? null },
	convert: (value, written) =>
		unit !== '' && unit.startsWith(written)
			? { ok: true, value }
			: { ok: false, message: otherUnit(written) }
});
