/** What can be quoted, and the entries that make an order one of it. */
import { setOfChoice } from '$lib/workbook/lookup';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import { inputAt } from '$lib/workbook/scenario';
import type { QuoteEntry, QuoteItem, Workbook } from '$lib/workbook/schema';
import type { ListOption } from '../choose/options';
import { companionsOf, type Companion } from '../quote/companions';
import { noGoods } from './items';
import type { Named } from './tender-list';

/** The goods that can be quoted: members of the first choice of what is offered, and what comes along with each. */
export function goodsOf(workbook: Workbook, picture: QuotePicture) {
	return (picture.offer?.goods ?? []).flatMap((choice) => {
		const set = setOfChoice(workbook, choice);
		return set ? [{ choice, set }] : [];
	});
}

/** The entries that make an order one of these goods: the choice, and what it brings along. */
export function goodsEntries(
	workbook: Workbook,
	scenario: string,
	picture: QuotePicture,
	choice: string,
	member: string,
	/** Looked for in every formula: once for many members. */
	companions: readonly Companion[] = companionsOf(workbook, picture.order, choice)
): QuoteEntry[] {
	const along = companions.flatMap(({ order, own }) => {
		const { value } = inputAt(workbook, scenario, own, [member]);
		return typeof value === 'number' || typeof value === 'string'
			? [{ quantity: order, value }]
			: [];
	});
	const others = (picture.offer?.goods ?? []).filter((name) => name !== choice);
	const left = others.flatMap((quantity) =>
		along.some((one) => one.quantity === quantity) ? [] : [{ quantity, value: null }]
	);
	return [...left, { quantity: choice, value: member }, ...along];
}

export interface Quotable {
	/** By "choice member", as "quote_item PX15B-50". */
	readonly options: readonly ListOption[];
	/** The same by what people call them. */
	readonly named: readonly Named[];
	/** The entries of an option; without a member, none of the goods. */
	readonly entriesOf: (value: string) => QuoteEntry[];
	/** The option that an item is; empty where it is none. */
	readonly choiceOf: (item: QuoteItem) => string;
}

export function quotable(workbook: Workbook, picture: QuotePicture, scenario: string): Quotable {
	const kinds = goodsOf(workbook, picture);
	// Looked for in every formula: once for all members.
	const companions = new Map(
		kinds.map(({ choice }) => [choice, companionsOf(workbook, picture.order, choice)])
	);
	const all = kinds.flatMap(({ choice, set }) =>
		set.members.map((member) => ({ choice, set, member }))
	);
	return {
		options: all.map(({ choice, set, member: { id, label } }) => ({
			value: `${choice} ${id}`,
			text: label && label !== id ? `${id}, ${label}` : id,
			...(kinds.length > 1 && { group: set.plural ?? set.label })
		})),
		named: all.map(({ choice, member: { id, label } }) => ({
			...{ choice, member: id },
			names: [id, ...(label ? [label] : [])]
		})),
		entriesOf: (value) => {
			const at = value.indexOf(' ');
			if (at < 0) return noGoods(picture);
			const [choice, member] = [value.slice(0, at), value.slice(at + 1)];
			return goodsEntries(workbook, scenario, picture, choice, member, companions.get(choice));
		},
		choiceOf: ({ entries }) => {
			for (const { choice } of kinds) {
				const value = entries.find(({ quantity }) => quantity === choice)?.value;
				if (typeof value === 'string') return `${choice} ${value}`;
			}
			return '';
		}
	};
}
