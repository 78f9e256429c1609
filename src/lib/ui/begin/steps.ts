/** The steps of the first hour as they stand: what each asks for, and how much of it is one's own. Nothing of it is kept. */
import { cellAt, membersOf, type Layout, type QuantityLayout } from '$lib/engine/layout';
import { isInputCell } from '$lib/engine/input-cell';
import { ownInAll, type OwnCount, type OwnQuantity } from '$lib/review/template';
import type { Member, SetDefinition, Step, Workbook } from '$lib/workbook/schema';
import { axesOf } from '$lib/workbook/axes';
import { choicesOf, findSet } from '$lib/workbook/lookup';
import { flatten, valueAt } from '$lib/workbook/values';

/** One figure that is asked for. */
export interface Asked {
	readonly quantity: QuantityLayout;
	readonly at: readonly string[];
	readonly cell: number;
	/** It stands as a typical value. */
	readonly isTypical: boolean;
	/** Nothing is entered, and without it the member is in no sum. */
	readonly isMissing: boolean;
	/** Nothing is entered, and nothing has to be. */
	readonly isLeftOut: boolean;
}

/** A table of a set's members by the quantities that are per this set alone. */
export interface AskedTable {
	readonly set: SetDefinition;
	readonly columns: readonly QuantityLayout[];
	readonly rows: readonly { readonly member: Member; readonly asked: readonly (Asked | null)[] }[];
}

export interface StepState extends OwnCount {
	readonly step: Step;
	readonly table: AskedTable | null;
	/** What is per no member of the step's set, by quantity. */
	readonly lists: readonly {
		readonly quantity: QuantityLayout;
		readonly asked: readonly Asked[];
	}[];
	/** What still stands as a typical value, by quantity. */
	readonly missing: readonly string[];
}

export function stepStates(layout: Layout, own: readonly OwnQuantity[]): StepState[] {
	const open = new Map(
		own.map(({ quantity, shipped }) => [quantity.name, new Set(shipped.map(placeKey))])
	);
	return (layout.workbook.steps ?? []).map((step) => stateOf(layout, step, open));
}

const placeKey = (at: readonly string[]) => at.join('\u0001');

function stateOf(
	layout: Layout,
	step: Step,
	typical: ReadonlyMap<string, ReadonlySet<string>>
): StepState {
	const laidOut = (step.quantities ?? []).flatMap((name) => layout.byName.get(name) ?? []);
	const perSet = (quantity: QuantityLayout) =>
		step.set !== undefined && quantity.axes.length === 1 && quantity.axes[0]?.set === step.set;
	const set = layout.sets.get(step.set ?? '');
	const asked = (quantity: QuantityLayout, cell: number): Asked => {
		const at = membersOf(layout, cell);
		const isTypical = typical.get(quantity.quantity.name)?.has(placeKey(at)) ?? false;
		const stands = valueAt(quantity.quantity.value, at) ?? null;
		const isMissing =
			stands === null &&
			(set?.not_copied?.includes(quantity.quantity.name) ?? false) &&
			!isAskedForByOthers(layout.workbook, set?.name ?? '', at[0] ?? '');
		return { quantity, at, cell, isTypical, isMissing, isLeftOut: stands === null && !isMissing };
	};
	const columns = laidOut.filter(perSet);
	const table: AskedTable | null = set
		? {
				...{ set, columns },
				rows: membersAsked(set).map((member) => ({
					member,
					asked: columns.map((quantity) => {
						const cell = cellAt(quantity, [layout.ordinals.get(set.name)?.get(member.id) ?? -1]);
						return cell >= 0 && isInputCell(layout.workbook, quantity, cell)
							? asked(quantity, cell)
							: null;
					})
				}))
			}
		: null;
	const lists = laidOut
		.filter((quantity) => !perSet(quantity))
		.map((quantity) => ({
			quantity,
			asked: cellsOf(quantity)
				.filter((cell) => isInputCell(layout.workbook, quantity, cell))
				.map((cell) => asked(quantity, cell))
		}));
	const all = [
		...(table?.rows.flatMap((row) => row.asked.filter((one) => one !== null)) ?? []),
		...lists.flatMap((list) => list.asked)
	].filter(({ isLeftOut }) => !isLeftOut);
	const open = all.filter((one) => one.isTypical || one.isMissing);
	return {
		...{ step, table, lists, entered: all.length, same: open.length },
		missing: [...new Set(open.map(({ quantity }) => quantity.quantity.label))]
	};
}

/** A pipe that is sold in items has the demand of these. */
const isAskedForByOthers = (workbook: Workbook, name: string, id: string): boolean =>
	choicesOf(workbook, name).some((quantity) => {
		const [axis, ...others] = axesOf(quantity);
		if (!axis || others.length > 0 || !findSet(workbook, axis.set)?.not_copied) return false;
		return flatten(quantity.value).some(({ value }) => value === id);
	});

const cellsOf = ({ base, count }: QuantityLayout): number[] =>
	Array.from({ length: count }, (_, i) => base + i);

/** Of a set of the plant's own, those that the structure brings are not asked for. */
export const membersAsked = ({ own, members }: SetDefinition): readonly Member[] =>
	own ? members.filter(({ like }) => like !== undefined) : members;

export const inAll = (states: readonly StepState[]): OwnCount => ownInAll(states);

/** Whether a plant was begun here: the shipped ones themselves are called invented. */
export const isBegun = ({ begun_from, invented, steps }: Workbook): boolean =>
	begun_from !== undefined && !invented && (steps?.length ?? 0) > 0;
