/** The values of an input that is fixed with the structure, read once, as the engines carry them. */
import { valueAt } from '$lib/workbook/values';
import { numberOf } from '../entry';
import { membersWithin, type Layout, type QuantityLayout } from '../layout';
import { NOT_ENTERED, OK, OUT_OF_RANGE, type State } from '../state';

/** By cell from the layout's base. */
export interface FixedValues {
	readonly values: Float64Array;
	readonly states: Uint8Array;
}

export function fixedValues(quantity: QuantityLayout, layout: Layout): FixedValues {
	const values = new Float64Array(quantity.count);
	const states = new Uint8Array(quantity.count);
	const type = quantity.quantity.type;
	const ordinals = typeof type === 'object' ? layout.ordinals.get(type.member_of) : undefined;
	for (let cell = 0; cell < quantity.count; cell++) {
		const at = membersWithin(layout, quantity, cell);
		const value = numberOf(valueAt(quantity.quantity.value, at), ordinals);
		values[cell] = value ?? NaN;
		states[cell] = stateOf(value, quantity);
	}
	return { values, states };
}

function stateOf(value: number | undefined, { quantity: { range } }: QuantityLayout): State {
	if (value === undefined) return NOT_ENTERED;
	if (!range) return OK;
	const inside =
		value >= (range.min ?? -Infinity) &&
		value <= (range.max ?? Infinity) &&
		value > (range.above ?? -Infinity) &&
		value < (range.below ?? Infinity);
	return inside ? OK : OUT_OF_RANGE;
}
