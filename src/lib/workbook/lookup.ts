/**
 * Finding things in a workbook by name without walking it each time. The maps belong to the parts they
 * were made from, so that an edit which leaves a part alone leaves its map alone too.
 */
import type {
	Change,
	Picture,
	Quantity,
	Relation,
	Scenario,
	SetDefinition,
	Sheet,
	Workbook
} from './schema';
import { pairKey } from './axes';
import { findFrozen } from './frozen';
import { kept } from './kept';

export interface QuantityPlace {
	readonly quantity: Quantity;
	readonly sheet: number;
	readonly index: number;
}

const placesOf = kept((sheets: readonly Sheet[]) => {
	const places = new Map<string, QuantityPlace>();
	sheets.forEach(({ quantities }, sheet) =>
		quantities.forEach((quantity, index) => {
			if (!places.has(quantity.name)) places.set(quantity.name, { quantity, sheet, index });
		})
	);
	return places as ReadonlyMap<string, QuantityPlace>;
});
const setsByName = kept(
	(sets: readonly SetDefinition[]): ReadonlyMap<string, SetDefinition> =>
		new Map(sets.map((set) => [set.name, set]))
);
const scenariosById = kept(
	(scenarios: readonly Scenario[]): ReadonlyMap<string, Scenario> =>
		new Map(scenarios.map((scenario) => [scenario.id, scenario]))
);
const relationsByName = kept((relations: readonly Relation[]): ReadonlyMap<string, Relation> => {
	const byName = new Map<string, Relation>();
	for (const relation of relations)
		if (!byName.has(relation.name)) byName.set(relation.name, relation);
	return byName;
});

/** Every quantity, by name. */
export const quantityPlaces = (workbook: Workbook) => placesOf(workbook.sheets);
export const findQuantity = (workbook: Workbook, name: string): Quantity | undefined =>
	placesOf(workbook.sheets).get(name)?.quantity;
export const findSet = (workbook: Workbook, name: string): SetDefinition | undefined =>
	setsByName(workbook.sets).get(name);
export const findRelation = (workbook: Workbook, name: string): Relation | undefined =>
	workbook.relations && relationsByName(workbook.relations).get(name);
export const findScenario = (workbook: Workbook, id: string): Scenario | undefined =>
	scenariosById(workbook.scenarios).get(id);
/** What a scenario, or a frozen copy, is called; its id where there is none of it. */
export const scenarioTitle = (workbook: Workbook, id: string): string =>
	(findScenario(workbook, id) ?? findFrozen(workbook, id))?.title ?? id;

/** What can stand in a column beside the base: scenarios, then frozen copies. */
export const columnsOf = ({
	scenarios,
	frozen = []
}: Workbook): readonly { readonly id: string; readonly title: string }[] => [
	...scenarios,
	...frozen
];

/** Place of each member in its set, by id. */
export const memberPlaces = kept(
	(set: SetDefinition): ReadonlyMap<string, number> =>
		new Map(set.members.map((member, place) => [member.id, place]))
);

/** The pairs of a relation, by `pairKey`. */
export const pairsOf = kept(
	(relation: Relation): ReadonlySet<string> => new Set(relation.pairs.map(pairKey))
);

/** A scenario's changes, by quantity. */
export const changesOf = kept(
	(scenario: Scenario): ReadonlyMap<string, Change> =>
		new Map(scenario.changes.map((change) => [change.quantity, change]))
);

/** The first scenario: the one whose values stand in the quantities. */
export function baseOf(workbook: Workbook): Scenario {
	const base = workbook.scenarios[0];
	if (!base) throw new Error('A workbook without a base scenario was let through.');
	return base;
}

/** The first picture of a kind. */
export const pictureOf = <K extends Picture['kind']>(
	{ pictures = [] }: Pick<Workbook, 'pictures'>,
	kind: K
): Extract<Picture, { kind: K }> | undefined =>
	pictures.find((picture): picture is Extract<Picture, { kind: K }> => picture.kind === kind);

/** The scenario that quotes stand on, whichever is shown: the base where the workbook names no other, or one that is not there. */
export function quotesStandOn(workbook: Workbook): string {
	const { scenarios } = workbook;
	const named = pictureOf(workbook, 'quote')?.scenario;
	return (scenarios.find(({ id }) => id === named) ?? scenarios[0])?.id ?? 'base';
}

/** The set whose members a choice is between; undefined for what is no choice. */
export function setOfChoice(
	workbook: Workbook,
	name: string | undefined
): SetDefinition | undefined {
	const type = name === undefined ? undefined : findQuantity(workbook, name)?.type;
	return typeof type === 'object' ? findSet(workbook, type.member_of) : undefined;
}

/** The quantities whose values are members of a set. */
export const choicesOf = (workbook: Workbook, set: string): Quantity[] =>
	[...quantityPlaces(workbook).values()].flatMap(({ quantity }) =>
		typeof quantity.type === 'object' && quantity.type.member_of === set ? [quantity] : []
	);

/** Every name that means something in a formula: quantities, sets and their members, scenarios and frozen copies. */
export const namesTaken = (workbook: Workbook): Set<string> =>
	new Set([
		...quantityPlaces(workbook).keys(),
		...workbook.sets.flatMap(({ name, members }) => [name, ...members.map(({ id }) => id)]),
		...[...workbook.scenarios, ...(workbook.frozen ?? [])].map(({ id }) => id)
	]);
