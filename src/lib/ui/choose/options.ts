/**
 * What a chooser offers, and what of it is found by what is typed: quantities by label, name and other names, under
 * their sheets.
 */
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { placeOf, plainWords } from '../find';

export interface ListOption {
	readonly value: string;
	readonly text: string;
	/** The heading that it stands under. */
	readonly group?: string | undefined;
	/** By which it is found too: its name in formulas, what else people call it. */
	readonly name?: string | undefined;
	readonly other_names?: readonly string[] | undefined;
}

/** More entries than this are worth a search. */
export const LONG = 15;

export interface FoundOption {
	readonly option: ListOption;
	/** Its place among all that were found. */
	readonly index: number;
	/** The other name by which it was found. */
	readonly also?: string;
}

export interface FoundGroup {
	/** Empty for entries without a heading. */
	readonly label: string;
	readonly options: readonly FoundOption[];
}

/** All under their headings where nothing is typed; else what has the words, the likeliest first, in one group. */
export function foundOptions(options: readonly ListOption[], typed: string): FoundGroup[] {
	const words = plainWords(typed);
	if (words.length === 0) return grouped(options);
	const hits = options.flatMap((option, at) => {
		const { text, name = '', other_names } = option;
		const place = placeOf(words, { label: text, name, other_names });
		return place ? [{ option, at, ...place }] : [];
	});
	hits.sort((a, b) => a.rank - b.rank || a.at - b.at);
	const found = hits.map(({ option, also }, index) => ({
		option,
		index,
		...(also !== undefined && { also })
	}));
	return found.length > 0 ? [{ label: '', options: found }] : [];
}

function grouped(options: readonly ListOption[]): FoundGroup[] {
	const groups = new Map<string, ListOption[]>();
	for (const option of options) {
		const label = option.group ?? '';
		const group = groups.get(label);
		if (group) group.push(option);
		else groups.set(label, [option]);
	}
	let index = 0;
	return [...groups].map(([label, entries]) => ({
		label,
		options: entries.map((option) => ({ option, index: index++ }))
	}));
}

/** Quantities under their sheets. */
export const quantityOptions = (
	workbook: Workbook,
	fits: (quantity: Quantity) => boolean
): ListOption[] =>
	workbook.sheets.flatMap(({ title, quantities }) =>
		quantities.filter(fits).map((quantity) => quantityOption(quantity, title))
	);

export const quantityOption = (
	{ name, label, other_names }: Quantity,
	group: string
): ListOption => ({
	...{ value: name, text: label || name, group, name },
	...(other_names && { other_names })
});

/** Members by id and label. */
export const memberOptions = (
	members: readonly { readonly id: string; readonly label?: string | undefined }[]
): ListOption[] =>
	members.map(({ id, label }) => ({
		value: id,
		text: label && label !== id ? `${id}, ${label}` : id
	}));

/** Of scenarios, or of frozen copies. */
export const scenarioOptions = ({
	scenarios
}: {
	readonly scenarios: readonly { readonly id: string; readonly title: string }[];
}): ListOption[] => scenarios.map(({ id, title }) => ({ value: id, text: title }));
