/**
 * The only module that imports HiGHS, and the only one that knows its codes. It is fetched when a workbook has a
 * programme; where its binary lies is said from outside, as each place has another way to it.
 *
 * One model is kept, so that programmes of the same shape start from the basis of the last.
 */
import type { Basis, Highs, Model } from 'highs';
import { columnCount, isMixed, rowCount, type LinearProgramme } from './linear';
import type { Direction } from './ray';

export type { Basis } from 'highs';

export type SolverStatus = 'optimal' | 'infeasible' | 'unbounded' | 'time-limit' | 'failed';

export interface SolverAnswer {
	readonly status: SolverStatus;
	/** Null where the solver found no choices at all. */
	readonly chosen: Float64Array | null;
	/** By row, of a maximum as of a minimum: how the objective changes with the row's bound. Empty with whole numbers. */
	readonly rowDual: Float64Array;
	/** What no plan can beat; the objective itself where nothing must be whole. */
	readonly bound: number;
}

export interface RunSettings {
	/** Starts from it where it fits. */
	readonly basis?: Basis | null | undefined;
	readonly seconds: number;
	/** Relative gap at which a programme with whole numbers is good enough. */
	readonly gap: number;
}

/** Primal and dual; the numbers that come here are scaled to a size of about one. */
export const TOLERANCE = 1e-9;

export class Solver {
	readonly #highs: Highs;
	#model: Model;
	#last: SolverAnswer | null = null;
	/** By row of the basis, which column is in it; below 0 a row. */
	#basic: Int32Array | null = null;

	private constructor(highs: Highs) {
		this.#highs = highs;
		this.#model = this.#fresh();
	}

	/** `wasmUrl`: where the binary is; left out, it lies beside the package. */
	static async load(wasmUrl?: string): Promise<Solver> {
		const { default: load } = await import('highs');
		return new Solver(await load(wasmUrl === undefined ? {} : { locateFile: () => wasmUrl }));
	}

	/** Bytes that the solver has taken from the machine. */
	get memory(): number {
		return this.#highs.memoryBytes;
	}

	solve(programme: LinearProgramme, settings: RunSettings): SolverAnswer {
		try {
			this.#pass(programme);
			return this.#run(programme, settings);
		} catch {
			// What the library throws leaves its model in doubt.
			this.#renew();
			return (this.#last = FAILED);
		}
	}

	/** Solves again with other bounds of one row, from the last basis. */
	solveWithRow(
		programme: LinearProgramme,
		row: number,
		bounds: { readonly lower: number; readonly upper: number },
		settings: RunSettings
	): SolverAnswer {
		this.#model.changeRowBounds(row, bounds.lower, bounds.upper);
		return this.#run(programme, settings);
	}

	/** Solves again with other bounds of the rows, all else alike, from where it was. */
	solveWithRows(programme: LinearProgramme, settings: RunSettings): SolverAnswer {
		const last = rowCount(programme) - 1;
		const { rowLower, rowUpper } = programme;
		if (last >= 0)
			this.#model.changeRowsBounds({ kind: 'range', from: 0, to: last }, rowLower, rowUpper);
		return this.#run(programme, settings);
	}

	/** The answer to what was asked last. */
	last(): SolverAnswer {
		return this.#last ?? FAILED;
	}

	basis(): Basis {
		return this.#model.getBasis();
	}

	/** How the chosen values of the last answer move with one unit more of a row that is tight. */
	directionOf(row: number): Direction {
		this.#basic ??= this.#model.getBasicVariables();
		const { values, nonzeroIndices } = this.#model.getBasisInverseCol(row, true);
		const columns: number[] = [];
		const steps: number[] = [];
		for (const place of nonzeroIndices ?? []) {
			const column = this.#basic[place]!;
			if (column < 0) continue;
			columns.push(column);
			steps.push(values[place]!);
		}
		return { columns, steps };
	}

	dispose(): void {
		this.#model.dispose();
	}

	#fresh(): Model {
		const model = this.#highs.createModel();
		model.options.set({
			random_seed: 0,
			primal_feasibility_tolerance: TOLERANCE,
			dual_feasibility_tolerance: TOLERANCE
		});
		return model;
	}

	#renew(): void {
		this.#model.dispose();
		this.#model = this.#fresh();
	}

	#pass(programme: LinearProgramme): void {
		const { constants } = this.#highs;
		const { maximise, minimise } = {
			maximise: constants.objectiveSense.maximize,
			minimise: constants.objectiveSense.minimize
		};
		this.#model.passModel({
			numCols: columnCount(programme),
			numRows: rowCount(programme),
			sense: programme.maximise ? maximise : minimise,
			offset: programme.offset,
			colCost: programme.cost,
			colLower: programme.lower,
			colUpper: programme.upper,
			rowLower: programme.rowLower,
			rowUpper: programme.rowUpper,
			matrix: {
				format: 'csr',
				numRows: rowCount(programme),
				numCols: columnCount(programme),
				starts: programme.starts,
				indices: programme.columns,
				values: programme.values
			},
			...(isMixed(programme) && { integrality: Int32Array.from(programme.whole) })
		});
	}

	#run(programme: LinearProgramme, { basis, seconds, gap }: RunSettings): SolverAnswer {
		const model = this.#model;
		const mixed = isMixed(programme);
		this.#basic = null;
		model.options.set({ time_limit: seconds, mip_rel_gap: gap });
		model.zeroAllClocks();
		if (basis && fits(basis, programme)) model.setBasis(basis);
		const { modelStatus } = model.run();
		let status = this.#statusOf(modelStatus);
		if (modelStatus === this.#highs.constants.modelStatus.unboundedOrInfeasible)
			status = this.#whichOfTwo(model);
		const found = status === 'optimal' || (status === 'time-limit' && mixed && hasSolution(model));
		const solution = found ? model.getSolution() : null;
		this.#last = {
			status,
			chosen: solution && solution.colValue,
			rowDual: solution && !mixed ? solution.rowDual : new Float64Array(),
			bound: !found
				? NaN
				: mixed
					? Number(model.info.get('mip_dual_bound'))
					: model.getObjectiveValue()
		};
		return this.#last;
	}

	#whichOfTwo(model: Model): SolverStatus {
		model.options.set('presolve', 'off');
		const { modelStatus } = model.run();
		model.options.set('presolve', 'choose');
		return this.#statusOf(modelStatus);
	}

	#statusOf(code: number): SolverStatus {
		const { modelStatus } = this.#highs.constants;
		switch (code) {
			case modelStatus.optimal:
			case modelStatus.empty:
				return 'optimal';
			case modelStatus.infeasible:
				return 'infeasible';
			case modelStatus.unbounded:
				return 'unbounded';
			case modelStatus.timeLimit:
			case modelStatus.iterationLimit:
				return 'time-limit';
			default:
				return 'failed';
		}
	}
}

const FAILED: SolverAnswer = {
	status: 'failed',
	chosen: null,
	rowDual: new Float64Array(),
	bound: NaN
};

const hasSolution = (model: Model): boolean =>
	Number(model.info.get('primal_solution_status')) === 2;

const fits = (basis: Basis, programme: LinearProgramme): boolean =>
	basis.colStatus.length === columnCount(programme) &&
	basis.rowStatus.length === rowCount(programme);
