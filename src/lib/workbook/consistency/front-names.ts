/** That what the front, the starting views and the pictures name exists: quantities, sets and members. */
import { findQuantity, memberPlaces, quantityPlaces } from '../lookup';
import type { SetDefinition } from '../schema';
import type { Findings } from './findings';
import { meant } from './names';

export function checkQuantityName(
	findings: Findings,
	path: readonly PropertyKey[],
	name: string
): void {
	if (findQuantity(findings.workbook, name)) return;
	findings.add(
		path,
		'unknown-quantity',
		`there is no quantity named "${name}"`,
		meant(name, quantityPlaces(findings.workbook).keys(), 'Correct the name, or take it out.')
	);
}

export function checkMember(
	findings: Findings,
	path: readonly PropertyKey[],
	set: SetDefinition | undefined,
	id: string
): void {
	if (set && memberPlaces(set).has(id)) return;
	findings.add(
		path,
		'unknown-member',
		set ? `${set.name} has no member "${id}"` : `"${id}" is a member of no set named here`,
		set ? meant(id, memberPlaces(set).keys(), 'Correct it, or take it out.') : 'Name the set.'
	);
}

export function noSet(findings: Findings, path: readonly PropertyKey[], name: string): void {
	findings.add(
		path,
		'unknown-set',
		`there is no set named "${name}"`,
		meant(
			name,
			findings.workbook.sets.map((set) => set.name),
			'Add the set, or correct the name.'
		)
	);
}
