/**
 * Frozen copies and columns: what stands in a column kept as a copy, and a copy read as a column of the workbook as it
 * is now, in today's units and under today's names.
 */
import { factor } from '$lib/units/convert';
import { sameDimension } from '$lib/units/algebra';
import { UnitSystem } from '$lib/units/system';
import { axesOf } from '$lib/workbook/axes';
import { frozenQuantities } from '$lib/workbook/frozen';
import type { Frozen, FrozenQuantity, Quantity, Scalar } from '$lib/workbook/schema';
import { flatten, valueAt, withValues, type ValueEntry } from '$lib/workbook/values';
import { membersOf, membersWithin, type Layout, type QuantityLayout } from './layout';
import type { Plan } from './plan';
import type { Results } from './results';
import { numberOf } from './entry';
import { ABSENT, ERROR_CODES, NOTHING_KINDS, OK, type State } from './state';

/** What a copy is made with beside its values. */
export type FrozenHead = Omit<Frozen, 'quantities' | 'sets'>;

/** The copy of a column: every value that is there, and why others are not. Null where there is none at all. */
export function freeze(layout: Layout, results: Results, head: FrozenHead): Frozen | null {
	const quantities = frozenFigures(layout, results);
	if (quantities.length === 0) return null;
	const sets = frozenSets(layout, quantities);
	return { ...head, ...(sets.length > 0 && { sets }), quantities };
}

type Wanted = (place: QuantityLayout, at: readonly string[]) => boolean;

/** Every quantity that has a value, or says why not, in some cell that is wanted. */
export const frozenFigures = (
	layout: Layout,
	results: Results,
	isWanted: Wanted = () => true,
	/** By name; a page looks at few of the thousands. */
	isAmong: (name: string) => boolean = () => true
): FrozenQuantity[] =>
	layout.quantities.flatMap((one) =>
		isAmong(one.quantity.name) ? (frozenOf(layout, one, results, isWanted) ?? []) : []
	);

/** Their sets as they are called today: all members, or those that are named. */
export function frozenSets(
	layout: Layout,
	quantities: readonly FrozenQuantity[],
	namedAlone = false
): NonNullable<Frozen['sets']> {
	const named = new Map<string, Set<string>>();
	for (const one of quantities) {
		const sets = setsOf(one);
		const add = (set: string, id: unknown) => {
			const ids = named.get(set) ?? new Set();
			named.set(set, typeof id === 'string' ? ids.add(id) : ids);
		};
		for (const set of [...sets, one.member_of].filter((set) => set !== undefined)) add(set, null);
		if (!namedAlone) continue;
		for (const { at, value } of [...flatten(one.value), ...flatten(one.without)]) {
			at.forEach((id, i) => sets[i] !== undefined && add(sets[i], id));
			if (one.member_of !== undefined) add(one.member_of, value);
		}
	}
	return layout.workbook.sets.flatMap(({ name, members }) => {
		const ids = named.get(name);
		if (!ids) return [];
		const kept = namedAlone ? members.filter(({ id }) => ids.has(id)) : members;
		const labelled = kept.map(({ id, label }) => ({ id, ...(label !== undefined && { label }) }));
		return [{ name, members: labelled }];
	});
}

function frozenOf(
	layout: Layout,
	place: QuantityLayout,
	results: Results,
	isWanted: Wanted
): FrozenQuantity | null {
	const { name, label, unit, per, formula, type } = place.quantity;
	const entries: ValueEntry[] = [];
	const none: ValueEntry[] = [];
	for (let cell = place.base; cell < place.base + place.count; cell++) {
		const state = results.states[cell]!;
		const at = membersOf(layout, cell);
		if (!isWanted(place, at)) continue;
		if (state === OK)
			entries.push({ at, value: scalarOf(layout, place.quantity, results.values[cell]!) });
		else if (state !== ABSENT) none.push({ at, value: wordOf(state) });
	}
	const value = withValues(undefined, entries);
	const without = withValues(undefined, none);
	if (value === undefined && without === undefined) return null;
	return {
		...{ name, label },
		...(unit !== undefined && { unit }),
		...(typeof type === 'object' && { member_of: type.member_of }),
		...(per && per.length > 0 && { per: [...per] }),
		...(typeof formula === 'string' && { formula }),
		...(value !== undefined && { value }),
		...(without !== undefined && { without })
	};
}

/** Kinds of nothing and errors as a copy names them. */
const wordOf = (state: State): string => NOTHING_KINDS[state] ?? ERROR_CODES[state] ?? 'absent';
const STATES: ReadonlyMap<Scalar | undefined, State> = new Map(
	[...Object.entries(NOTHING_KINDS), ...Object.entries(ERROR_CODES)].map(([state, word]) => [
		word,
		Number(state)
	])
);

