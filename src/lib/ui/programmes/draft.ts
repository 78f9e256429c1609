/** A programme while it is being written: what may be chosen for each of its parts, and changes to it. */
import { axesOf } from '$lib/workbook/axes';
import { hasInputs } from '$lib/workbook/cells';
import { findQuantity } from '$lib/workbook/lookup';
import type { Programme } from '$lib/workbook/programme-schema';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { quantityOptions, type ListOption } from '../choose/options';

const isNumber = ({ type = 'number' }: Quantity) => type === 'number';
const MOST_EACH = 3;

/** What shall be largest or smallest: a number that follows a formula. */
export const objectiveChoices = (workbook: Workbook): ListOption[] =>
	quantityOptions(
		workbook,
		(quantity) =>
			isNumber(quantity) && quantity.formula !== undefined && axesOf(quantity).length <= MOST_EACH
	);

/** What may be decided: inputs of numbers or of yes and no that may change. */
export const decisionChoices = (workbook: Workbook, { decisions }: Programme): ListOption[] =>
	quantityOptions(
		workbook,
		(quantity) =>
			quantity.formula === undefined &&
			!quantity.fixed &&
			typeof quantity.type !== 'object' &&
			!decisions.includes(quantity.name)
	);

/** What may be required: yes or no by a formula. */
export const requirementChoices = (workbook: Workbook, { constraints }: Programme): ListOption[] =>
	quantityOptions(
		workbook,
		(quantity) =>
			quantity.type === 'yes_no' &&
			quantity.formula !== undefined &&
			!constraints.includes(quantity.name)
	);

/** Where the worth of one more of a requirement may go: inputs of numbers per the same sets. */
export function worthChoices(workbook: Workbook, constraint: string): ListOption[] {
	const required = findQuantity(workbook, constraint);
	if (!required) return [];
	const axes = axisNames(required);
	return quantityOptions(
		workbook,
		(quantity) => isNumber(quantity) && hasInputs(quantity) && axisNames(quantity) === axes
	);
}

const axisNames = (quantity: Quantity) =>
	axesOf(quantity)
		.map(({ name }) => name)
		.join(' ');

/** A draft for a workbook that has none by that name. */
export function freshProgramme(workbook: Workbook, title: string): Programme {
	return { name: freeName(workbook), title, maximise: '', decisions: [], constraints: [] };
}

function freeName({ programmes = [] }: Workbook): string {
	const isFree = (name: string) => programmes.every((one) => one.name !== name);
	for (let next = programmes.length + 1; ; next++)
		if (isFree(`programme_${next}`)) return `programme_${next}`;
}

/** The sets of the objective are those that it is solved apart for. */
export function withObjective(
	workbook: Workbook,
	{ maximise: _maximise, minimise: _minimise, each: _each, ...rest }: Programme,
	way: 'maximise' | 'minimise',
	name: string
): Programme {
	const quantity = findQuantity(workbook, name);
	const each = quantity ? axesOf(quantity).map(({ set }) => set) : [];
	return { ...rest, ...(each.length > 0 && { each }), [way]: name };
}

export const withDecision = (programme: Programme, name: string): Programme => ({
	...programme,
	decisions: [...programme.decisions, name]
});

export const withoutDecision = (programme: Programme, name: string): Programme => ({
	...programme,
	decisions: programme.decisions.filter((one) => one !== name)
});

export const withRequirement = (programme: Programme, name: string): Programme => ({
	...programme,
	constraints: [...programme.constraints, name]
});

/** Whatever was filled with its worth is so no more. */
export function withoutRequirement(programme: Programme, name: string): Programme {
	return {
		...withWorth(programme, name, ''),
		constraints: programme.constraints.filter((one) => one !== name)
	};
}

/** The quantity that is filled with the worth of one more of a requirement; an empty name for none. */
export function withWorth(programme: Programme, constraint: string, quantity: string): Programme {
	const { shadow_prices, ...rest } = programme;
	const others = Object.entries(shadow_prices ?? {}).filter(
		([name, of]) => of !== constraint && name !== quantity
	);
	const next = quantity === '' ? others : [...others, [quantity, constraint] as const];
	return next.length === 0 ? rest : { ...rest, shadow_prices: Object.fromEntries(next) };
}

export const worthOf = ({ shadow_prices }: Programme, constraint: string): string =>
	Object.entries(shadow_prices ?? {}).find(([, of]) => of === constraint)?.[0] ?? '';

/** What is still to be said before it can be kept: the first part that is missing; null where all is there. */
export function missingPart(programme: Programme): 'title' | 'objective' | 'decisions' | null {
	if (programme.title.trim() === '') return 'title';
	if (!(programme.maximise || programme.minimise)) return 'objective';
	return programme.decisions.length === 0 ? 'decisions' : null;
}
