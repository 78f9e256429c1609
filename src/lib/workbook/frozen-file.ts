/**
 * Frozen copies as files have them. In memory a copy holds each value under its members; in a file a table is one list in
 * the order of its sets, with what repeats said once, and a label and a formula are written only where they are no longer
 * those of the quantity itself. Numbers keep every digit. Files that hold a copy in full are read as well.
 */
import { axesOf } from './axes';
import { label, LIMITS } from './basic-schema';
import {
	frozenHead,
	frozenQuantitySchema,
	MOST_FROZEN,
	type Frozen,
	type FrozenQuantity
} from './frozen-schema';
import { quantityPlaces } from './lookup';
import { isScalar, scalarSchema, sparingly } from './value-schema';
import { branch, isTree, put } from './values';
import type { Quantity, Scalar, Values, Workbook } from './schema';
import { z } from './zod';

/** What may be read of all copies of a file, so that a few letters cannot fill the memory. */
export const MOST_CELLS = 4_000_000;

/** A value; or how often it stands one after another, and the value. Null: nothing stands there. */
const runSchema = z.union([
	scalarSchema,
	z.tuple([z.int().check(z.gte(2), z.lte(MOST_CELLS)), scalarSchema])
]);
const runsSchema = sparingly(
	z.array(runSchema).check(z.maxLength(MOST_CELLS)),
	(given) => Array.isArray(given) && given.length <= MOST_CELLS && given.every(isRun)
);
type Run = z.infer<typeof runSchema>;

const isRun = (given: unknown): boolean =>
	Array.isArray(given)
		? given.length === 2 && isCount(given[0]) && isScalar(given[1])
		: isScalar(given);
const isCount = (given: unknown): boolean =>
	Number.isInteger(given) && Number(given) >= 2 && Number(given) <= MOST_CELLS;

/** One quantity of a copy in a file. */
export const filedQuantitySchema = z.strictObject({
	...frozenQuantitySchema.shape,
	/** Left out, with the formula: those of the quantity of this name in the same file. */
	label: z.optional(label),
	/** As `value` and `without`, of a quantity per something: a list in the order of its sets, the last one fastest. */
	values: z.optional(runsSchema),
	reasons: z.optional(runsSchema)
});
type FiledQuantity = z.infer<typeof filedQuantitySchema>;

export const filedFrozenSchema = z.strictObject({
	...frozenHead,
	quantities: z.array(filedQuantitySchema).check(z.minLength(1), z.maxLength(LIMITS.quantities))
});
type FiledFrozen = z.infer<typeof filedFrozenSchema>;

export const filedFrozenListSchema = z.array(filedFrozenSchema).check(z.maxLength(MOST_FROZEN));

/** How the two kinds of tables are called, by member and as a list. */
const FORMS = [
	['value', 'values'],
	['without', 'reasons']
] as const;

type Words = Pick<Quantity, 'label' | 'formula'>;
type Members = ReadonlyMap<string, readonly string[]>;

const membersOf = ({ sets = [] }: Pick<Frozen, 'sets'>): Members =>
	new Map(sets.map(({ name, members }) => [name, members.map(({ id }) => id)]));

/** The members of each set that a quantity is per, as the copy knows them. */
const listsOf = (members: Members, one: Pick<FrozenQuantity, 'per'>): (readonly string[])[] =>
	axesOf(one.per ? { per: one.per } : {}).map(({ set }) => members.get(set) ?? []);

const formulaOf = ({ formula }: Words): string | undefined =>
	typeof formula === 'string' ? formula : undefined;

/** The copy as a file has it. */
export function frozenWritten(workbook: Workbook, copy: Frozen): FiledFrozen {
	const now = quantityPlaces(workbook);
	const members = membersOf(copy);
	return {
		...copy,
		quantities: copy.quantities.map((one): FiledQuantity => {
			const { label, formula, value, without, ...rest } = one;
			const today = now.get(one.name)?.quantity;
			const isAsNow = today?.label === label && formulaOf(today) === formula;
			const lists = listsOf(members, one);
			const listed = <Long extends string, Short extends string>(
				held: Values | undefined,
				[long, short]: readonly [Long, Short]
			) => {
				if (held === undefined) return {};
				const runs = runsOf(held, lists);
				return runs ? { [short]: runs } : { [long]: held };
			};
			return {
				...rest,
				...(!isAsNow && { label, ...(formula !== undefined && { formula }) }),
				...listed(value, FORMS[0]),
				...listed(without, FORMS[1])
			};
		})
	};
}

