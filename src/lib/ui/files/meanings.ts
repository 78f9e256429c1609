/** What a column of a file can mean, as a list to choose from, and back. */
import type { Mapping, Meaning } from '$lib/exchange/csv/mapping';
import type { Workbook } from '$lib/workbook/schema';

export interface Option {
	readonly value: string;
	readonly text: string;
}

export const textOf = (meaning: Meaning): string => JSON.stringify(meaning);
export const meaningOf = (text: string): Meaning => JSON.parse(text) as Meaning;

/** All that a column can mean; what it means now is among them. */
export function optionsFor(workbook: Workbook, now: Meaning): Option[] {
	const option = (meaning: Meaning, text: string) => ({ value: textOf(meaning), text });
	const member = now.is === 'value' ? now.member : null;
	const options = [
		option({ is: 'nothing' }, 'left out'),
		option({ is: 'quantity' }, 'name of the quantity'),
		option({ is: 'members' }, 'members, together'),
		option({ is: 'unit' }, 'unit'),
		...workbook.scenarios.map(({ id, title }) =>
			option({ is: 'value', scenario: id, member: null }, `value in ${title}`)
		),
		...(member
			? workbook.scenarios.map(({ id, title }) =>
					option({ is: 'value', scenario: id, member }, `value of ${member.id} in ${title}`)
				)
			: []),
		...workbook.sets.map(({ name, label }) =>
			option({ is: 'member', of: name }, `which ${label.toLowerCase()}`)
		)
	];
	const here = textOf(now);
	return options.some(({ value }) => value === here)
		? options
		: [...options, { value: here, text: now.is === 'member' ? `which ${now.of}` : now.is }];
}

/** The mapping with one column meaning something else; only one column can name the quantity. */
export function withMeaning(mapping: Mapping, column: number, meaning: Meaning): Mapping {
	return {
		...mapping,
		columns: mapping.columns.map((one, i) => {
			if (i === column) return meaning;
			const single = meaning.is === 'quantity' || meaning.is === 'unit' || meaning.is === 'members';
			return single && one.is === meaning.is ? { is: 'nothing' } : one;
		})
	};
}

export const namesQuantity = (mapping: Mapping) =>
	mapping.columns.some(({ is }) => is === 'quantity');
