/** The review list as the page shows it: by kind, open lines and those ticked off, each with its place. */
import type { Layout } from '$lib/engine/layout';
import { KIND_NAMES, KINDS, type Line, type LineKind } from '$lib/review/line';
import { withTicks, type Reviewed } from '$lib/review/ticks';
import type { Workbook } from '$lib/workbook/schema';
import { placeCell } from '../place-cell';

export interface Section {
	readonly kind: LineKind;
	readonly title: string;
	readonly why: string;
	readonly remedy: string;
	readonly open: readonly Reviewed[];
	readonly done: readonly Reviewed[];
}

/** Kinds without a line are left out. */
export function sectionsOf(workbook: Workbook, lines: readonly Line[]): Section[] {
	const all = withTicks(workbook, lines);
	return KIND_NAMES.flatMap((kind) => {
		const own = all.filter(({ line }) => line.kind === kind);
		if (own.length === 0) return [];
		const open = own.filter(({ tick }) => tick === null);
		return [{ kind, ...KINDS[kind], open, done: own.filter(({ tick }) => tick !== null) }];
	});
}

/** What a line stands under: its quantity, or the scenario that it is about as a whole. */
export const subjectOf = ({ scenarios }: Workbook, { quantity, scenario }: Line): string =>
	quantity?.label ?? scenarios.find(({ id }) => id === scenario)?.title ?? '';

/** The cell that a line is about, or the first of its quantity; null where it has none, or is about a scenario as a whole. */
export function cellOf(layout: Layout, { quantity, at }: Line): number | null {
	const cell = quantity ? placeCell(layout, quantity.name, at) : -1;
	return cell < 0 ? null : cell;
}
