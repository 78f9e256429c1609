/**
 * The front strip, the starting views and the pictures: every quantity, set and member that they draw
 * exists.
 */
import { findSet } from '../lookup';
import { pictureQuantities, pictureSets } from '../picture-names';
import { partsOf } from '../picture-parts';
import type { Fact } from '../schema';
import type { Findings } from './findings';
import { checkMember, checkQuantityName, noSet } from './front-names';
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
		const { check, roleSet } = partsOf(picture);
		check?.(findings, picture, path);
		const set = roleSet && findSet(workbook, roleSet(workbook, picture) ?? '');
		if (!set || !('roles' in picture)) return;
		for (const id of Object.keys(picture.roles))
			checkMember(findings, [...path, 'roles', id], set, id);
	});
}
