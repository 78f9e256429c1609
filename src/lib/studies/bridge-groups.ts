/** The steps of a bridge: the changes between two scenarios, by quantity unless the study groups them. */
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { StudyOf } from '$lib/workbook/study-schema';
import { differences, isAmong, type Difference } from './cell-entries';

export type BridgeStudy = StudyOf<'bridge'>;

/** Changes that go as one step. */
export interface BridgeGroup {
	readonly label: string;
	/** Empty where only what the scenarios are measured against differs, and where no input explains it. */
	readonly cells: readonly Difference[];
	/** The frozen copy whose own result differs by so much from what today's model makes of its inputs. */
	readonly since?: string;
}

/** The steps: the study's groups first, then every other change by its quantity. */
export function groupsOf(
	workbook: Workbook,
	study: Pick<BridgeStudy, 'from' | 'to' | 'groups'>
): { groups: BridgeGroup[]; idle: string[] } {
	const named = (study.groups ?? []).map(({ label, changes }) => ({
		label,
		changes,
		cells: [] as Difference[]
	}));
	const rest = new Map<string, Difference[]>();
	for (const cell of differences(workbook, study.from, study.to)) {
		const group = named.find(({ changes }) => changes.some((change) => isAmong(cell, change)));
		const cells = group?.cells ?? rest.get(cell.quantity) ?? [];
		cells.push(cell);
		if (!group) rest.set(cell.quantity, cells);
	}
	const own = [...rest].map(([name, cells]) => ({
		label: findQuantity(workbook, name)?.label ?? name,
		cells
	}));
	return {
		groups: [
			...named
				.filter(({ cells }) => cells.length > 0)
				.map(({ label, cells }) => ({ label, cells })),
			...own
		],
		idle: named.filter(({ cells }) => cells.length === 0).map(({ label }) => label)
	};
}
