/** What a column of a file can mean, as a list to choose from, and back. */
import { quantitiesFor } from '$lib/exchange/table/propose';
import type { Column, Mapping, Meaning } from '$lib/exchange/table/mapping';
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { quantityOption, type ListOption } from '../choose/options';
import { texts } from './texts';

export const textOf = (meaning: Meaning): string => JSON.stringify(meaning);
export const meaningOf = (text: string): Meaning => JSON.parse(text) as Meaning;

/** The scenario that values with a quantity of their own go into. */
export function scenarioOf({ columns }: Mapping, workbook: Workbook): string {
	for (const { meaning } of columns)
		if (meaning.is === 'value' && meaning.quantity !== null) return meaning.scenario;
	return workbook.scenarios[0]?.id ?? '';
}

export const holdsQuantities = ({ columns }: Mapping): boolean =>
	columns.some(({ meaning }) => meaning.is === 'value' && meaning.quantity !== null);

/** The mapping with those values in another scenario. */
export const intoScenario = (mapping: Mapping, scenario: string): Mapping => ({
	...mapping,
	columns: mapping.columns.map((column) =>
		column.meaning.is === 'value' && column.meaning.quantity !== null
			? { ...column, meaning: { ...column.meaning, scenario } }
			: column
	)
});

/** All that a column can mean; what it means now is among them. */
export function optionsFor(workbook: Workbook, mapping: Mapping, now: Meaning): ListOption[] {
	const option = (meaning: Meaning, text: string, group?: string): ListOption => ({
		value: textOf(meaning),
		text,
		...(group !== undefined && { group })
	});
	const scenario = scenarioOf(mapping, workbook);
	const member = now.is === 'value' ? now.member : null;
	const valueOf = (quantity: string): Meaning => ({
		is: 'value',
		scenario,
		quantity,
		member: null
	});
	const labelOf = (name: string) => findQuantity(workbook, name)?.label ?? name;
	const inRows = mapping.columns.flatMap(({ meaning }) =>
		meaning.is === 'member' ? [meaning.of] : []
	);
	const ofAll = (mapping.all ?? []).map(({ of }) => of);
	const fitting = new Set(quantitiesFor(workbook, [...inRows, ...ofAll]).map(({ name }) => name));
	const options = [
		...(now.is === 'asked'
			? [
					option(now, texts.chooseWhatItHolds),
					...now.between.map((name) => option(valueOf(name), labelOf(name), texts.itMayBe))
				]
			: []),
		option({ is: 'nothing' }, texts.leftOut),
		...workbook.sets.map(({ name, label }) =>
			option({ is: 'member', of: name }, texts.which(label.toLowerCase()), texts.namesTheThing)
		),
		...inRows.map((of) => option({ is: 'label', of }, texts.labelOfNew, texts.namesTheThing)),
		option({ is: 'quantity' }, texts.nameOfTheQuantity, texts.namesTheThing),
		option({ is: 'members' }, texts.membersTogether, texts.namesTheThing),
		option({ is: 'unit' }, texts.unitOfTheRow, texts.namesTheThing),
		...workbook.sheets.flatMap(({ title, quantities }) =>
			quantities
				.filter(({ name }) => fitting.has(name))
				.map((quantity) => ({
					...quantityOption(quantity, texts.valuesOnSheet(title)),
					value: textOf(valueOf(quantity.name))
				}))
		),
		...workbook.scenarios.map(({ id, title }) =>
			option(
				{ is: 'value', scenario: id, quantity: null, member: null },
				texts.valueIn(title),
				texts.valuesOfTheRow
			)
		),
		...(member
			? workbook.scenarios.map(({ id, title }) =>
					option(
						{ is: 'value', scenario: id, quantity: null, member },
						texts.valueOfIn(member.id, title),
						texts.valuesOfTheRow
					)
				)
			: [])
	];
	const here = textOf(now);
	if (options.some(({ value }) => value === here)) return once(options);
	const words =
		now.is === 'member'
			? texts.which(now.of)
			: now.is === 'value' && now.quantity !== null
				? labelOf(now.quantity)
				: now.is;
	return once([...options, option(now, words, texts.namesTheThing)]);
}

/** What may be meant stands first, and not a second time on its sheet. */
const once = (options: readonly ListOption[]): ListOption[] =>
	options.filter(({ value }, at) => options.findIndex((one) => one.value === value) === at);

/** The mapping with one column meaning something else; only one column can name the quantity, the members or a set. */
export function withMeaning(mapping: Mapping, column: number, meaning: Meaning): Mapping {
	const isSame = (one: Meaning) =>
		(meaning.is === 'quantity' || meaning.is === 'members' || meaning.is === 'member') &&
		textOf(one) === textOf(meaning);
	return withColumns(mapping, (each, i) =>
		i === column
			? { ...each, meaning }
			: isSame(each.meaning)
				? { ...each, meaning: NOTHING }
				: each
	);
}

const NOTHING: Meaning = { is: 'nothing' };

export const withColumn = (mapping: Mapping, column: number, part: Partial<Column>): Mapping =>
	withColumns(mapping, (each, i) => (i === column ? { ...each, ...part } : each));

const withColumns = (mapping: Mapping, change: (column: Column, i: number) => Column): Mapping => ({
	...mapping,
	columns: mapping.columns.map(change)
});
