/**
 * What a study asks about that the workbook does not have (any more), or that cannot be asked: said on
 * the study's page instead of an answer. The study itself stays in the file, so that bringing the
 * quantity back brings the study back.
 */
import { axesOf } from './axes';
import { cellGuide, hasInputs, isInput, misplaced } from './cells';
import { findFrozen } from './frozen';
import { findQuantity, findScenario, findSet, memberPlaces } from './lookup';
import type { Change, Quantity, Workbook } from './schema';
import { partsAt, partsOf, type StudyCells } from './study-parts';
import type { Study } from './study-schema';

export interface StudyGap {
	readonly code:
		| 'unknown-quantity'
		| 'unknown-scenario'
		| 'unknown-member'
		| 'which-member'
		| 'not-a-number'
		| 'not-an-input'
		| 'misplaced-value';
	/** One sentence or two: what is missing, and what to do. */
	readonly message: string;
}

/** In the order of the study's settings; none where it can be run. */
export function studyGaps(workbook: Workbook, study: Study): StudyGap[] {
	const gaps: StudyGap[] = [];
	const { moved, named, changes } = partsOf(study);
	const [asked, ...others] = resultsOf(study);
	checkResult(gaps, workbook, asked!);
	for (const id of scenariosOf(study))
		if (!findScenario(workbook, id) && !(takesCopies(study) && findFrozen(workbook, id)))
			gaps.push({
				code: 'unknown-scenario',
				message: `There is no scenario "${id}" any more. Choose another, or bring it back.`
			});
	for (const { part } of partsAt<StudyCells>(study, moved)) checkInput(gaps, workbook, part, true);
	for (const { part } of partsAt<StudyCells>(study, named)) checkInput(gaps, workbook, part, false);
	for (const other of others) checkResult(gaps, workbook, other);
	for (const { part, within } of partsAt<Change>(study, changes)) {
		const quantity = inputNamed(gaps, workbook, part.quantity);
		const guide = quantity && cellGuide(workbook, quantity);
		const wrong = guide && [...misplaced(guide, part.value)][0];
		if (wrong)
			gaps.push({
				code: 'misplaced-value',
				message: `${within.join(', ')}: ${part.quantity} ${wrong.problem.message}. ${wrong.problem.remedy}`
			});
	}
	return gaps;
}

/** Whether frozen copies may stand in place of scenarios: what is asked is a difference, and nothing is moved in them. */
export const takesCopies = ({ kind }: Study): boolean => kind === 'bridge';

/** The scenarios that a study names. */
export const scenariosOf = (study: Study): string[] =>
	partsAt<string>(study, partsOf(study).scenarios).map(({ part }) => part);

/** The results that a study asks about, the one of its answer first. */
export const resultsOf = (study: Study): StudyCells[] => [
	study,
	...partsAt<StudyCells>(study, partsOf(study).results).map(({ part }) => part)
];

function checkResult(gaps: StudyGap[], workbook: Workbook, cells: StudyCells): void {
	const quantity = named(gaps, workbook, cells.quantity);
	if (!quantity) return;
	if (!isNumber(quantity))
		gaps.push({
			code: 'not-a-number',
			message: `${quantity.label} is not a number, so no study can be made of it. Choose a quantity that is one.`
		});
	const axes = axesOf(quantity);
	if ((cells.members?.length ?? 0) !== axes.length)
		gaps.push({
			code: 'which-member',
			message:
				axes.length === 0
					? `${quantity.label} has one value. Take the members out.`
					: `${quantity.label} is per ${axes.map(({ set }) => set).join(' and ')}. Say for which ${axes.map(({ set }) => set).join(' and ')}.`
		});
	else checkMembers(gaps, workbook, quantity, cells.members ?? []);
}

function checkInput(
	gaps: StudyGap[],
	workbook: Workbook,
	cells: StudyCells,
	asNumber: boolean
): void {
	const quantity = inputNamed(gaps, workbook, cells.quantity);
	if (!quantity) return;
	if (asNumber && !isNumber(quantity)) {
		gaps.push({
			code: 'not-a-number',
			message: `${quantity.label} is not a number, so it cannot be moved over a range. Choose an input that is one.`
		});
		return;
	}
	const { members } = cells;
	if (members === undefined) return;
	const axes = axesOf(quantity);
	if (members.length !== axes.length) {
		gaps.push({
			code: 'which-member',
			message: `${quantity.label} is per ${axes.map(({ set }) => set).join(' and ') || 'nothing'}, and the study names ${members.length} members. Choose them anew.`
		});
		return;
	}
	if (!checkMembers(gaps, workbook, quantity, members)) return;
	const guide = cellGuide(workbook, quantity);
	const exact = members.filter((member) => member !== null);
	if (guide && exact.length === axes.length && !isInput(guide, exact))
		gaps.push({
			code: 'not-an-input',
			message: `${quantity.label} of ${exact.join(', ')} follows a formula. Choose an input.`
		});
}

/** Whether all are there. */
function checkMembers(
	gaps: StudyGap[],
	workbook: Workbook,
	quantity: Quantity,
	members: readonly (string | null)[]
): boolean {
	const before = gaps.length;
	axesOf(quantity).forEach(({ set: name }, axis) => {
		const set = findSet(workbook, name);
		const id = members[axis];
		if (!set || typeof id !== 'string' || memberPlaces(set).has(id)) return;
		gaps.push({
			code: 'unknown-member',
			message: `${set.label} has no member ${id} any more. Choose another, or bring it back.`
		});
	});
	return gaps.length === before;
}

function inputNamed(gaps: StudyGap[], workbook: Workbook, name: string): Quantity | undefined {
	const quantity = named(gaps, workbook, name);
	if (!quantity || (hasInputs(quantity) && !quantity.fixed)) return quantity;
	gaps.push({
		code: 'not-an-input',
		message: quantity.fixed
			? `${quantity.label} is fixed with the structure, so no study moves it. Choose an input that is not.`
			: `${quantity.label} follows a formula, and a study moves inputs only. Choose an input.`
	});
	return undefined;
}

function named(gaps: StudyGap[], workbook: Workbook, name: string): Quantity | undefined {
	const quantity = findQuantity(workbook, name);
	if (!quantity)
		gaps.push({
			code: 'unknown-quantity',
			message: `There is no quantity ${name} any more. Choose another, or bring it back.`
		});
	return quantity;
}

const isNumber = ({ type }: Quantity): boolean => type === undefined || type === 'number';
