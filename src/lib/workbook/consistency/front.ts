/**
 * The front strip and the pictures: every quantity, set and member that they draw exists.
 */
import { findQuantity, findSet, memberPlaces, quantityPlaces } from '../lookup';
import { pictureQuantities, pictureSets, roleSetOf } from '../picture-names';
import type { SetDefinition } from '../schema';
import type { Findings } from './findings';
import { meant } from './names';

/** The names in braces of a text such as "{contribution_per_metre} a metre". */
export const templateNames = (text: string): string[] =>
	[...text.matchAll(/\{([^{}]*)\}/g)].map((match) => (match[1] ?? '').trim());

export function checkFront(findings: Findings): void {
	const { workbook } = findings;
	const { front } = workbook;
	if (!front) return;
	const subject = front.subject === undefined ? undefined : findSet(workbook, front.subject);
	if (front.subject !== undefined && !subject) noSet(findings, ['front', 'subject'], front.subject);
	if (front.first_subject !== undefined)
		checkMember(findings, ['front', 'first_subject'], subject, front.first_subject);
	front.facts.forEach((fact, i) => {
		const path = ['front', 'facts', i];
		checkQuantityName(findings, [...path, 'quantity'], fact.quantity);
		for (const field of ['title', 'below', 'beside', 'without'] as const)
			for (const name of templateNames(fact[field] ?? ''))
				checkQuantityName(findings, [...path, field], name);
	});
}

export function checkPictures(findings: Findings): void {
	const { workbook } = findings;
	(workbook.pictures ?? []).forEach((picture, i) => {
		const path = ['pictures', i];
		for (const [field, name] of pictureSets(picture))
			if (!findSet(workbook, name)) noSet(findings, [...path, ...field], name);
		for (const [field, name] of pictureQuantities(picture))
			checkQuantityName(findings, [...path, ...field], name);
		if (!('roles' in picture)) return;
		const named = roleSetOf(workbook, picture);
		const set = named === undefined ? undefined : findSet(workbook, named);
		if (picture.kind === 'cross_section' && findQuantity(workbook, picture.material) && !set)
			findings.add(
				[...path, 'material'],
				'not-a-choice',
				`${picture.material} does not hold a member of a set of materials`,
				'Name a choice.'
			);
		for (const id of Object.keys(picture.roles))
			if (set) checkMember(findings, [...path, 'roles', id], set, id);
	});
}

function checkQuantityName(findings: Findings, path: readonly PropertyKey[], name: string): void {
	if (findQuantity(findings.workbook, name)) return;
	findings.add(
		path,
		'unknown-quantity',
		`there is no quantity named "${name}"`,
		meant(name, quantityPlaces(findings.workbook).keys(), 'Correct the name, or take it out.')
	);
}

function checkMember(
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

function noSet(findings: Findings, path: readonly PropertyKey[], name: string): void {
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
