/**
 * Computed values as JSON: a number, true or false, a member, one of the four kinds of nothing, or
 * an error with its reason and where it comes from; nested by member for a quantity per something.
 */
import { membersOf, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Origin, Results } from '$lib/engine/results';
import { ERROR_CODES, NOTHING_KINDS, OK, isError } from '$lib/engine/state';

export type JsonValue =
	| number
	| boolean
	| { readonly member: string }
	| { readonly nothing: string; readonly reason: string }
	| {
			readonly error: string;
			readonly reason: string;
			readonly from: { readonly quantity: string; readonly member: string | null };
	  };
export type JsonValues = JsonValue | { [member: string]: JsonValues };

export interface JsonQuantity {
	readonly unit: string;
	readonly per: readonly string[];
	readonly value?: JsonValue;
	readonly values?: JsonValues;
}

/** Says why a cell has no number: the model knows. */
export type OriginOf = (cell: number) => Origin | null;

/** All values of one quantity in one scenario. */
export function quantityAsJson(
	layout: Layout,
	place: QuantityLayout,
	results: Results,
	originOf: OriginOf
): JsonQuantity {
	const { quantity, axes } = place;
	const head = { unit: unitText(place), per: axes.map((axis) => axis.set) };
	const value = (cell: number) => valueAsJson(layout, place, results, cell, originOf);
	if (axes.length === 0) return { ...head, value: value(place.base) };
	const values = nested();
	for (let cell = place.base; cell < place.base + place.count; cell++) {
		const members = membersOf(layout, cell);
		let at = values;
		for (const member of members.slice(0, -1)) at = (at[member] ??= nested()) as typeof values;
		at[members.at(-1) ?? quantity.name] = value(cell);
	}
	return { ...head, values };
}

/** Without a prototype, so that a member called "constructor" is only a member. */
const nested = () => Object.create(null) as { [member: string]: JsonValues };

function unitText({ quantity }: QuantityLayout): string {
	return quantity.type === undefined || quantity.type === 'number' ? (quantity.unit ?? '1') : '';
}

function valueAsJson(
	layout: Layout,
	{ quantity }: QuantityLayout,
	results: Results,
	cell: number,
	originOf: OriginOf
): JsonValue {
	const state = results.states[cell]!;
	const value = results.values[cell]!;
	if (state === OK) {
		if (quantity.type === 'yes_no') return value !== 0;
		if (typeof quantity.type === 'object') {
			const set = quantity.type.member_of;
			const members = layout.workbook.sets.find(({ name }) => name === set)?.members ?? [];
			return { member: members[value]?.id ?? String(value) };
		}
		return value;
	}
	const origin = originOf(cell);
	const reason = origin?.reason ?? '';
	if (!isError(state)) return { nothing: NOTHING_KINDS[state]!, reason };
	const from = origin?.from;
	return {
		error: ERROR_CODES[state]!,
		reason,
		from: {
			quantity: from?.quantity ?? quantity.name,
			member: (from?.members ?? membersOf(layout, cell)).join(', ') || null
		}
	};
}
