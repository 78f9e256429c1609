/** What a run of columns gives: one list of values and one of states for each result. */

/** Column by column, for each result in turn; NaN where the state is not OK. */
export interface ColumnsOut {
	readonly values: readonly Float64Array[];
	readonly states: readonly Uint8Array[];
}

/** For so many results of so many draws. */
export const roomFor = (results: number, count: number): ColumnsOut => ({
	values: Array.from({ length: results }, () => new Float64Array(count)),
	states: Array.from({ length: results }, () => new Uint8Array(count))
});
