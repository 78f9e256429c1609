/**
 * One line of a change list as data: what a revision keeps and the server hands out. It holds the names as they were at
 * the time; how it is said, and how numbers are written, is for whoever shows it (`change-words.ts`).
 */
import type { Quantity, Scalar, Workbook } from '../schema';

/** The parts of a workbook that are lists; whoever adds one is asked for its word. */
export type ListName = {
	[Name in keyof Workbook]-?: NonNullable<Workbook[Name]> extends readonly unknown[] ? Name : never;
}[keyof Workbook];

/** Lists whose entries are told one by one; plans that follow are nobody's doing. */
export type EntryList = Exclude<ListName, 'plans'>;

/** The other parts that can change as a whole. */
export type PartName = Exclude<
	keyof Workbook,
	ListName | '$schema' | 'format' | 'version' | 'title'
>;

/** Lists whose entries hold a list of their own: members, pairs. */
export type InnerList = 'sets' | 'relations';

/** An entry of a list, or where `of` names a set or a relation, a member or a pair of it. */
export interface Listed {
	readonly list: EntryList;
	readonly of?: string;
}

export type Change =
	/** One entered value; `at` are its members. `scenario` is a title, and left out for the base. */
	| {
			readonly kind: 'value';
			readonly label: string;
			readonly at: readonly string[];
			readonly scenario?: string;
			readonly was: Scalar;
			readonly now: Scalar;
			readonly unit?: string;
			readonly shown?: Quantity['shown'];
			/** A step of a path in time: from which month on, and whether it moves the path by a share. */
			readonly step?: { readonly from: string; readonly isShare?: true };
			/** Nothing of its own any more: the scenario has what its parent has. */
			readonly inherits?: true;
	  }
	/** More values than are told one by one, of these quantities. */
	| {
			readonly kind: 'values';
			readonly labels: readonly string[];
			readonly count: number;
			readonly scenario?: string;
	  }
	| { readonly kind: 'quantity_added'; readonly label: string; readonly sheet: string }
	| { readonly kind: 'quantity_moved'; readonly label: string; readonly sheet: string }
	| { readonly kind: 'quantity_removed'; readonly label: string }
	| { readonly kind: 'quantity_renamed'; readonly from: string; readonly to: string }
	/** Fields of a quantity beside its value; none where only its words differ. */
	| {
			readonly kind: 'quantity_changed';
			readonly label: string;
			readonly fields: readonly (keyof Quantity)[];
	  }
	| (Listed & { readonly kind: 'added' | 'removed' | 'changed'; readonly name: string })
	| (Listed & { readonly kind: 'renamed'; readonly from: string; readonly to: string })
	/** A list was put in another order, or its entries cannot be told apart. */
	| (Listed & { readonly kind: 'reordered' | 'list_changed' })
	/** More members or pairs than are told one by one. */
	| {
			readonly kind: 'many_changed';
			readonly list: InnerList;
			readonly of: string;
			readonly count: number;
	  }
	| { readonly kind: 'title'; readonly was: string; readonly now: string }
	| { readonly kind: 'part'; readonly part: PartName }
	/** Somebody keeps the plan of a scenario as it stands since a day, or (null) lets it follow again. */
	| { readonly kind: 'plan'; readonly scenario: string; readonly kept: string | null }
	/** The first revision. */
	| { readonly kind: 'begun'; readonly title: string }
	/** Lines that are not kept. */
	| { readonly kind: 'more'; readonly count: number }
	/** A sentence that an earlier version of the app kept. */
	| { readonly kind: 'told'; readonly text: string };

export type QuantityChange = Extract<
	Change,
	{ kind: 'value' | 'values' | 'quantity_renamed' | 'quantity_changed' }
>;
