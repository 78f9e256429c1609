/**
 * Results moved into a changed layout: what stands at the same members of the same quantity stays on
 * screen until the engine has answered for the new one. Cells that are new wait as empty ones.
 */
import { cellAt, type Layout, type QuantityLayout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { ABSENT } from '$lib/engine/state';

/** For each cell of the new layout, its cell in the old one, −1 where there is none. */
function cellsBefore(before: Layout, after: Layout): Int32Array {
	const from = new Int32Array(after.cells).fill(-1);
	for (const quantity of after.quantities) {
		const old = before.byName.get(quantity.quantity.name);
		const same = old?.axes.every((axis, i) => axis.set === quantity.axes[i]?.set);
		if (!old || !same || old.axes.length !== quantity.axes.length) continue;
		if (old.axes.length === 0) from[quantity.base] = old.base;
		else fillMembers(before, after, old, quantity, from);
	}
	return from;
}

function fillMembers(
	before: Layout,
	after: Layout,
	old: QuantityLayout,
	quantity: QuantityLayout,
	from: Int32Array
): void {
	const width = quantity.axes.length;
	const places = quantity.axes.map((axis) => {
		const set = after.workbook.sets.find((one) => one.name === axis.set);
		const known = before.ordinals.get(axis.set);
		return (set?.members ?? []).map((member) => known?.get(member.id) ?? -1);
	});
	for (let i = 0; i < quantity.count; i++) {
		const ordinals = places.map(
			(place, axis) => place[quantity.members[i * width + axis] ?? 0] ?? -1
		);
		if (!ordinals.includes(-1)) from[quantity.base + i] = cellAt(old, ordinals);
	}
}

export function remapResults(
	before: Layout,
	after: Layout,
	results: ReadonlyMap<string, Results>
): ReadonlyMap<string, Results> {
	const from = cellsBefore(before, after);
	const moved = new Map<string, Results>();
	for (const [id, old] of results) {
		const values = new Float64Array(after.cells).fill(NaN);
		const states = new Uint8Array(after.cells).fill(ABSENT);
		from.forEach((cell, i) => {
			if (cell < 0) return;
			values[i] = old.values[cell] ?? NaN;
			states[i] = old.states[cell] ?? ABSENT;
		});
		moved.set(id, { scenario: id, values, states });
	}
	return moved;
}