/** A number of the engine as a file holds it. */
export function scalarOf(layout: Layout, { type }: Quantity, value: number): Scalar {
	if (type === 'yes_no') return value !== 0;
	if (typeof type !== 'object') return value;
	return layout.sets.get(type.member_of)?.members[value]?.id ?? null;
}

/** A column of the layout; what the copy does not hold is absent. */
export function frozenColumn(layout: Layout, copy: Frozen): Results {
	const { system } = UnitSystem.create(layout.workbook.units ?? []);
	const values = new Float64Array(layout.cells);
	const states = new Uint8Array(layout.cells);
	for (const place of layout.quantities) {
		const held = frozenValues(layout, system, place, copy);
		values.set(held.values, place.base);
		states.set(held.states, place.base);
	}
	return { scenario: copy.id, values, states };
}

/** What stands in every cell of a plan. */
export type HeldColumn = Pick<Results, 'values' | 'states'>;

/** A copy as formulas read it where a scenario is measured against it: every cell of the plan. */
export function referenceColumn(plan: Plan, copy: Frozen): HeldColumn {
	const columns = columnsOfPlan.get(plan) ?? new WeakMap<Frozen['quantities'], HeldColumn>();
	columnsOfPlan.set(plan, columns);
	const before = columns.get(copy.quantities);
	if (before) return before;
	const { layout } = plan;
	const held = frozenColumn(layout, copy);
	const values = new Float64Array(plan.cells).fill(1);
	// Behind the named cells lie conditions of entered values: what does not hold one of them is absent already.
	const states = new Uint8Array(plan.cells).fill(OK);
	values.set(held.values);
	states.set(held.states);
	const names = frozenQuantities(copy);
	for (const { present = '' } of layout.sets.values()) {
		const place = names.has(present) ? undefined : layout.byName.get(present);
		if (!place) continue;
		// A copy that does not hold which members were there holds values of those that were.
		values.fill(1, place.base, place.base + place.count);
		states.fill(OK, place.base, place.base + place.count);
	}
	const column = { values, states };
	columns.set(copy.quantities, column);
	return column;
}
const columnsOfPlan = new WeakMap<Plan, WeakMap<Frozen['quantities'], HeldColumn>>();

/** The values of one quantity as a copy holds them, in today's unit, by cell from its base. */
export function frozenValues(
	layout: Layout,
	units: UnitSystem,
	place: QuantityLayout,
	copy: Frozen
): { readonly values: Float64Array; readonly states: Uint8Array } {
	const values = new Float64Array(place.count).fill(NaN);
	const states = new Uint8Array(place.count).fill(ABSENT);
	const { name, type } = place.quantity;
	const held = frozenQuantities(copy).get(name);
	const scale = held ? scaleOf(units, held, place.quantity) : null;
	if (!held || scale === null) return { values, states };
	const choices = typeof type === 'object' ? layout.ordinals.get(type.member_of) : undefined;
	for (let cell = 0; cell < place.count; cell++) {
		const at = membersWithin(layout, place, cell);
		const scalar = valueAt(held.value, at);
		const value = fits(type, scalar) ? numberOf(scalar, choices) : undefined;
		if (value === undefined) {
			states[cell] = STATES.get(valueAt(held.without, at)) ?? ABSENT;
			continue;
		}
		values[cell] = scale === 1 ? value : value * scale;
		states[cell] = OK;
	}
	return { values, states };
}

const setsOf = (quantity: Pick<Quantity, 'per'>): string[] =>
	axesOf(quantity).map(({ set }) => set);

/** By what a copy's numbers are to be multiplied today; null where they mean another thing. */
function scaleOf(units: UnitSystem, held: FrozenQuantity, now: Quantity): number | null {
	if (setsOf(held).join('\n') !== setsOf(now).join('\n')) return null;
	if (typeof now.type === 'object') return held.member_of === now.type.member_of ? 1 : null;
	if (held.member_of !== undefined) return null;
	if ((held.unit ?? '1') === (now.unit ?? '1')) return 1;
	const [from, to] = [units.parse(held.unit ?? ''), units.parse(now.unit ?? '')];
	return from.ok && to.ok && sameDimension(from.unit, to.unit) ? factor(from.unit, to.unit) : null;
}

/** Whether a value is of the kind that the quantity has today. */
function fits(type: Quantity['type'], scalar: Scalar | undefined): boolean {
	if (type === 'yes_no') return typeof scalar === 'boolean';
	return typeof scalar === (typeof type === 'object' ? 'string' : 'number');
}