/** The list of a tree of values; null where it would not say the same again. */
function runsOf(held: Values, lists: readonly (readonly string[])[]): Run[] | null {
	if (lists.length === 0 || !isTree(held)) return null;
	const runs: Run[] = [];
	let [last, times] = [null as Scalar, 0];
	const flush = () => {
		if (times > 0) runs.push(times === 1 ? last : [times, last]);
	};
	const add = (value: Scalar, count: number) => {
		if (value === last) times += count;
		else {
			flush();
			[last, times] = [value, count];
		}
	};
	const sizes = lists.map((_, depth) =>
		lists.slice(depth + 1).reduce((size, { length }) => size * length, 1)
	);
	let found = 0;
	const walk = (here: Values | undefined, depth: number): boolean => {
		if (depth === lists.length) {
			if (here === undefined || here === null || isTree(here)) return false;
			found++;
			add(here, 1);
			return true;
		}
		if (!isTree(here)) return false;
		for (const id of lists[depth]!) {
			const inner = branch(here, id);
			if (inner === undefined) add(null, sizes[depth]!);
			else if (!walk(inner, depth + 1)) return false;
		}
		return true;
	};
	// Nothing at the end says nothing.
	if (!walk(held, 0) || found !== leaves(held)) return null;
	if (last !== null) flush();
	return runs;
}

const leaves = (held: Values): number =>
	isTree(held) ? Object.values(held).reduce<number>((sum, inner) => sum + leaves(inner), 0) : 1;

/** What does not fit in a copy of a file, and where. */
export interface FrozenFault {
	readonly path: readonly PropertyKey[];
	readonly message: string;
	readonly remedy: string;
}

/** The workbook of a file with its copies in full. */
export function withFrozenRead(
	workbook: Omit<Workbook, 'frozen'> & { readonly frozen?: readonly FiledFrozen[] | undefined }
): { readonly workbook: Workbook; readonly faults: readonly FrozenFault[] } {
	const { frozen, ...rest } = workbook;
	if (!frozen) return { workbook: rest, faults: [] };
	const now = quantityPlaces(rest);
	const faults: FrozenFault[] = [];
	let room = MOST_CELLS;
	const read = frozen.map((copy, place): Frozen => {
		const members = membersOf(copy);
		const quantities = copy.quantities.map((one, at): FrozenQuantity => {
			const { label: own, values, reasons, ...given } = one;
			const path = ['frozen', place, 'quantities', at];
			const today = now.get(one.name)?.quantity;
			if (own === undefined && !today)
				faults.push({
					path,
					message: 'has no label, and the workbook has no quantity of this name to take it from',
					remedy: 'Write its "label", or take it out of the copy.'
				});
			for (const [long, short] of FORMS)
				if (one[long] !== undefined && one[short] !== undefined)
					faults.push({
						path: [...path, short],
						message: `stands beside "${long}", which says the same in another way`,
						remedy: 'Keep one of the two.'
					});
			const lists = listsOf(members, one);
			const opened = (runs: readonly Run[] | undefined, field: string): Values | undefined => {
				if (!runs) return undefined;
				const cells = lists.reduce((count, { length }) => count * length, 1);
				const listed = counted(runs, () => true);
				room -= counted(runs, (value) => value !== null);
				const most = lists.length === 0 ? 0 : cells;
				if (listed > most || room < 0) {
					faults.push({
						path: [...path, field],
						message:
							listed > most
								? `lists ${listed} values, and its sets have room for ${most}`
								: `with it the copies hold more than ${MOST_CELLS} values`,
						remedy: 'Open the file as it was saved.'
					});
					return undefined;
				}
				return treeOf(runs, lists);
			};
			const [value, without] = [opened(values, 'values'), opened(reasons, 'reasons')];
			const formula = given.formula ?? (own === undefined && today ? formulaOf(today) : undefined);
			return {
				...given,
				label: own ?? today?.label ?? one.name,
				...(formula !== undefined && { formula }),
				...(value !== undefined && { value }),
				...(without !== undefined && { without })
			};
		});
		return { ...copy, quantities };
	});
	return { workbook: { ...rest, frozen: read }, faults };
}

const timesOf = (run: Run): number => (Array.isArray(run) ? run[0] : 1);
const scalarOf = (run: Run): Scalar => (Array.isArray(run) ? run[1] : run);

const counted = (runs: readonly Run[], counts: (value: Scalar) => boolean): number =>
	runs.reduce<number>((sum, run) => sum + (counts(scalarOf(run)) ? timesOf(run) : 0), 0);

function treeOf(runs: readonly Run[], lists: readonly (readonly string[])[]): Values | undefined {
	const root: { [member: string]: Values } = {};
	let cell = 0;
	for (const run of runs) {
		const end = cell + timesOf(run);
		const value = scalarOf(run);
		if (value !== null) for (; cell < end; cell++) enter(root, lists, cell, value);
		cell = end;
	}
	return Object.keys(root).length > 0 ? root : undefined;
}

function enter(
	root: { [member: string]: Values },
	lists: readonly (readonly string[])[],
	cell: number,
	value: Scalar
): void {
	const at: string[] = [];
	let left = cell;
	for (let depth = lists.length - 1; depth >= 0; depth--) {
		const list = lists[depth]!;
		at[depth] = list[left % list.length]!;
		left = Math.floor(left / list.length);
	}
	let here = root;
	for (const id of at.slice(0, -1)) {
		const inner = branch(here, id);
		const next = isTree(inner) ? (inner as { [member: string]: Values }) : {};
		if (next !== inner) put<Values>(here, id, next);
		here = next;
	}
	put(here, at.at(-1)!, value);
}
