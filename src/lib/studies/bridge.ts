/**
 * The difference of one result between two scenarios, split among the changes that make it.
 *
 * The changes are the inputs in which the two differ, by quantity unless the study groups them, and what
 * they are measured against where that differs too; a frozen copy at an end adds what its own result differs from
 * today's model of its inputs (`copy-ends.ts`). What each contributes is its Shapley value; how the
 * subsets are computed is for `columns.ts`.
 */
import { findFrozen } from '$lib/workbook/frozen';
import { findQuantity, findScenario, scenarioTitle } from '$lib/workbook/lookup';
import { referenceOf } from '$lib/workbook/scenario';
import type { Frozen, Workbook } from '$lib/workbook/schema';
import { frozenColumn } from '$lib/engine/frozen';
import { cellAt, layOut, type Layout } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';
import type { Outcome } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { withTemporaryScenario } from './temporary-scenario';
import { groupsOf, type BridgeGroup, type BridgeStudy } from './bridge-groups';
import { carriedValue, type Difference } from './cell-entries';
import type { Columns } from './columns/columns';
import { sinceLabel, withCopyEnds } from './copy-ends';
import { openFollowing, type Replanning } from './following';
import { verifyFirstDraw, type CheckFirst, type FirstDraw } from './first-draw';
import { answer, refuse, type Answer } from './problem';
import { shares, type Subset } from './shapley';
import { columnsOf, figure, type Told } from './told';

export interface BridgePart extends BridgeGroup {
	readonly value: number;
	/** Null where every subset was taken. */
	readonly standardError: number | null;
}

export interface BridgeResult {
	readonly kind: 'bridge';
	readonly start: number;
	readonly end: number;
	/** What the parts add up to. */
	readonly total: number;
	readonly parts: readonly BridgePart[];
	/** How many subsets of the changes were computed. */
	readonly subsets: number;
	/** Labels of groups in which nothing differs. */
	readonly idle: readonly string[];
	/** Null until the second engine has looked at the first draw. */
	readonly check: FirstDraw | null;
}

/** Plans made from either side may be two of several that are as good, so that results differ in what the objective does not count. */
const PLANNED_ALIKE = 1e-6;
/** Subsets computed at a time. */
const CHUNK = 4096;

export function runBridge(
	workbook: Workbook,
	study: BridgeStudy,
	plan: Plan | undefined = undefined,
	checkFirst: CheckFirst = verifyFirstDraw,
	replanning?: Replanning
): Answer<BridgeResult> {
	for (const id of [study.from, study.to])
		if (!findScenario(workbook, id) && !findFrozen(workbook, id))
			return refuse(
				'no-such-scenario',
				`The study is of the scenario ${id}, but there is none of that name: it was deleted or renamed. Choose another in the study.`
			);
	const layout = plan?.layout ?? layOut(workbook);
	const ends = withCopyEnds(workbook, layout, study);
	const held: Held[] = [];
	for (const [at, copy] of [
		['start', ends.from],
		['end', ends.to]
	] as const) {
		const kept = copy && heldBy(layout, copy, study);
		if (kept && kept.state !== OK) return refuseUnheld(workbook, study, copy);
		if (kept) held.push({ at, copy, value: kept.value });
	}
	const found = between(ends.workbook, ends.study, plan, checkFirst, replanning);
	return found.ok ? answer(withHeld(workbook, found.value, held)) : found;
}

/** What a copy holds as the result at an end. */
interface Held {
	readonly at: 'start' | 'end';
	readonly copy: Frozen;
	readonly value: number;
}

function heldBy(layout: Layout, copy: Frozen, { quantity, members }: BridgeStudy): Outcome | null {
	const place = layout.byName.get(quantity);
	const ordinals = (place?.axes ?? []).map(
		({ set }, axis) => layout.ordinals.get(set)?.get(members?.[axis] ?? '') ?? -1
	);
	// Which member is meant is asked for where the scenarios are looked at.
	if (!place || ordinals.includes(-1)) return null;
	const cell = cellAt(place, ordinals);
	if (cell < 0) return null;
	const { values, states } = frozenColumn(layout, copy);
	return { value: values[cell]!, state: states[cell]! };
}

