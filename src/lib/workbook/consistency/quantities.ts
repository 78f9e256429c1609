/**
 * Quantities: what they name exists, and what they say of themselves fits together.
 */
import type { UnitSystem } from '$lib/units/system';
import { axesOf, relationAxes } from '../axes';
import { caseOf, cellGuide, hasInputs, misplaced, OTHERS } from '../cells';
import { findQuantity, findRelation, findSet, memberPlaces, quantityPlaces } from '../lookup';
import { FIELD_WORDS } from '../quantity-words';
import type { Quantity, Range } from '../schema';
import type { Findings } from './findings';
import { checkQuantityName } from './front-names';
import { meant } from './names';
import { checkPath } from './paths';
import { checkUnit, unknownSet } from './units-and-sets';

export function checkQuantities(findings: Findings, units: UnitSystem): void {
	findings.workbook.sheets.forEach((sheet, i) => {
		if (sheet.headline !== undefined && !findQuantity(findings.workbook, sheet.headline))
			findings.add(
				['sheets', i, 'headline'],
				'unknown-quantity',
				`there is no quantity named ${sheet.headline}`,
				meant(sheet.headline, quantityPlaces(findings.workbook).keys(), 'Name one, or take it out.')
			);
		sheet.quantities.forEach((quantity, k) =>
			checkQuantity(findings, units, quantity, ['sheets', i, 'quantities', k])
		);
	});
}

function checkQuantity(
	findings: Findings,
	units: UnitSystem,
	quantity: Quantity,
	path: readonly PropertyKey[]
): void {
	const { workbook } = findings;
	const { type = 'number', unit, value } = quantity;
	const axes = axesOf(quantity);
	axes.forEach((axis, p) => {
		if (!findSet(workbook, axis.set)) unknownSet(findings, [...path, 'per', p], axis.set);
	});
	if (typeof type === 'object' && !findSet(workbook, type.member_of))
		unknownSet(findings, [...path, 'type', 'member_of'], type.member_of);
	(quantity.in ?? []).forEach((name, p) => {
		const relation = findRelation(workbook, name);
		if (!relation)
			findings.add(
				[...path, 'in', p],
				'unknown-relation',
				`there is no relation named ${name}`,
				meant(
					name,
					(workbook.relations ?? []).map((relation) => relation.name),
					'Add it, or take it out.'
				)
			);
		else if (!relationAxes(axes, relation))
			findings.add(
				[...path, 'in', p],
				'relation-without-axis',
				`${name} relates ${relation.sets.join(' and ')}, and the quantity is not per all of these`,
				'Add the missing set to "per", or take the relation out.'
			);
	});
	if (unit !== undefined && type !== 'number')
		findings.add([...path, 'unit'], 'needless-unit', 'only a number has a unit', 'Take it out.');
	else checkUnit(findings, units, unit, [...path, 'unit']);
	checkMeaning(findings, quantity, path);
	checkCases(findings, quantity, path);
	checkPath(findings, quantity, path);
	const guide = cellGuide(workbook, quantity);
	if (value === undefined || !guide) return;
	for (const { at, problem } of misplaced(guide, value)) {
		if (findings.isFull) return;
		findings.add([...path, 'value', ...at], problem.code, problem.message, problem.remedy);
	}
}

/** What only makes sense for a number, a yes/no or an input. */
function checkMeaning(findings: Findings, quantity: Quantity, path: readonly PropertyKey[]): void {
	const { type = 'number', spread, check } = quantity;
	const add = (field: string, code: string, message: string, remedy: string) =>
		findings.add([...path, field], code, message, remedy);
	if (quantity.fixed && !hasInputs(quantity))
		add('fixed', 'fixed-formula', 'only an input can be fixed with the structure', 'Take it out.');
	for (const field of ['range', 'usual', 'spread', 'digits'] as const)
		if (quantity[field] !== undefined && type !== 'number')
			add(field, `needless-${field}`, `only a number has a ${FIELD_WORDS[field]}`, 'Take it out.');
	if (quantity.shown !== undefined && type !== 'number')
		add('shown', 'needless-shown', 'only a number is shown as a date or a year', 'Take it out.');
	else if (quantity.shown === 'date' && quantity.unit !== 'day')
		add('shown', 'date-unit', 'a date is a number of days', 'Give it the unit "day".');
	for (const field of ['range', 'usual'] as const) {
		const range: Range = quantity[field] ?? {};
		const least = Math.max(range.min ?? -Infinity, range.above ?? -Infinity);
		const most = Math.min(range.max ?? Infinity, range.below ?? Infinity);
		if (least > most)
			add(
				field,
				`empty-${field}`,
				`no number is ${least} or more and ${most} or less`,
				'Swap the two.'
			);
	}
	if (spread && !(spread.min <= spread.likely && spread.likely <= spread.max))
		add(
			'spread',
			'spread-order',
			`min ${spread.min}, likely ${spread.likely} and max ${spread.max} are not in rising order`,
			'Put them in rising order.'
		);
	if (check && typeof type === 'object')
		add('check', 'bad-check', 'a choice cannot be a check', 'Make it a yes/no or a number.');
	if (check?.tolerance !== undefined && type !== 'number')
		add('check', 'bad-check', 'only a number has a tolerance', 'Take the tolerance out.');
	if (quantity.caution && type !== 'yes_no')
		add('caution', 'bad-caution', 'only a yes/no quantity cautions', 'Give it the type "yes_no".');
	for (const field of ['beside', 'mended_by'] as const)
		quantity.caution?.[field]?.forEach((name, i) =>
			checkQuantityName(findings, [...path, 'caution', field, i], name)
		);
}

/** A formula by member has a case for each member, and no others. */
function checkCases(findings: Findings, quantity: Quantity, path: readonly PropertyKey[]): void {
	const { formula } = quantity;
	if (typeof formula !== 'object') return;
	const axis = axesOf(quantity).find(({ name }) => name === formula.by);
	if (!axis) {
		findings.add(
			[...path, 'formula', 'by'],
			'unknown-axis',
			`the quantity is not per ${formula.by}`,
			'Name one of the axes in "per".'
		);
		return;
	}
	const set = findSet(findings.workbook, axis.set);
	if (!set) return;
	for (const id of Object.keys(formula.cases))
		if (id !== OTHERS && !memberPlaces(set).has(id))
			findings.add(
				[...path, 'formula', 'cases', id],
				'unknown-member',
				`${set.name} has no member "${id}"`,
				meant(id, memberPlaces(set).keys(), 'Add the member, or take the case out.')
			);
	const without = set.members.find(({ id }) => caseOf(quantity, id) === undefined);
	if (without)
		findings.add(
			[...path, 'formula', 'cases'],
			'missing-case',
			`${without.id} has no case`,
			'Add a case for it ("input" for an entered value), or "*" for all others.'
		);
}
