/**
 * Sets and relations: their units can be read, their members and pairs exist.
 */
import type { UnitSystem } from '$lib/units/system';
import { axesOf, pairKey } from '../axes';
import { hasInputs } from '../cells';
import { findQuantity, findSet, memberPlaces } from '../lookup';
import type { SetDefinition } from '../schema';
import type { Findings } from './findings';
import { meant } from './names';
import { checkMonths } from './months';
import { asClause, checkUnit, unknownSet } from './units-and-sets';

export function checkSets(findings: Findings, units: UnitSystem): void {
	findings.workbook.sets.forEach((set, i) => {
		checkUnit(findings, units, set.number_unit, ['sets', i, 'number_unit']);
		if (set.spans !== undefined) {
			const result = units.parseAmount(set.spans);
			if (!result.ok)
				findings.add(
					['sets', i, 'spans'],
					'bad-unit',
					asClause(result.problem.message),
					'Write a number and a unit, like "1 year".'
				);
		}
		if (set.time !== undefined) checkMonths(findings, set, i);
		if (set.present !== undefined) checkPresent(findings, set, set.present, i);
		set.not_copied?.forEach((name, k) => checkNotCopied(findings, set, name, [i, k]));
		set.comes_with?.forEach((name, k) => checkComesWith(findings, set, name, [i, k]));
	});
}

function checkNotCopied(
	findings: Findings,
	set: SetDefinition,
	name: string,
	[i, k]: readonly [number, number]
): void {
	const quantity = findQuantity(findings.workbook, name);
	const path = ['sets', i, 'not_copied', k];
	const remedy = `Name a number that is entered per ${set.name}.`;
	if (!quantity)
		findings.add(path, 'unknown-quantity', `there is no quantity named ${name}`, remedy);
	else if (
		(quantity.type ?? 'number') !== 'number' ||
		!hasInputs(quantity) ||
		!axesOf(quantity).some((axis) => axis.set === set.name)
	)
		findings.add(path, 'bad-not-copied', `${name} is no number entered per ${set.name}`, remedy);
}

function checkComesWith(
	findings: Findings,
	set: SetDefinition,
	name: string,
	[i, k]: readonly [number, number]
): void {
	const quantity = findQuantity(findings.workbook, name);
	const path = ['sets', i, 'comes_with', k];
	const remedy = `Name a number or a choice that is entered once, of no set, or one that is entered per ${set.name} alone.`;
	if (!quantity)
		findings.add(path, 'unknown-quantity', `there is no quantity named ${name}`, remedy);
	else if (
		quantity.type === 'yes_no' ||
		!hasInputs(quantity) ||
		axesOf(quantity).length > 1 ||
		axesOf(quantity).some((axis) => axis.set !== set.name)
	)
		findings.add(
			path,
			'bad-comes-with',
			`${name} is no number and no choice that is entered once, or per ${set.name} alone`,
			remedy
		);
}

function checkPresent(findings: Findings, set: SetDefinition, name: string, i: number): void {
	const quantity = findQuantity(findings.workbook, name);
	const path = ['sets', i, 'present'];
	const remedy = `Name a yes/no quantity per ${set.name}, and per nothing else.`;
	if (!quantity)
		findings.add(path, 'unknown-quantity', `there is no quantity named ${name}`, remedy);
	else if (
		quantity.type !== 'yes_no' ||
		quantity.per?.length !== 1 ||
		axesOf(quantity)[0]?.name !== set.name ||
		quantity.in?.length
	)
		findings.add(
			path,
			'bad-present',
			`${name} does not say yes or no for each ${set.name}`,
			remedy
		);
}

export function checkRelations(findings: Findings): void {
	const { workbook } = findings;
	(workbook.relations ?? []).forEach((relation, i) => {
		const members = relation.sets.map((name, k) => {
			const set = findSet(workbook, name);
			if (!set) unknownSet(findings, ['relations', i, 'sets', k], name);
			return set && memberPlaces(set);
		});
		const seen = new Set<string>();
		relation.pairs.forEach((pair, k) => {
			const path = ['relations', i, 'pairs', k];
			if (pair.length !== relation.sets.length)
				findings.add(
					path,
					'wrong-pair',
					`(${pair.join(', ')}) has ${pair.length} members, and ${relation.name} relates ${relation.sets.length} sets`,
					`Write one member of each of ${relation.sets.join(', ')}.`
				);
			pair.forEach((id, p) => {
				if (members[p] && !members[p].has(id))
					findings.add(
						[...path, p],
						'unknown-member',
						`${relation.sets[p]} has no member "${id}"`,
						meant(id, members[p].keys(), 'Add the member, or take the pair out.')
					);
			});
			if (seen.has(pairKey(pair)))
				findings.add(
					path,
					'duplicate-pair',
					`(${pair.join(', ')}) stands here twice`,
					'Take one of them out.'
				);
			seen.add(pairKey(pair));
		});
	});
}