const refuseUnheld = (workbook: Workbook, { quantity }: BridgeStudy, { title }: Frozen) =>
	refuse(
		'no-value',
		`${findQuantity(workbook, quantity)?.label ?? quantity} has no value in the frozen copy ${title}, so there is no difference to split. Choose another quantity or copy.`,
		quantity
	);

/** With the results that copies hold at the ends, and steps of their own for what no input explains. */
function withHeld(workbook: Workbook, result: BridgeResult, held: readonly Held[]): BridgeResult {
	return held.reduce((before, { at, copy, value }) => {
		const isStart = at === 'start';
		const part: BridgePart = {
			...{ label: sinceLabel(workbook, copy), cells: [], since: copy.title, standardError: null },
			value: (isStart ? before.start - value : value - before.end) + 0
		};
		const parts = isStart ? [part, ...before.parts] : [...before.parts, part];
		const total = parts.reduce((sum, one) => sum + one.value, 0);
		return { ...before, parts, total, ...(isStart ? { start: value } : { end: value }) };
	}, result);
}

/** The bridge between two scenarios. */
function between(
	workbook: Workbook,
	study: BridgeStudy,
	plan: Plan | undefined,
	checkFirst: CheckFirst,
	replanning: Replanning | undefined
): Answer<BridgeResult> {
	const { groups, idle } = groupsOf(workbook, study);
	const references = [study.from, study.to].map((id) => referenceOf(workbook, id).id);
	const moved = references[0] !== references[1];
	const cells = groups.flatMap((group) => group.cells);
	const open = (reference: string) => openFor(workbook, study, reference, cells, plan, replanning);
	const first = open(references[0]!);
	if (!first.ok) return first;
	const last = moved ? open(references[1]!) : first;
	if (!last.ok) return last;
	const all: BridgeGroup[] = moved
		? [...groups, { label: measureLabel(workbook, references[1]!), cells: [] }]
		: groups;
	const ends = endsOf(first.value, workbook, study);
	if (!ends.ok) return ends;
	const { start, end } = ends.value;
	// With every change made.
	const check = checkFirst(
		last.value,
		cells.map(({ quantity, to }) => [carriedValue(workbook, quantity, to)])
	);
	if (!check.ok) return check;
	const worthOf = (subsets: readonly Subset[]) =>
		worth(subsets, groups, cells, workbook, first.value, last.value);
	const found = shares(all.length, worthOf, study);
	const label = findQuantity(workbook, study.quantity)?.label ?? study.quantity;
	if (found.firstWithout)
		return refuse(
			'no-value',
			`${label} has no answer in ${found.without} of the ${found.subsets} combinations of these changes, ${withoutWords(all, found.firstWithout)}, so its difference cannot be split. Put changes that only make sense together into one group, or choose another quantity.`,
			study.quantity
		);
	const total = found.parts.reduce((sum, part) => sum + part, 0);
	const size = Math.max(Math.abs(start), Math.abs(end), 1e-300);
	const isPlanned = last.value.following !== null;
	if (Math.abs(total - (end - start)) > (isPlanned ? PLANNED_ALIKE : 1e-9) * size)
		return refuse(
			'engines-differ',
			`${label} differs by ${end - start} between the two scenarios, but the inputs in which they differ explain ${total}. Check what the scenarios are measured against.`,
			study.quantity
		);
	const parts = all.map((group, i) => ({
		...group,
		value: found.parts[i]! + 0,
		standardError: found.standardErrors?.[i] ?? null
	}));
	return answer({
		kind: 'bridge',
		start,
		end,
		total,
		parts,
		subsets: found.subsets,
		idle,
		check: check.value
	});
}

const measureLabel = (workbook: Workbook, reference: string) =>
	`Compared with ${scenarioTitle(workbook, reference)}`;

function openFor(
	workbook: Workbook,
	study: BridgeStudy,
	reference: string,
	cells: readonly Difference[],
	plan: Plan | undefined,
	replanning: Replanning | undefined
): Answer<Columns> {
	const temporary = withTemporaryScenario(workbook, study.from, reference);
	const of = { quantity: study.quantity, members: study.members };
	return openFollowing(
		{
			workbook: temporary.workbook,
			plan,
			scenario: temporary.id,
			vary: cells.map(({ quantity, at }) => ({ quantity, members: at, mode: 'set' })),
			ask: [of, { ...of, scenario: study.from }, { ...of, scenario: study.to }],
			alone: true
		},
		study,
		replanning
	);
}

