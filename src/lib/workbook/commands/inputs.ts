/**
 * Entering values: one cell or a hundred thousand, in the base or in a scenario, in linear time.
 *
 * The inverse gives back exactly what stood there, the order and the notes of changes included.
 */
import { cellGuide, placeProblem, scalarProblem, type CellGuide } from '../cells';
import { changesOf, findQuantity, findScenario } from '../lookup';
import type { Change, Scenario, Workbook } from '../schema';
import { valueAt, withValues } from '../values';
import {
	refused,
	type ChangePlace,
	type Command,
	type CommandProblem,
	type InputEntry
} from './command';
import { mapQuantities, withValue } from './parts';

type SetInputs = Extract<Command, { kind: 'set_inputs' }>;

export type InputResult =
	| {
			readonly ok: true;
			readonly workbook: Workbook;
			readonly inverse: SetInputs;
	  }
	| { readonly ok: false; readonly problem: CommandProblem };

export function setInputs(workbook: Workbook, command: SetInputs): InputResult {
	const scenario = findScenario(workbook, command.scenario);
	if (!scenario)
		return refused(
			'unknown-scenario',
			`There is no scenario "${command.scenario}". Choose one of the workbook's scenarios.`
		);
	const isBase = scenario === workbook.scenarios[0];
	const byQuantity = new Map<string, { guide: CellGuide; entries: InputEntry[] }>();
	for (const given of command.entries) {
		let group = byQuantity.get(given.quantity);
		if (!group) {
			const quantity = findQuantity(workbook, given.quantity);
			const guide = quantity && cellGuide(workbook, quantity);
			if (!guide)
				return refused(
					'unknown-quantity',
					`There is no quantity "${given.quantity}" to enter a value for. Choose another cell.`
				);
			if (!isBase && quantity.fixed)
				return refused(
					'change-of-fixed',
					`${quantity.label} is fixed with the structure, and no scenario changes it. Change it in ${workbook.scenarios[0]?.title}.`
				);
			byQuantity.set(given.quantity, (group = { guide, entries: [] }));
		}
		// Saved text has no minus zero.
		const entry = Object.is(given.value, -0) ? { ...given, value: 0 } : given;
		const problem = entryProblem(group.guide, entry);
		if (problem) return refused(problem.code, problem.message);
		group.entries.push(entry);
	}

	const old: InputEntry[] = [];
	for (const [name, { guide, entries }] of byQuantity) {
		const stood = isBase ? guide.quantity.value : changesOf(scenario).get(name)?.value;
		// Of several entries for one cell the last holds; all of them give back the same value.
		for (const { at } of entries) old.push({ quantity: name, at, value: valueAt(stood, at) });
	}
	const inverse: SetInputs = { kind: 'set_inputs', scenario: scenario.id, entries: old };
	if (isBase) {
		const next = mapQuantities(workbook, (quantity) => {
			const group = byQuantity.get(quantity.name);
			return group ? withValue(quantity, withValues(quantity.value, group.entries)) : quantity;
		});
		return { ok: true, workbook: next, inverse };
	}
	const { changes, removed } = editedChanges(scenario, byQuantity, command.places ?? []);
	const scenarios = workbook.scenarios.map((one) => (one === scenario ? { ...one, changes } : one));
	return {
		ok: true,
		workbook: { ...workbook, scenarios },
		inverse: removed.length > 0 ? { ...inverse, places: removed } : inverse
	};
}

function entryProblem(guide: CellGuide, { at, value }: InputEntry): CommandProblem | null {
	const problem =
		placeProblem(guide, at) ?? (value === undefined ? null : scalarProblem(guide, value));
	if (!problem) return null;
	const where = at.length > 0 ? ` of ${at.join(', ')}` : '';
	return {
		code: problem.code,
		message: `${guide.quantity.label}${where}: ${problem.message}. ${problem.remedy}`
	};
}

/** The scenario's changes after the entries; those left without a value go, and `removed` tells of them. */
function editedChanges(
	scenario: Scenario,
	byQuantity: ReadonlyMap<string, { readonly entries: readonly InputEntry[] }>,
	places: readonly ChangePlace[]
): { changes: Change[]; removed: ChangePlace[] } {
	const removed: ChangePlace[] = [];
	const changes: Change[] = [];
	scenario.changes.forEach((change, index) => {
		const group = byQuantity.get(change.quantity);
		const value = group ? withValues(change.value, group.entries) : change.value;
		if (value !== undefined) changes.push(value === change.value ? change : { ...change, value });
		else removed.push({ quantity: change.quantity, index, note: change.note });
	});
	const known = changesOf(scenario);
	const fresh = new Map<string, Change>();
	for (const [quantity, { entries }] of byQuantity) {
		if (known.has(quantity)) continue;
		const value = withValues(undefined, entries);
		if (value !== undefined) fresh.set(quantity, { quantity, value });
	}
	// Ascending, so that each place counts those before it.
	for (const { quantity, index, note } of [...places].sort((a, b) => a.index - b.index)) {
		const change = fresh.get(quantity);
		if (!change) continue;
		fresh.delete(quantity);
		changes.splice(index, 0, note === undefined ? change : { ...change, note });
	}
	changes.push(...fresh.values());
	return { changes, removed };
}
