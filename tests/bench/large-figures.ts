/** What `one-large.ts` reports of one plant: milliseconds of the processor, and counts. */
export interface LargeFigures {
	readonly values: number;
	readonly nodes: number;
	readonly rows: number;
	readonly changes: number;
	readonly doubted: number;
	/** Parts of opening, cold. */
	readonly read: number;
	readonly plan: number;
	readonly base: number;
	readonly rest: number;
	/** Once the code is warm. */
	readonly edits: readonly number[];
	readonly formula: number;
	readonly member: number;
	readonly look: number;
	readonly enter: number;
	readonly bytes: number;
}
