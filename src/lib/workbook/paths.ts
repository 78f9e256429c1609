/**
 * Paths in time: a quantity per months whose formula repeats the month before, but where a step is entered. Two inputs per the
 * same sets hold the steps: one sets a level from a month on, the other moves it by a share. To the engine all three are
 * quantities like any other; this says which belong together, and what is entered as steps.
 */
import { axesOf } from './axes';
import { kept } from './kept';
import { findScenario } from './lookup';
import { inputAt, inputValues } from './scenario';
import type { Member, Quantity, Scalar, SetDefinition, Sheet, Workbook } from './schema';
import { valueAt } from './values';

export interface PathInTime {
	readonly quantity: Quantity;
	readonly set: Quantity;
	readonly moved: Quantity;
}

export interface Paths {
	readonly byPath: ReadonlyMap<string, PathInTime>;
	/** By the name of either input. */
	readonly byInput: ReadonlyMap<string, PathInTime>;
}

const pathsIn = kept((sheets: readonly Sheet[]): Paths => {
	const byPath = new Map<string, PathInTime>();
	const byInput = new Map<string, PathInTime>();
	const quantities = sheets.flatMap((sheet) => sheet.quantities);
	const named = (name: string | undefined) => quantities.find((one) => one.name === name);
	for (const quantity of quantities) {
		if (!quantity.path) continue;
		const [set, moved] = [named(quantity.path.set_by), named(quantity.path.moved_by)];
		if (!set || !moved) continue;
		const path = { quantity, set, moved };
		byPath.set(quantity.name, path);
		byInput.set(set.name, path);
		byInput.set(moved.name, path);
	}
	return { byPath, byInput };
});

export const pathsOf = ({ sheets }: Pick<Workbook, 'sheets'>): Paths => pathsIn(sheets);

/** The set of months that a path runs along: its last axis. */
export function monthsOf(
	workbook: Pick<Workbook, 'sets'>,
	quantity: Quantity
): SetDefinition | undefined {
	const name = axesOf(quantity).at(-1)?.set;
	return workbook.sets.find((set) => set.name === name && set.time !== undefined);
}

/** What a month is called: "April 2027", else its id. */
export function monthLabel(
	workbook: Pick<Workbook, 'sets'>,
	quantity: Quantity,
	id: string
): string {
	const member = monthsOf(workbook, quantity)?.members.find((one) => one.id === id);
	return member?.label ?? id;
}

/** What is entered for one month: a level, a share in %, or both, which then follow one another. */
export interface Step {
	readonly member: Member;
	readonly set: number | null;
	readonly moved: number | null;
}

/** The steps of a path for the members beside its months, in order of time, as a scenario sees them. */
export function stepsOf(
	workbook: Workbook,
	scenario: string,
	path: PathInTime,
	at: readonly string[]
): Step[] {
	const levels = inputValues(workbook, scenario, path.set.name);
	const shares = inputValues(workbook, scenario, path.moved.name);
	return (monthsOf(workbook, path.quantity)?.members ?? []).flatMap((member) => {
		const [set, moved] = [levels, shares].map((values) => {
			const value = valueAt(values, [...at, member.id]);
			return typeof value === 'number' ? value : null;
		}) as [number | null, number | null];
		return set === null && moved === null ? [] : [{ member, set, moved }];
	});
}

/** The step that begins in the last member of `at`; null where none does. */
export function stepAt(
	workbook: Workbook,
	scenario: string,
	name: string,
	at: readonly string[]
): Pick<Step, 'set' | 'moved'> | null {
	const path = pathsOf(workbook).byPath.get(name);
	if (!path) return null;
	const [set, moved] = [path.set, path.moved].map((input) => {
		const { value } = inputAt(workbook, scenario, input.name, at);
		return typeof value === 'number' ? value : null;
	}) as [number | null, number | null];
	return set === null && moved === null ? null : { set, moved };
}

/** The entries by which a month has this step and no other; none of what stands there already. Undefined follows the parent. */
export function stepEntries(
	workbook: Workbook,
	scenario: string,
	path: PathInTime,
	at: readonly string[],
	step: { readonly set: Scalar; readonly moved: Scalar }
): { quantity: string; at: readonly string[]; value: Scalar | undefined }[] {
	const parent = findScenario(workbook, scenario)?.parent ?? null;
	return (
		[
			[path.set.name, step.set],
			[path.moved.name, step.moved]
		] as const
	).flatMap(([quantity, value]) => {
		if (inputAt(workbook, scenario, quantity, at).value === value) return [];
		const isParents = parent !== null && inputAt(workbook, parent, quantity, at).value === value;
		return [{ quantity, at, value: isParents ? undefined : value }];
	});
}

/** The path under other names; without it where one of its inputs has none any more. */
export function withPathNames(
	quantity: Quantity,
	named: (name: string) => string | undefined
): Quantity {
	if (!quantity.path) return quantity;
	const { path, ...rest } = quantity;
	const [set_by, moved_by] = [named(path.set_by), named(path.moved_by)];
	if (set_by === path.set_by && moved_by === path.moved_by) return quantity;
	return set_by === undefined || moved_by === undefined
		? rest
		: { ...quantity, path: { set_by, moved_by } };
}
