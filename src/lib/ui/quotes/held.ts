/** Reading the figures that a quote holds: by name, without the workbook that they came from. */
import { CURRENCIES } from '$lib/units/dimension';
import type { FrozenQuantity, Grounds, Scalar } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { years } from '../figure/words';
import { decimalsFor, decimalsWritten, formatNumber, formatUnit } from '../format';

export type Held = Pick<Grounds, 'figures' | 'sets'>;

export const heldFigure = ({ figures }: Held, name: string): FrozenQuantity | undefined =>
	figures.find((one) => one.name === name);

/** The value of a figure of no set, or of the one member that it is held for. */
export function heldValue(held: Held, name: string): Scalar | undefined {
	const values = flatten(heldFigure(held, name)?.value);
	return values.length === 1 ? values[0]!.value : undefined;
}

export function heldNumber(held: Held, name: string): number | null {
	const value = heldValue(held, name);
	return typeof value === 'number' ? value : null;
}

/** What a member was called. */
export function heldLabel({ sets = [] }: Held, set: string | undefined, id: string): string {
	const members = sets.find(({ name }) => name === set)?.members;
	return members?.find((one) => one.id === id)?.label || id;
}

/** What a choice held, by its label; null where it held nothing. */
export function heldChoice(held: Held, name: string): { id: string; label: string } | null {
	const id = heldValue(held, name);
	if (typeof id !== 'string') return null;
	return { id, label: heldLabel(held, heldFigure(held, name)?.member_of, id) };
}

const isMoney = (unit: string) => (CURRENCIES as readonly string[]).includes(unit.split('/')[0]!);

/** A number as a customer reads it: money to the cent, prices below one to four places, counts as they are. */
export function amountFor(value: number, unit: string, locale: string): string {
	if (isMoney(unit)) return formatNumber(value, Math.abs(value) < 1 ? 4 : 2, locale);
	const decimals = Math.min(decimalsFor(value, 4), decimalsWritten(value, 3));
	return formatNumber(value, Math.max(0, decimals), locale);
}

export function amountWithUnit(value: number, unit: string, locale: string): string {
	return years(amountFor(value, unit, locale), formatUnit(unit))
		.replace(' ', '\u00a0')
		.trim();
}
