/** Scenarios that hold no other entries than another one, or choose what their names do not speak of. */
import { axesOf } from '$lib/workbook/axes';
import { changesOf, findQuantity, findSet } from '$lib/workbook/lookup';
import { inputAt, scenarioChain } from '$lib/workbook/scenario';
import type { Quantity, Scenario, Workbook } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import type { Line } from './line';
import { namedMembers } from './named';

export function* scenarioLines(workbook: Workbook): Generator<Line> {
	yield* sameLines(workbook);
	for (const quantity of choices(workbook))
		for (const scenario of workbook.scenarios.slice(1)) {
			const line = notAsNamed(workbook, quantity, scenario);
			if (line) yield line;
		}
}

/** A case that lost its one entry computes what another computes, and looks like a result. */
function* sameLines(workbook: Workbook): Generator<Line> {
	const known = new Map<string, Scenario>();
	for (const scenario of workbook.scenarios) {
		const entries = entriesBesideBase(workbook, scenario);
		const other = known.get(entries);
		if (!other) known.set(entries, scenario);
		else
			yield {
				...{ kind: 'same_entries', quantity: null, at: [], scenario: scenario.id },
				what: `Nothing is entered in it that ${other.title} does not hold as well`,
				speaksOf: entries
			};
	}
}

/** Every cell that differs from the base, whoever of the scenarios above entered it. */
function entriesBesideBase(workbook: Workbook, { id }: Scenario): string {
	const base = workbook.scenarios[0]!.id;
	const found = new Map<string, string>();
	for (const { changes } of scenarioChain(workbook, id))
		for (const { quantity, value } of changes)
			for (const { at } of flatten(value)) {
				const now = inputAt(workbook, id, quantity, at).value;
				const isOther = now !== inputAt(workbook, base, quantity, at).value;
				if (isOther) found.set([quantity, ...at].join(' '), String(now));
			}
	return [...found]
		.map(([cell, value]) => `${cell}=${value}`)
		.sort()
		.join('\n');
}

/** As many scenarios show by their names that a quantity chooses what they are about. */
const FEWEST = 2;

/** Yes/no quantities per one set by which scenarios choose members, and are named after them. */
function choices(workbook: Workbook): Quantity[] {
	const changed = new Set(
		workbook.scenarios.flatMap(({ changes }) => changes.map(({ quantity }) => quantity))
	);
	return [...changed].flatMap((name) => {
		const quantity = findQuantity(workbook, name);
		if (quantity?.type !== 'yes_no' || axesOf(quantity).length !== 1) return [];
		const named = workbook.scenarios.filter((scenario) =>
			chosenHere(quantity, scenario).some((id) =>
				namedMembers(membersOf(workbook, quantity), scenario.title).has(id)
			)
		);
		return named.length >= FEWEST ? [quantity] : [];
	});
}

const membersOf = (workbook: Workbook, quantity: Quantity) =>
	findSet(workbook, axesOf(quantity)[0]!.set)?.members ?? [];

const chosenHere = ({ name }: Quantity, scenario: Scenario): string[] =>
	flatten(changesOf(scenario).get(name)?.value).flatMap(({ at, value }) =>
		value === true ? [at[0]!] : []
	);

function notAsNamed(workbook: Workbook, quantity: Quantity, scenario: Scenario): Line | null {
	const members = membersOf(workbook, quantity);
	const isChosen = (id: string) =>
		inputAt(workbook, scenario.id, quantity.name, [id]).value === true;
	const named = namedMembers(members, scenario.title);
	const missing = members.find(({ id }) => named.has(id) && !isChosen(id));
	if (!missing) return null;
	const what = `Its name speaks of ${missing.label ?? missing.id}, which is not chosen in it`;
	return {
		...{ kind: 'not_as_named', quantity, at: [missing.id], scenario: scenario.id, what },
		speaksOf: `${scenario.title} ${members.filter(({ id }) => isChosen(id)).map(({ id }) => id)}`
	};
}
