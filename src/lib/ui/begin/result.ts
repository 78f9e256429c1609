/** What the first hour comes to: the cost card of the subject, and what stands beside the books. */
import { cellAt, type Layout, type QuantityLayout } from '$lib/engine/layout';
import { OK } from '$lib/engine/state';
import type { Results } from '$lib/engine/results';
import { pictureOf } from '$lib/workbook/lookup';
import type { Asked, StepState } from './steps';

export interface CardLine {
	readonly label: string;
	readonly quantity: QuantityLayout;
	readonly cell: number;
}

export interface Card {
	readonly item: string;
	readonly label: string;
	readonly parts: readonly CardLine[];
	readonly total: CardLine | null;
	readonly perUnit: CardLine | null;
	/** What of the item is asked for and still typical, by quantity; the card waits for it. */
	readonly waitsFor: readonly string[];
}

/** Of the picture that cuts cost into its parts; null where the workbook has none. */
export function cardOf(
	layout: Layout,
	states: readonly StepState[],
	subject: string | null
): Card | null {
	const picture = pictureOf(layout.workbook, 'build_up');
	const set = layout.sets.get(picture?.subject ?? '');
	const table = states.find((state) => state.table?.set.name === set?.name)?.table;
	const rows = table?.rows ?? [];
	const row = rows.find(({ member }) => member.id === subject) ?? rows[0];
	if (!picture || !row) return null;
	const item = row.member.id;
	const line = (name: string | undefined, part: string | null, label: string): CardLine | null => {
		const quantity = layout.byName.get(name ?? '');
		if (!quantity) return null;
		const ordinals = quantity.axes.map(
			({ set: axis }) =>
				layout.ordinals.get(axis)?.get(axis === set?.name ? item : (part ?? '')) ?? -1
		);
		const cell = cellAt(quantity, ordinals);
		return cell < 0 ? null : { label, quantity, cell };
	};
	const parts = layout.sets.get(picture.part)?.members ?? [];
	const whole = (name: string | undefined) =>
		line(name, null, layout.byName.get(name ?? '')?.quantity.label ?? '');
	return {
		...{ item, label: row.member.label ?? item },
		parts: parts.flatMap(({ id, label }) => line(picture.quantity, id, label ?? id) ?? []),
		...{ total: whole(picture.total), perUnit: whole(picture.per_unit) },
		waitsFor: row.asked.flatMap((one) =>
			one && (one.isTypical || one.isMissing) ? [one.quantity.quantity.label] : []
		)
	};
}

/** Quantities over the same set side by side, or one that stands alone. */
export interface Compared {
	/** The set's label; empty for what is per nothing. */
	readonly of: string;
	readonly columns: readonly QuantityLayout[];
	readonly rows: readonly { readonly label: string; readonly cells: readonly number[] }[];
}

/** What the steps hold against the books, each once. */
export function comparedOf(layout: Layout, states: readonly StepState[]): Compared[] {
	const names = [...new Set(states.flatMap(({ step }) => step.compare ?? []))];
	const found = names.flatMap((name) => layout.byName.get(name) ?? []);
	const sets = [...new Set(found.flatMap(({ axes }) => (axes.length === 1 ? axes[0]!.set : [])))];
	const tables = sets.map((name): Compared => {
		const columns = found.filter(({ axes }) => axes.length === 1 && axes[0]!.set === name);
		const set = layout.sets.get(name);
		const rows = (set?.members ?? []).map(({ id, label }, i) => ({
			label: label ?? id,
			cells: columns.map((quantity) => cellAt(quantity, [i]))
		}));
		return { of: set?.label ?? name, columns, rows };
	});
	const alone = found.filter(({ axes }) => axes.length === 0);
	const rows = alone.map(({ quantity, base }) => ({ label: quantity.label, cells: [base] }));
	return alone.length > 0 ? [...tables, { of: '', columns: alone, rows }] : tables;
}

/** What is asked for with nothing of what is asked of it: it is in no sum. */
export function withoutMetres(results: Results, states: readonly StepState[]): string[] {
	return states.flatMap(({ table }) => {
		const zero = new Set(table?.set.not_copied ?? []);
		const isNone = (one: Asked | null) =>
			one !== null &&
			(one.isMissing ||
				(zero.has(one.quantity.quantity.name) &&
					results.states[one.cell] === OK &&
					results.values[one.cell] === 0));
		return (table?.rows ?? []).flatMap(({ member, asked }) =>
			asked.some(isNone) ? [member.id] : []
		);
	});
}
