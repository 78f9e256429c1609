/**
 * The front strip, the starting views and the pictures: every quantity, set and member that they draw
 * exists.
 */
import { axesOf } from '../axes';
import { findQuantity, findSet, memberPlaces, quantityPlaces } from '../lookup';
import { pictureQuantities, pictureSets, roleSetOf } from '../picture-names';
import type { Fact, Picture, SetDefinition } from '../schema';
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
	checkFacts(findings, ['front', 'facts'], front.facts);
}

function checkFacts(findings: Findings, at: readonly PropertyKey[], facts: readonly Fact[]): void {
	facts.forEach((fact, i) => {
		checkQuantityName(findings, [...at, i, 'quantity'], fact.quantity);
		for (const field of ['title', 'below', 'beside', 'without'] as const)
			checkTemplate(findings, [...at, i, field], fact[field] ?? '');
	});
}

function checkTemplate(findings: Findings, path: readonly PropertyKey[], text: string): void {
	for (const name of templateNames(text)) checkQuantityName(findings, path, name);
}

/** Starting views show what exists, and each has an id of its own. */
export function checkStarts(findings: Findings): void {
	const { starts = [], pictures = [] } = findings.workbook;
	const kinds = new Set(pictures.map(({ kind }) => kind as string));
	const ids = new Set<string>();
	starts.forEach((start, i) => {
		const path = ['starts', i];
		if (ids.has(start.id))
			findings.add(
				[...path, 'id'],
				'duplicate-start',
				`there are two starting views with the id ${start.id}`,
				'Rename one of the two.'
			);
		ids.add(start.id);
		checkFacts(findings, [...path, 'facts'], start.facts ?? []);
		start.findings.forEach((finding, k) => {
			const at = [...path, 'findings', k];
			if (finding.kind === 'figures') {
				checkTemplate(findings, [...at, 'title'], finding.title);
				finding.quantities.forEach((name, n) =>
					checkQuantityName(findings, [...at, 'quantities', n], name)
				);
			} else if (!kinds.has(finding.picture))
				findings.add(
					[...at, 'picture'],
					'unknown-picture',
					`the workbook has no picture of the kind "${finding.picture}"`,
					meant(finding.picture, kinds, 'Add the picture, or take this out.')
				);
		});
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
		checkPicture(findings, path, picture);
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

/** What one kind of picture asks of the quantities that it names. */
function checkPicture(findings: Findings, path: readonly PropertyKey[], picture: Picture): void {
	const { workbook } = findings;
	const setsOf = (name: string) => {
		const quantity = findQuantity(workbook, name);
		return quantity && axesOf(quantity).map(({ set }) => set);
	};
	if (picture.kind === 'capacity')
		picture.loads.forEach(({ load }, i) => {
			const sets = setsOf(load);
			if (sets && !(sets.length === 2 && sets.includes(picture.month)))
				findings.add(
					[...path, 'loads', i, 'load'],
					'picture-axes',
					`${load} is not per ${picture.month} and one other set`,
					`Name a load per resource and ${picture.month}.`
				);
		});
	if (picture.kind === 'patterns') {
		const set = findSet(workbook, picture.pattern);
		if (set && picture.against !== undefined)
			checkMember(findings, [...path, 'against'], set, picture.against);
		for (const [field, name] of [
			['metres', picture.metres],
			['cost', picture.cost],
			...picture.rows.map((row, i) => [['rows', i], row] as const)
		] as const) {
			const sets = setsOf(name);
			if (sets && !(sets.length === 1 && sets[0] === picture.pattern))
				findings.add(
					[...path, ...(typeof field === 'string' ? [field] : field)],
					'picture-axes',
					`${name} is not per ${picture.pattern} alone`,
					`Name a quantity per ${picture.pattern}.`
				);
		}
	}
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
