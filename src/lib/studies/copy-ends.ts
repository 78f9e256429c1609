/**
 * A frozen copy as an end of a bridge: what it holds of inputs is entered in today's model, as a scenario set aside that
 * stands on the other end. What the copy itself holds as its result, and today's model does not give from its inputs, is
 * told apart: other formulas, members and quantities since then, and where programmes decide, other plans.
 */
import { frozenValues } from '$lib/engine/frozen';
import { membersOf, type Layout, type QuantityLayout } from '$lib/engine/layout';
import { NOT_ENTERED, OK } from '$lib/engine/state';
import { UnitSystem } from '$lib/units/system';
import { cellGuide, hasInputs, isInput } from '$lib/workbook/cells';
import { findFrozen, frozenQuantities, isFrozenCopy } from '$lib/workbook/frozen';
import { baseOf, columnsOf, findScenario, findSet } from '$lib/workbook/lookup';
import { activeProgrammes, filledQuantities } from '$lib/workbook/plans';
import { inputAt, referenceOf } from '$lib/workbook/scenario';
import type { Change, Frozen, Quantity, Scalar, Scenario, Workbook } from '$lib/workbook/schema';
import { withValues, type ValueEntry } from '$lib/workbook/values';

interface Ends {
	readonly from: string;
	readonly to: string;
}

export interface CopyEnds<S extends Ends> {
	readonly workbook: Workbook;
	/** With scenarios in place of copies. */
	readonly study: S;
	readonly from: Frozen | null;
	readonly to: Frozen | null;
}

/** The study between scenarios alone; as it is where no copy stands at an end. */
export function withCopyEnds<S extends Ends>(
	workbook: Workbook,
	layout: Layout,
	study: S
): CopyEnds<S> {
	const from = copyAt(workbook, study.from);
	const to = copyAt(workbook, study.to);
	if (!from && !to) return { workbook, study, from, to };
	const base = baseOf(workbook).id;
	let book = workbook;
	const aside = (copy: Frozen, other: string) => {
		const scenario = asScenario(book, layout, copy, findScenario(workbook, other) ? other : base);
		book = { ...book, scenarios: [...book.scenarios, scenario] };
		return scenario.id;
	};
	const ends = {
		from: from ? aside(from, study.to) : study.from,
		to: to ? aside(to, study.from) : study.to
	};
	return { workbook: book, study: { ...study, ...ends }, from, to };
}

const copyAt = (workbook: Workbook, id: string): Frozen | null =>
	isFrozenCopy(workbook, id) ? (findFrozen(workbook, id) ?? null) : null;

/** What no input explains between a copy's own result and what today's model makes of its inputs. */
export const sinceLabel = (workbook: Workbook, { title }: Frozen): string =>
	activeProgrammes(workbook).length > 0
		? `Other formulas, members and plans since ${title}`
		: `Other formulas and members since ${title}`;

/** It stands on the other end, so that both have the plans of one, and is measured against the same. */
function asScenario(workbook: Workbook, layout: Layout, copy: Frozen, parent: string): Scenario {
	const taken = new Set(columnsOf(workbook).map(({ id }) => id));
	let id = copy.id;
	while (taken.has(id)) id += '_';
	const { id: against } = referenceOf(workbook, parent);
	const units = UnitSystem.create(workbook.units ?? []).system;
	const filled = filledQuantities(workbook);
	const held = frozenQuantities(copy);
	const changes = layout.quantities.flatMap((place): Change[] => {
		const { quantity } = place;
		// What a programme decides is decided for these inputs as well.
		if (!held.has(quantity.name) || filled.has(quantity.name)) return [];
		if (!hasInputs(quantity) || quantity.fixed) return [];
		const entries = entriesOf(workbook, layout, units, place, copy, parent);
		const value = withValues(undefined, entries);
		return value === undefined ? [] : [{ quantity: quantity.name, value }];
	});
	const isOfBase = against === baseOf(workbook).id;
	return { id, title: copy.title, parent, ...(isOfBase ? {} : { against }), changes };
}

/** The input cells in which a copy holds something else than stands in a scenario. */
function entriesOf(
	workbook: Workbook,
	layout: Layout,
	units: UnitSystem,
	place: QuantityLayout,
	copy: Frozen,
	scenario: string
): ValueEntry[] {
	const { quantity } = place;
	const guide = cellGuide(workbook, quantity);
	const { values, states } = frozenValues(layout, units, place, copy);
	const entries: ValueEntry[] = [];
	for (let cell = 0; cell < place.count; cell++) {
		const state = states[cell];
		if (state !== OK && state !== NOT_ENTERED) continue;
		const at = membersOf(layout, place.base + cell);
		if (!guide || !isInput(guide, at)) continue;
		const value = state === OK ? scalarOf(workbook, quantity, values[cell]!) : null;
		if (value !== inputAt(workbook, scenario, quantity.name, at).value) entries.push({ at, value });
	}
	return entries;
}

function scalarOf(workbook: Workbook, { type }: Quantity, value: number): Scalar {
	if (type === 'yes_no') return value !== 0;
	if (typeof type !== 'object') return value;
	return findSet(workbook, type.member_of)?.members[value]?.id ?? null;
}
