/**
 * Aggregates written out: a term for each combination of gathered members for which everything that is read at
 * them exists, with the condition under which it counts.
 */
import { cellAt } from '../layout';
import { Op, operation } from '../operations';
import { NO_ANSWER, OK } from '../state';
import { foldAggregate, junction, ofNothing } from './fold';
import { groupingOf, membersOf } from './groups';
import type { Lowering } from './lower';
import { layOutInTime, type Flows } from './periods';
import { isEnteredCell, presenceOf, readCell } from './cells-as-read';
import { directCell } from './read-cells';
import type { Aggregate, Read, Terms, Variable } from './types';

/** Kept always; left out always. Otherwise a node. */
const ALWAYS = -1;
const NEVER = -2;

/** The ordinals are those along the first gathered axis. */
interface Kept extends Flows {
	entries: number[];
	readonly ordinals: number[];
}

export function expand(low: Lowering, aggregate: Aggregate): number {
	low.depth++;
	const kept: Kept = { entries: [], ordinals: [] };
	for (const terms of aggregate.terms) gatherTerms(low, aggregate, terms, kept);
	const parameters = aggregate.parameters.map((parameter) => low.lower(parameter));
	low.depth--;
	if (operation(aggregate.op).inTime) {
		if (!low.tracing) refuseUnsteady(low, aggregate, kept);
		layOutInTime(low, aggregate, kept);
	}
	return result(low, aggregate, kept, parameters);
}

function gatherTerms(low: Lowering, aggregate: Aggregate, terms: Terms, kept: Kept): void {
	const { gathered } = terms;
	const group = groupWanted(low, terms);
	const sizes = gathered.map((variable) =>
		group && variable.slot === group.slot ? group.members.length : variable.size
	);
	if (sizes.includes(0)) return;
	const places = gathered.map(() => 0);
	const put = (at: number) => {
		const variable = gathered[at];
		const place = places[at] ?? 0;
		if (variable)
			low.members[variable.slot] =
				group && variable.slot === group.slot ? (group.members[place] ?? 0) : place;
	};
	for (let at = 0; at < gathered.length; at++) put(at);
	for (;;) {
		low.budget.work++;
		if (low.isTooLarge()) return;
		if (terms.direct.every((read) => exists(low, read))) addTerm(low, aggregate, terms, kept);
		// The next combination, last axis fastest.
		let at = gathered.length - 1;
		for (; at >= 0; at--) {
			const next = (places[at] ?? 0) + 1;
			places[at] = next < (sizes[at] ?? 0) ? next : 0;
			put(at);
			if (places[at] !== 0) break;
		}
		if (at < 0) return;
	}
}

/** The members of the group that the condition asks for, where it asks by a fixed grouping. */
function groupWanted(
	low: Lowering,
	terms: Terms
): { readonly slot: number; readonly members: readonly number[] } | null {
	const grouping = groupingOf(low.context, terms);
	if (!grouping) return null;
	const wanted = low.lower(grouping.wanted);
	if (!low.store.isConstant(wanted)) return null;
	return { slot: grouping.slot, members: membersOf(grouping, low.store.valueOf(wanted)) };
}

function exists(low: Lowering, read: Read): boolean {
	return !read.quantity.cellOfPlace || directCell(low, read) >= 0;
}

function addTerm(low: Lowering, aggregate: Aggregate, terms: Terms, kept: Kept): void {
	const filter = filterOf(low, terms);
	if (filter === NEVER) return;
	const value = low.lower(terms.value);
	const ordinal = low.members[terms.gathered[0]?.slot ?? 0] ?? 0;
	const { positions } = aggregate;
	const position = terms.paired
		? low.lower(terms.paired)
		: positions === null || positions === 'paired'
			? -1
			: low.store.constant(positions === 'ordinal' ? ordinal : (positions[ordinal] ?? NaN));
	kept.entries.push(value, filter, position);
	kept.ordinals.push(ordinal);
}

/** Presence first, then `where`: a condition that meets an absent member does not count. */
function filterOf(low: Lowering, terms: Terms): number {
	const { store } = low;
	const presences: number[] = [];
	for (const read of terms.direct)
		for (const node of presenceOfRead(low, read, terms))
			if (!presences.includes(node)) presences.push(node);
	for (const variable of terms.gathered) {
		const node = presenceOfMember(low, variable, terms);
		if (node >= 0 && !presences.includes(node)) presences.push(node);
	}
	const present =
		presences.length === 0 ? ALWAYS : settled(low, junction(store, Op.And, presences));
	if (present === NEVER || !terms.where) return present;
	const where = settled(low, low.lower(terms.where));
	if (present === ALWAYS || where === NEVER) return where;
	if (where === ALWAYS) return present;
	return store.emit(Op.If, store.list([present, where, store.constant(0)]), 0);
}

