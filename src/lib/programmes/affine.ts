/**
 * Affine forms: a value as a constant and a sum of decisions times factors, or no value at all. Columns ascend, and a
 * form without any is a plain value.
 */
import { OK, type State } from '$lib/engine/state';

export interface Form {
	readonly state: State;
	readonly constant: number;
	readonly columns: readonly number[];
	readonly factors: readonly number[];
}

const NONE: readonly number[] = [];

export const plain = (constant: number): Form => ({
	state: OK,
	constant,
	columns: NONE,
	factors: NONE
});

export const without = (state: State): Form => ({
	state,
	constant: NaN,
	columns: NONE,
	factors: NONE
});

export const decision = (column: number): Form => ({
	state: OK,
	constant: 0,
	columns: [column],
	factors: [1]
});

export const isPlain = ({ columns }: Form): boolean => columns.length === 0;

export function times(form: Form, factor: number): Form {
	if (factor === 0) return plain(0);
	return {
		...form,
		constant: form.constant * factor,
		factors: form.factors.map((each) => each * factor)
	};
}

/** a + b × factor; factors that cancel leave no trace. */
export function plus(a: Form, b: Form, factor = 1): Form {
	if (isPlain(b)) return { ...a, constant: a.constant + b.constant * factor };
	const columns: number[] = [];
	const factors: number[] = [];
	const add = (column: number, value: number) => {
		if (value === 0) return;
		columns.push(column);
		factors.push(value);
	};
	let i = 0;
	let j = 0;
	while (i < a.columns.length || j < b.columns.length) {
		const left = a.columns[i] ?? Infinity;
		const right = b.columns[j] ?? Infinity;
		if (left < right) add(left, a.factors[i++]!);
		else if (right < left) add(right, b.factors[j++]! * factor);
		else add(left, a.factors[i++]! + b.factors[j++]! * factor);
	}
	return { state: OK, constant: a.constant + b.constant * factor, columns, factors };
}

/** The sum of many, in one go: each column is added up where it stands. */
export function sumOf(forms: readonly Form[]): Form {
	if (forms.length <= 2) return forms.reduce((sum, form) => plus(sum, form), plain(0));
	let constant = 0;
	const sums = new Map<number, number>();
	for (const form of forms) {
		constant += form.constant;
		form.columns.forEach((column, i) =>
			sums.set(column, (sums.get(column) ?? 0) + form.factors[i]!)
		);
	}
	const columns = [...sums.keys()].filter((column) => sums.get(column) !== 0);
	columns.sort((a, b) => a - b);
	return { state: OK, constant, columns, factors: columns.map((column) => sums.get(column)!) };
}
