/** Faults as people make them, by class, and how often each is seeded. */
import type { Command } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';
import type { Plan } from '$lib/engine/plan';
import type { Column } from '$lib/engine/scenarios';
import type { Dice } from './dice';

export type FaultClass =
	| 'unit'
	| 'magnitude'
	| 'reference'
	| 'dropped'
	| 'operator'
	| 'hard_coded'
	| 'range_of_sum'
	| 'condition'
	| 'stale'
	| 'scale'
	| 'missing'
	| 'omission';

export interface Fault {
	/** Null for an edit that is meant as it is. */
	readonly class: FaultClass | null;
	readonly quantity: string;
	/** What is done, in words: "one value times 1000 (PX15B)". */
	readonly what: string;
	readonly edit: Command;
}

/** What faults are put into: the sound workbook, its plan, and what it computes in the base. */
export interface Sound {
	readonly workbook: Workbook;
	readonly plan: Plan;
	readonly base: Column;
}

/** Null where the draw led to none; the next one may. */
export type Seeder = (sound: Sound, dice: Dice) => Fault | null;

/** Of a thousand, about in the proportions in which they were first counted. */
export const CLASSES: Readonly<
	Record<FaultClass, { readonly title: string; readonly weight: number }>
> = {
	unit: { title: 'unit slip in an entry', weight: 93 },
	magnitude: { title: 'magnitude, digits, sign', weight: 104 },
	reference: { title: 'wrong reference', weight: 145 },
	dropped: { title: 'dropped term or factor', weight: 81 },
	operator: { title: 'operator changed', weight: 81 },
	hard_coded: { title: 'hard-coded number', weight: 64 },
	range_of_sum: { title: 'range of a sum', weight: 70 },
	condition: { title: 'MIN, MAX, conditions', weight: 76 },
	stale: { title: 'stale copy, exception left', weight: 89 },
	scale: { title: 'scale constant', weight: 55 },
	missing: { title: 'missing entry', weight: 52 },
	omission: { title: 'omission in a scenario', weight: 90 }
};
export const CLASS_NAMES = Object.keys(CLASSES) as FaultClass[];