function settled(low: Lowering, node: number): number {
	if (!low.store.isConstant(node)) return node;
	return low.store.valueOf(node) !== 0 ? ALWAYS : NEVER;
}

/** What says whether a value read at the gathered members is there. */
function presenceOfRead(low: Lowering, read: Read, terms: Terms): number[] {
	const conditions = presenceToday(low, read, terms);
	if (read.scenario !== 1 || !low.context.isMeasuredByCopies) return conditions;
	// A frozen copy may lack what is always there otherwise.
	const cell = low.store.cell(directCell(low, read), 1);
	const node = low.store.emit(Op.Present, cell, 0);
	return conditions.includes(node) ? conditions : [...conditions, node];
}

function presenceToday(low: Lowering, read: Read, terms: Terms): number[] {
	const known = low.context.at(read.quantity.index);
	if (known?.frozen !== undefined) {
		const at = directCell(low, read) - known.layout.base;
		return [low.store.constant(known.fixed?.states[at] === OK ? 1 : 0)];
	}
	const presenceAxes = low.presenceAxes(read.quantity.index);
	const mayBeAbsent = low.absent[read.quantity.index] === 1;
	const isGuarded = low.inputConditions.has(read.quantity.index);
	if (!known || (presenceAxes.length === 0 && !mayBeAbsent && !isGuarded)) return [];
	const cell = directCell(low, read);
	if (mayBeAbsent && !isEnteredCell(known, cell)) {
		const key = 3 * cell + read.scenario;
		const before = low.presences.get(key);
		const node = before ?? low.store.emit(Op.Present, low.store.cell(cell, read.scenario), 0);
		low.presences.set(key, node);
		return [node];
	}
	// Presence of members that are not gathered here is judged around the aggregate.
	const isOutside = ({ axis }: { readonly axis: number }) => {
		const index = read.indices[axis];
		return (
			read.scenario === 0 &&
			index?.kind === 'variable' &&
			!terms.gathered.some((variable) => variable.slot === index.slot)
		);
	};
	if (!isGuarded && presenceAxes.every(isOutside)) return [];
	return presenceOf(low, known, cell, read.scenario);
}

/** The presence of a gathered member itself, where nothing that is read at it says so. */
function presenceOfMember(low: Lowering, variable: Variable, terms: Terms): number {
	const present = low.context.sets.get(variable.set)?.present;
	if (!present) return -1;
	const isRead = terms.direct.some((read) =>
		read.indices.some((index) => index.kind === 'variable' && index.slot === variable.slot)
	);
	if (isRead) return -1;
	const cell = cellAt(present, [low.members[variable.slot] ?? 0]);
	return readCell(low, present.index, cell, 0);
}

/** Cash flows one period apart: none may come and go. */
function refuseUnsteady(low: Lowering, aggregate: Aggregate, kept: Kept): void {
	const set = aggregate.terms[0]?.gathered[0]?.set ?? '';
	if (kept.entries.some((filter, at) => at % 3 === 1 && filter !== ALWAYS))
		low.report(
			'moving-where',
			`${aggregate.name} takes one value a period, but members of ${set} or their values come and go with the scenario: gather a quantity that always has a value.`,
			aggregate.span
		);
}

function result(
	low: Lowering,
	aggregate: Aggregate,
	{ entries }: Kept,
	parameters: readonly number[]
): number {
	const { store } = low;
	const { op, otherwise } = aggregate;
	const count = entries.length / 3;
	if (count === 0) {
		if (otherwise) return low.lower(otherwise);
		const value = ofNothing(op);
		return value === null ? store.nothing(NO_ANSWER) : store.constant(value);
	}
	const column = (offset: number) => entries.filter((_entry, at) => at % 3 === offset);
	const [values, filters, positions] = [column(0), column(1), column(2)];
	const isSteady = filters.every((filter) => filter === ALWAYS);
	if (isSteady && values.every((value) => store.isConstant(value))) {
		const numbers = values.map((value) => store.valueOf(value));
		const places = positions.map((place) => (place < 0 ? -1 : store.valueOf(place)));
		const folded = foldAggregate(op, numbers, places);
		if (folded !== null) return store.constant(folded);
	}
	const node = store.emit(op, store.list([...entries, ...parameters]), count);
	if (!otherwise || filters.includes(ALWAYS)) return node;
	const any = store.emit(Op.Any, store.list(filters.flatMap((filter) => [filter, -1, -1])), count);
	return store.emit(Op.If, store.list([any, node, low.lower(otherwise)]), 0);
}
