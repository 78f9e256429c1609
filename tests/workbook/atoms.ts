/**
 * A workbook as a flat list of everything that a person can change in it, written apart from the merge so that it
 * can judge the merge: place to JSON text.
 */
import type { Values, Workbook } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';

export type Atoms = Map<string, string>;

export function atomsOf(workbook: Workbook): Atoms {
	const atoms: Atoms = new Map();
	const put = (place: unknown[], value: unknown) => atoms.set(JSON.stringify(place), sorted(value));
	const fields = (place: unknown[], content: object) => {
		put(place, true);
		for (const [field, value] of Object.entries(content)) put([...place, field], value);
	};
	const values = (place: unknown[], tree: Values | undefined) => {
		for (const { at, value } of flatten(tree)) put([...place, at], value);
	};
	const { sets, relations, sheets, scenarios, studies, programmes, reviewed, ...others } = workbook;
	const { tables, calibrations, frozen, quotes, letterhead, ...rest } = others;
	for (const [field, value] of Object.entries(rest)) put(['top', field], value);
	for (const tick of reviewed ?? []) put(['tick', tick.id], tick);
	for (const table of tables ?? [])
		for (const [field, content] of Object.entries(table))
			put(['table', table.title, field], content);
	for (const fit of calibrations ?? [])
		for (const [field, content] of Object.entries(fit)) put(['fit', fit.name, field], content);
	for (const copy of frozen ?? [])
		for (const [field, content] of Object.entries(copy)) put(['frozen', copy.id, field], content);
	for (const [field, content] of Object.entries(letterhead ?? {}))
		put(['letterhead', field], content);
	for (const { items, ...quote } of quotes ?? []) {
		fields(['quote', quote.id], quote);
		for (const { entries, grounds, ...item } of items) {
			fields(['item', quote.id, item.id], item);
			for (const entry of entries) fields(['entry', quote.id, item.id, entry.quantity], entry);
			if (grounds) put(['grounds', quote.id, item.id], grounds);
		}
	}
	for (const study of studies ?? [])
		for (const [field, content] of Object.entries(study))
			if (field !== 'ran') put(['study', study.name, field], content);
	for (const programme of programmes ?? [])
		for (const [field, content] of Object.entries(programme))
			put(['programme', programme.name, field], content);
	for (const { members, ...set } of sets) {
		fields(['set', set.name], set);
		for (const member of members) fields(['member', set.name, member.id], member);
	}
	for (const { pairs, ...relation } of relations ?? []) {
		fields(['relation', relation.name], relation);
		for (const pair of pairs) put(['pair', relation.name, pair], true);
	}
	for (const { quantities, ...sheet } of sheets) {
		fields(['sheet', sheet.title], sheet);
		for (const { value, ...quantity } of quantities) {
			put(['sheet of', quantity.name], sheet.title);
			for (const [field, content] of Object.entries(quantity))
				put(['field', quantity.name, field], content);
			values(['value', quantity.name], value);
		}
	}
	for (const { changes, ...scenario } of scenarios) {
		fields(['scenario', scenario.id], scenario);
		for (const { value, ...change } of changes) {
			if (change.note !== undefined) put(['change', scenario.id, change.quantity], change.note);
			values(['scenario value', scenario.id, change.quantity], value);
		}
	}
	return atoms;
}

/** The places that differ between two lists. */
export function changedPlaces(before: Atoms, after: Atoms): string[] {
	return [...new Set([...before.keys(), ...after.keys()])].filter(
		(place) => before.get(place) !== after.get(place)
	);
}

function sorted(value: unknown): string {
	return JSON.stringify(value, (_key, inner: unknown) =>
		typeof inner === 'object' && inner !== null && !Array.isArray(inner)
			? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
			: inner
	);
}
