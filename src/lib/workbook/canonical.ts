/**
 * The one way in which a workbook holds what can be written in several: no objects without a value, no
 * minus zero. Without it an edit and its undo, or a file and its copy, would not meet exactly.
 */
import type { Change, Quantity, Sheet, Values } from './schema';
import { partsOf, withPartsAt } from './study-parts';
import type { Study } from './study-schema';
import { isTree, put, withoutEmptyObjects } from './values';

export function canonicalValues(values: Values | undefined): Values | undefined {
	return withoutMinusZero(withoutEmptyObjects(values));
}

export function canonicalQuantity(quantity: Quantity): Quantity {
	const value = canonicalValues(quantity.value);
	if (value === quantity.value && !Object.is(quantity.value, -0)) return quantity;
	const { value: _value, ...rest } = quantity;
	return value === undefined ? rest : { ...quantity, value };
}

export function canonicalSheet(sheet: Sheet): Sheet {
	return { ...sheet, quantities: sheet.quantities.map(canonicalQuantity) };
}

/** Undefined for a change without a value. */
export function canonicalChange(change: Change): Change | undefined {
	const value = canonicalValues(change.value);
	return value === undefined ? undefined : { ...change, value };
}

/** Alternatives without the changes that say nothing, and no minus zero anywhere. */
export function canonicalStudy<S extends Study>(study: S): S {
	return withPartsAt(plainZeros(study), partsOf(study).changes, canonicalChange) as S;
}

/** Fields that are undefined go too: a file has none. */
function plainZeros<T>(value: T): T {
	if (typeof value === 'number') return (value === 0 ? 0 : value) as T;
	if (typeof value !== 'object' || value === null) return value;
	if (Array.isArray(value)) return value.map(plainZeros) as T;
	const next: { [key: string]: unknown } = {};
	for (const [key, entry] of Object.entries(value))
		if (entry !== undefined) put(next, key, plainZeros(entry));
	return next as T;
}

function withoutMinusZero(values: Values | undefined): Values | undefined {
	if (!isTree(values)) return Object.is(values, -0) ? 0 : values;
	let changed = false;
	const next: { [member: string]: Values } = {};
	for (const member of Object.keys(values)) {
		const value = withoutMinusZero(values[member]) ?? null;
		if (!Object.is(value, values[member])) changed = true;
		put(next, member, value);
	}
	return changed ? next : values;
}