/** The result in the two scenarios as they stand. */
function endsOf(
	{ results }: Columns,
	workbook: Workbook,
	study: BridgeStudy
): Answer<{ start: number; end: number }> {
	if (results.length !== 3)
		return refuse(
			'no-such-member',
			`${study.quantity} has several values. Say for which members the difference is to be split.`,
			study.quantity
		);
	const label = findQuantity(workbook, study.quantity)?.label ?? study.quantity;
	const [start, end] = [results[1]!.base, results[2]!.base];
	const without = ([start, end] satisfies Outcome[]).findIndex(({ state }) => state !== OK);
	if (without >= 0) {
		const id = without === 0 ? study.from : study.to;
		return refuse(
			'no-value',
			`${label} has no answer in ${scenarioTitle(workbook, id)}, so there is no difference to split. Choose another quantity or scenario.`,
			study.quantity
		);
	}
	return answer({ start: start.value, end: end.value });
}

/** The worth of each subset; a bit beyond the groups says what is measured against. */
function worth(
	subsets: readonly Subset[],
	groups: readonly BridgeGroup[],
	cells: readonly Difference[],
	workbook: Workbook,
	first: Columns,
	last: Columns
): Float64Array {
	const groupOf = groups.flatMap((group, i) => group.cells.map(() => i));
	const ends = cells.map(({ quantity, from, to }) => [
		carriedValue(workbook, quantity, from),
		carriedValue(workbook, quantity, to)
	]);
	const values = new Float64Array(subsets.length);
	for (const [columns, moved] of first === last
		? ([[first, null]] as const)
		: ([
				[first, 0],
				[last, 1]
			] as const)) {
		const own = subsets.flatMap((subset, i) =>
			moved === null || subset[groups.length] === moved ? [i] : []
		);
		for (let at = 0; at < own.length; at += CHUNK) {
			const chunk = own.slice(at, at + CHUNK);
			const draws = cells.map((_, cell) =>
				Float64Array.from(chunk, (i) => ends[cell]![subsets[i]![groupOf[cell]!]!]!)
			);
			const out = columns.run(draws, 0, chunk.length);
			chunk.forEach((i, column) => {
				values[i] = out.states[0]![column] === OK ? out.values[0]![column]! : NaN;
			});
		}
	}
	return values;
}

function withoutWords(groups: readonly BridgeGroup[], subset: Subset): string {
	const made = groups.filter((_, i) => subset[i] === 1).map(({ label }) => label);
	const left = groups.filter((_, i) => subset[i] === 0).map(({ label }) => label);
	if (made.length === 0) return 'for one without any of them';
	if (left.length === 0) return 'for one with all of them';
	return `for one with ${made.join(', ')} but without ${left.join(', ')}`;
}

export const bridgeTold: Told<BridgeStudy, BridgeResult> = {
	text(study, { start, end, total, parts, idle }, { name, unit, titleOf }) {
		const [from, to] = [titleOf(study.from), titleOf(study.to)];
		const isSampled = parts.some(({ standardError }) => standardError !== null);
		const rows = parts.map(({ label, value, standardError }) => [
			...[label, value, standardError === null ? '' : `± ${figure(standardError)}`]
		]);
		return [
			`${name}, from ${from} to ${to}: ${figure(total)}${unit}\n`,
			columnsOf([[from, start, ''], ...rows, [to, end, '']]),
			isSampled
				? 'Beside each part stands its standard error: orders were drawn, not all taken.\n'
				: '',
			idle.length > 0 ? `Nothing differs in: ${idle.join(', ')}.\n` : ''
		].join('');
	},
	data: ({ from, to }, { start, end, total, parts, idle }, { titleOf }) => ({
		...{ from, to, from_title: titleOf(from), to_title: titleOf(to) },
		...{ at_from: start, at_to: end, total },
		parts: parts.map(({ label, value, standardError }) => ({
			...{ label, value, standard_error: standardError }
		})),
		nothing_differs: idle
	})
};
