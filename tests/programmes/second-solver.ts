/** The second solver: GLPK, written by other people on other methods, asked the same programme in its own words. */
import loadGlpk from 'glpk.js/node';
import { columnCount, rowCount, type LinearProgramme } from '$lib/programmes/linear';

export interface SecondAnswer {
	readonly status: 'optimal' | 'infeasible' | 'unbounded' | 'other';
	readonly objective: number;
	readonly chosen: number[];
	/** By row; empty where something is whole. */
	readonly dual: number[];
}

const glpk = await loadGlpk();

export async function solveBySecond(programme: LinearProgramme): Promise<SecondAnswer> {
	const { starts, columns, values, rowLower, rowUpper, lower, upper, whole, cost } = programme;
	const bounds = (low: number, high: number) => {
		if (low === high) return { type: glpk.GLP_FX, lb: low, ub: high };
		if (low === -Infinity && high === Infinity) return { type: glpk.GLP_FR, lb: 0, ub: 0 };
		if (low === -Infinity) return { type: glpk.GLP_UP, lb: 0, ub: high };
		if (high === Infinity) return { type: glpk.GLP_LO, lb: low, ub: 0 };
		return { type: glpk.GLP_DB, lb: low, ub: high };
	};
	const places = Array.from({ length: columnCount(programme) }, (_, at) => at);
	const mixed = whole.includes(1);
	const { result } = await glpk.solve(
		{
			name: 'random',
			objective: {
				direction: programme.maximise ? glpk.GLP_MAX : glpk.GLP_MIN,
				name: 'objective',
				vars: places.map((at) => ({ name: `x${at}`, coef: cost[at]! }))
			},
			subjectTo: Array.from({ length: rowCount(programme) }, (_, row) => ({
				name: `r${row}`,
				vars: Array.from(columns.subarray(starts[row], starts[row + 1]), (column, at) => ({
					name: `x${column}`,
					coef: values[starts[row]! + at]!
				})),
				bnds: bounds(rowLower[row]!, rowUpper[row]!)
			})),
			bounds: places.map((at) => ({ name: `x${at}`, ...bounds(lower[at]!, upper[at]!) })),
			generals: places.filter((at) => whole[at] === 1).map((at) => `x${at}`)
		},
		{ msglev: glpk.GLP_MSG_OFF, presol: mixed, mipgap: 0 }
	);
	return {
		status:
			result.status === glpk.GLP_OPT
				? 'optimal'
				: result.status === glpk.GLP_NOFEAS || result.status === glpk.GLP_INFEAS
					? 'infeasible'
					: result.status === glpk.GLP_UNBND
						? 'unbounded'
						: 'other',
		objective: result.z + programme.offset,
		chosen: places.map((at) => result.vars[`x${at}`]!),
		dual: mixed ? [] : Array.from(rowLower, (_, row) => result.dual?.[`r${row}`] ?? NaN)
	};
}
