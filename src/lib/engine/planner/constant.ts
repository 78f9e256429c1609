/** A number that the formula, or the workbook itself, fixes when the plan is made. */
import type { Expression } from '$lib/formula/tree';
import type { Typed, ValueType } from './types';

export function constant(source: Expression | null, value: number, type: ValueType): Typed {
	return { kind: 'constant', value, type, free: 0, fixed: true, source };
}
