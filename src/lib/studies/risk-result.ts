/** What a risk study found: plain data, for the screen, for paper and for the command line. */
import type { ErrorCode, NothingKind } from '$lib/engine/state';
import type { FaultOrigin } from './fault-origins';
import type { FirstDraw } from './first-draw';

export interface RiskPoint {
	readonly draws: number;
	readonly mean: number;
	/** How far off it may be (one standard error); of plain sampling, so Latin hypercube draws are nearer. */
	readonly meanError: number;
	readonly percentiles: Readonly<Record<'5' | '50' | '95', number>>;
	readonly percentileErrors: Readonly<Record<'5' | '50' | '95', number>>;
}

export interface Histogram {
	readonly from: number;
	readonly width: number;
	readonly counts: readonly number[];
	/** Draws outside the bars, in the last thousandth on either side. */
	readonly below: number;
	readonly above: number;
}

/** Draws that came to no value, by what they are instead. */
export interface FaultCount {
	readonly code: NothingKind | ErrorCode;
	readonly count: number;
	/** The first of them, from 0. */
	readonly first: number;
}

export interface RiskSummary {
	readonly scenario: string;
	readonly draws: number;
	/** Draws without a value: counted here, explained in `origins`, and left out of the figures below. */
	readonly errors: number;
	readonly faults: readonly FaultCount[];
	readonly origins: readonly FaultOrigin[];
	/** How many of the failing draws were looked at for `origins`. */
	readonly lookedAt: number;
	/** NaN where no draw has a value. */
	readonly mean: number;
	readonly sd: number;
	readonly min: number;
	readonly max: number;
	/** "1", "5", "10", "25", "50", "75", "90", "95", "99". */
	readonly percentiles: Readonly<Record<string, number>>;
	/** The value at 0 %, 1 % … 100 % of the draws. */
	readonly cumulative: readonly number[];
	readonly histogram: Histogram;
	readonly target: {
		/** Of all draws; one without a value does not meet it. */
		readonly chance: number;
		readonly standardError: number;
	} | null;
	readonly convergence: readonly RiskPoint[];
	/** What it is where nothing is drawn; NaN where it has no value. */
	readonly base: number;
}

export interface Driver {
	/** Place among the study's inputs. */
	readonly input: number;
	readonly label: string;
	/** Rank correlation with the result. */
	readonly rank: number;
	/** The share of the variance that goes with this input alone. */
	readonly share: number;
}

export interface RiskResult extends RiskSummary {
	readonly kind: 'risk';
	readonly quantity: string;
	readonly members: readonly string[];
	readonly unit: string;
	readonly seed: number;
	/** Greatest share first. */
	readonly drivers: readonly Driver[];
	/** What is left of the variance: inputs acting together. Null where inputs are correlated. */
	readonly together: number | null;
	readonly compare: {
		readonly summary: RiskSummary;
		/** The other scenario less the studied one, draw by draw, where both have a value. */
		readonly difference: RiskSummary;
		/** Of all draws: how often the other scenario's result is the greater one. */
		readonly greater: number;
	} | null;
	readonly notices: readonly string[];
	/** Null until the second engine has looked at the first draw. */
	readonly check: FirstDraw | null;
}
