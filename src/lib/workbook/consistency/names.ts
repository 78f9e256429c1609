/**
 * Names: each means one thing. Sets, axes, quantities and frozen copies share one namespace, because formulas call them
 * alike; a member that reads as a bare name may not clash with them.
 */
import { isName, nearest, RESERVED } from '$lib/formula/names';
import { parseAxis } from '../axes';
import { LIMITS } from '../schema';
import type { Findings } from './findings';

export function checkNames(findings: Findings): void {
	const { workbook } = findings;
	const owners = new Map<string, string>();
	const claim = (name: string, owner: string, path: readonly PropertyKey[]) => {
		const other = owners.get(name);
		if (RESERVED.has(name))
			findings.add(
				path,
				'reserved-word',
				`"${name}" is a word of the formula language`,
				'Choose another name.'
			);
		else if (other !== undefined)
			findings.add(
				path,
				'duplicate-name',
				other === owner
					? `there are two of the name ${name}`
					: `${name} is already the name of ${other}`,
				'Rename one of the two.'
			);
		else owners.set(name, owner);
	};

	workbook.sets.forEach((set, i) => claim(set.name, 'a set', ['sets', i, 'name']));
	let count = 0;
	workbook.sheets.forEach(({ quantities }, i) =>
		quantities.forEach((quantity, k) => {
			claim(quantity.name, 'a quantity', ['sheets', i, 'quantities', k, 'name']);
			if (++count === LIMITS.quantities + 1)
				findings.add(
					['sheets', i, 'quantities', k],
					'too-many',
					`a workbook holds at most ${LIMITS.quantities} quantities`,
					'Put the rest into another workbook.'
				);
		})
	);
	checkAxisNames(findings, owners);
	(workbook.frozen ?? []).forEach(({ id }, i) => claim(id, 'a frozen copy', ['frozen', i, 'id']));
	checkMembers(findings, owners);
	unique(findings, 'relation', workbook.relations ?? [], ({ name }) => name, ['relations']);
	unique(findings, 'scenario', workbook.scenarios, ({ id }) => id, ['scenarios']);
	unique(findings, 'unit', workbook.units ?? [], ({ symbol }) => symbol, ['units']);
}

/** An axis of its own name ("from: product") may stand in many quantities, but always for one set. */
function checkAxisNames(findings: Findings, owners: Map<string, string>): void {
	const setOfAxis = new Map<string, string>();
	findings.workbook.sheets.forEach(({ quantities }, i) =>
		quantities.forEach(({ per }, k) => {
			const within = new Set<string>();
			(per ?? []).forEach((text, p) => {
				const path = ['sheets', i, 'quantities', k, 'per', p];
				const { name, set } = parseAxis(text);
				if (within.has(name))
					findings.add(
						path,
						'duplicate-axis',
						`${name} is named twice`,
						`Give one a name of its own: "from: ${set}".`
					);
				within.add(name);
				if (name === set) return;
				const before = setOfAxis.get(name);
				setOfAxis.set(name, before ?? set);
				if (!isName(name) || RESERVED.has(name))
					findings.add(
						path,
						'bad-axis',
						`"${name}" cannot name an axis`,
						'Write a letter first, then letters, digits or underscores; words of the formula language are taken.'
					);
				else if (owners.has(name) && before === undefined)
					findings.add(
						path,
						'duplicate-name',
						`${name} is already the name of ${owners.get(name)}`,
						'Give the axis another name.'
					);
				else if (before !== undefined && before !== set)
					findings.add(
						path,
						'duplicate-name',
						`${name} is elsewhere an axis of ${before}, here of ${set}`,
						'Give one of the two axes another name.'
					);
			});
		})
	);
	for (const name of setOfAxis.keys()) if (!owners.has(name)) owners.set(name, 'an axis');
}

function checkMembers(findings: Findings, owners: ReadonlyMap<string, string>): void {
	findings.workbook.sets.forEach((set, i) => {
		const ids = new Set<string>();
		set.members.forEach(({ id }, k) => {
			const path = ['sets', i, 'members', k, 'id'];
			if (ids.has(id))
				findings.add(
					path,
					'duplicate-member',
					`${set.name} has two members "${id}"`,
					'Rename or remove one of them.'
				);
			ids.add(id);
			if (id === '*')
				findings.add(path, 'bad-member', '"*" stands for all other members', 'Choose another id.');
			else if (owners.has(id))
				findings.add(
					path,
					'member-clash',
					`"${id}" is also the name of ${owners.get(id)}, and a formula could not tell which is meant`,
					'Rename one of the two.'
				);
		});
	});
}

function unique<T>(
	findings: Findings,
	word: string,
	list: readonly T[],
	nameOf: (entry: T) => string,
	path: readonly PropertyKey[]
): void {
	const seen = new Set<string>();
	list.forEach((entry, i) => {
		const name = nameOf(entry);
		if (seen.has(name))
			findings.add(
				[...path, i],
				`duplicate-${word}`,
				`there are two ${word}s "${name}"`,
				'Rename or remove one of them.'
			);
		seen.add(name);
	});
}

/** A remedy for a name that means nothing: the nearest that does, looked for when it is read, or the given words. */
export const meant =
	(name: string, known: Iterable<string>, otherwise: string): (() => string) =>
	() => {
		const near = nearest(name, known);
		return near === undefined ? otherwise : `Did you mean ${near}? ${otherwise}`;
	};
