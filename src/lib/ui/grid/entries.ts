/**
 * What is typed into the grid, for one cell or for many at once: which cells take it, how each of them reads it, and the
 * command that writes it.
 */
import { cellAt, membersOf, type QuantityLayout } from '$lib/engine/layout';
import { ABSENT, OK } from '$lib/engine/state';
import type { Command, InputEntry } from '$lib/workbook/commands';
import { findFrozen } from '$lib/workbook/frozen';
import { pathsOf, stepEntries } from '$lib/workbook/paths';
import { inputAt, inputValues } from '$lib/workbook/scenario';
import type { Scalar } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { isTypedCell } from '$lib/engine/input-cell';
import { readEntry, type Entry, type FieldSpec } from '../entry';
import { fieldSpec } from '../field';
import type { QuantityRow } from '../rows';
import type { Session } from '../session.svelte';

/** One cell in one scenario that takes an entry. */
export interface Target {
	readonly quantity: QuantityLayout;
	readonly scenario: string;
	readonly at: readonly string[];
}

/** All of a row that take an entry in a scenario: of a folded row, each of its values that is not absent; what has a row of its own is meant as it stands. */
export function targetsOf(session: Session, row: QuantityRow, scenario: string): Target[] {
	const { layout, baseId, readOnly, results } = session;
	const { quantity } = row;
	if (!layout || readOnly || (quantity.quantity.fixed && scenario !== baseId)) return [];
	if (findFrozen(layout.workbook, scenario)) return [];
	const states = results.get(scenario)?.states;
	const found: Target[] = [];
	for (let cell = row.from; cell < row.to; cell++)
		if (
			(row.open === null || states?.[cell] !== ABSENT) &&
			isTypedCell(layout.workbook, quantity, cell)
		)
			found.push({ quantity, scenario, at: membersOf(layout, cell) });
	return found;
}

/** What a cell takes, with what stands there and what the other members hold. */
export function specAt(session: Session, { quantity, scenario, at }: Target): FieldSpec {
	const { layout, workbook, units, locale } = session;
	if (!layout || !workbook) throw new Error('A field was asked for while no workbook is open.');
	const { name } = quantity.quantity;
	const path = pathsOf(workbook).byPath.get(name);
	const stands = path
		? valueInForce(session, quantity, scenario, at)
		: inputAt(workbook, scenario, name, at).value;
	return {
		...fieldSpec(layout, quantity, units, locale),
		stands: typeof stands === 'number' ? stands : null,
		siblings: () =>
			flatten(inputValues(workbook, scenario, path?.set.name ?? name)).flatMap((one) =>
				typeof one.value === 'number' && one.at.join('\u0001') !== at.join('\u0001')
					? [one.value]
					: []
			)
	};
}

/** Read for each cell by itself, "+9%" of what stands there: all of them are written, or none, and the sentence says why. */
export function enterText(
	session: Session,
	targets: readonly Target[],
	text: string
): string | null {
	const reached: Target[] = [];
	const values: (Scalar | undefined)[] = [];
	for (const target of targets) {
		const entry = readEntry(text, specAt(session, target));
		if (!entry.ok)
			return targets.length === 1
				? entry.message
				: `${[target.quantity.quantity.label, ...target.at].join(', ')}: ${entry.message}`;
		for (const one of asInputs(session, target, entry)) {
			reached.push(one.target);
			values.push(one.value);
		}
	}
	return reached.length === 0 ? null : enterValues(session, reached, values);
}

/** What stands in a computed cell: a number, or nothing. */
function valueInForce(
	{ layout, results }: Session,
	quantity: QuantityLayout,
	scenario: string,
	at: readonly string[]
): number | null {
	const ordinals = quantity.axes.map(
		({ set }, axis) => layout?.ordinals.get(set)?.get(at[axis] ?? '') ?? -1
	);
	const cell = cellAt(quantity, ordinals);
	const found = results.get(scenario);
	return found?.states[cell] === OK ? (found.values[cell] ?? null) : null;
}

/** A step goes into one of the inputs of its path, and leaves the other empty; any other entry is one by itself. */
function asInputs(
	session: Session,
	target: Target,
	entry: Extract<Entry, { ok: true }>
): readonly { readonly target: Target; readonly value: Scalar | undefined }[] {
	const { layout, workbook } = session;
	const path = workbook && pathsOf(workbook).byPath.get(target.quantity.quantity.name);
	if (!path || !layout) return [{ target, value: entry.value }];
	return stepEntries(workbook, target.scenario, path, target.at, {
		set: entry.isMove ? null : entry.value,
		moved: entry.isMove ? entry.value : null
	}).flatMap(({ quantity, value }) => {
		const laidOut = layout.byName.get(quantity);
		return laidOut ? [{ target: { ...target, quantity: laidOut }, value }] : [];
	});
}

/** Undefined follows the parent again. */
export function enterValues(
	session: Session,
	targets: readonly Target[],
	values: readonly (Scalar | undefined)[]
): string | null {
	const byScenario = new Map<string, InputEntry[]>();
	targets.forEach((target, i) => {
		const entries = byScenario.get(target.scenario) ?? [];
		byScenario.set(target.scenario, entries);
		entries.push({
			quantity: target.quantity.quantity.name,
			at: target.at,
			value: ownValue(session, target, values[i])
		});
	});
	const commands: Command[] = [...byScenario].map(([scenario, entries]) => ({
		...{ kind: 'set_inputs', scenario, entries }
	}));
	return session.apply(...commands);
}

/** In a scenario, what its parent says is no entry of its own. */
function ownValue(
	{ workbook, baseId }: Session,
	{ quantity, scenario, at }: Target,
	value: Scalar | undefined
): Scalar | undefined {
	if (!workbook || scenario === baseId || value === undefined || value === null) return value;
	const parent = workbook.scenarios.find((one) => one.id === scenario)?.parent ?? baseId;
	return inputAt(workbook, parent, quantity.quantity.name, at).value === value ? undefined : value;
}
