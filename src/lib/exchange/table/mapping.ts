/** What the columns of a file mean, each with the unit and the sign before decimals of its numbers. */
import type { DecimalSign } from './number-text';

export type Meaning =
	| { readonly is: 'nothing' }
	/** It may be one of several quantities, by name: a person says which. */
	| { readonly is: 'asked'; readonly between: readonly string[] }
	/** The quantity, by its name or label. */
	| { readonly is: 'quantity' }
	/** All members of the value, in the order of the quantity's sets. */
	| { readonly is: 'members' }
	/** A member of one set, or of an axis by its name. */
	| { readonly is: 'member'; readonly of: string }
	/** What a member of the set is called in words: taken for those that are new. */
	| { readonly is: 'label'; readonly of: string }
	| { readonly is: 'unit' }
	| ValueMeaning;

export interface ValueMeaning {
	readonly is: 'value';
	readonly scenario: string;
	/** Of which quantity; null where a column names it in each row, or one is chosen for the whole file. */
	readonly quantity: string | null;
	/** Where the column stands for a member, of that. */
	readonly member: { readonly of: string; readonly id: string } | null;
}

export interface Column {
	readonly meaning: Meaning;
	/** Of its numbers, as tables write it; empty: the quantity's own. */
	readonly unit: string;
	/** Null: nothing in the file says it. */
	readonly decimal: DecimalSign | null;
	/** Of dates with strokes; null: nothing in the file says it. */
	readonly dayFirst: boolean | null;
}

export interface Mapping {
	/** The quantity of every row, where neither a row nor a column names one. */
	readonly quantity: string | null;
	readonly columns: readonly Column[];
	/** Sets, or axes, whose member is one for all rows, as the month of a file that names none. */
	readonly all?: readonly OfAllRows[];
}

export interface OfAllRows {
	readonly of: string;
	/** Null: nobody has said it. */
	readonly id: string | null;
}

/** The columns that a person has to say something about before anything is entered. */
export const askedColumns = ({ columns }: Mapping): number[] =>
	columns.flatMap(({ meaning }, column) => (meaning.is === 'asked' ? [column] : []));

/** The sets of which a person has to say whose all rows are. */
export const askedOfAll = ({ all = [] }: Mapping): string[] =>
	all.flatMap(({ of, id }) => (id === null ? [of] : []));

/** The mapping with one member of the set for all rows; undefined: rows name it, or nothing does. */
export function withOfAll(mapping: Mapping, of: string, id: string | null | undefined): Mapping {
	const { all = [], ...rest } = mapping;
	const others = all.filter((one) => one.of !== of);
	const at = all.findIndex((one) => one.of === of);
	if (id === undefined) return { ...rest, ...(others.length > 0 && { all: others }) };
	return {
		...rest,
		all: at < 0 ? [...all, { of, id }] : all.map((one) => (one.of === of ? { of, id } : one))
	};
}

/** Whether some values have no quantity yet. */
export const lacksQuantity = ({ quantity, columns }: Mapping): boolean =>
	quantity === null &&
	columns.some(({ meaning }) => meaning.is === 'value' && meaning.quantity === null) &&
	!columns.some(({ meaning }) => meaning.is === 'quantity');
