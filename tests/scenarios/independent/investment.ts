/** Cash flows of an option against the plant without it, and what they are worth. */
import { outlayOf, plant, sum, type Option } from './plant';
import type { YearResult } from './result';

export interface Investment {
	readonly outlay: number;
	readonly life: number;
	readonly workingCapital: number;
	/** Year 0 to the end of life. */
	readonly netCashFlow: readonly number[];
	readonly npv: number;
	/** Null where no rate, or more than one, makes the flows worth nothing. */
	readonly irr: number | null;
	readonly mirr: number | null;
	/** Years; null where the outlay never comes back. */
	readonly payback: number | null;
	readonly discountedPayback: number | null;
	readonly equivalentAnnualValue: number;
}

const { wacc_nominal: wacc, tax, inflation } = plant.finance;
/** Cases of unequal lives are compared in money of one year. */
const real = (1 + wacc) / (1 + inflation) - 1;
const WORKING_CAPITAL_SHARE = 0.1;

/** `withIt` and `without` by plan year, today first. */
export function investmentOf(
	options: readonly Option[],
	withIt: readonly YearResult[],
	without: readonly YearResult[]
): Investment | null {
	const [first] = options;
	if (!first) return null;
	const outlay = sum(options.map(outlayOf));
	const life = Math.min(...options.map((option) => option.life_y));
	const residual = Math.min(...options.map((option) => option.residual ?? 0));

	const earned = (year: YearResult | undefined) => year?.beforeDepreciation ?? NaN;
	const gains = withIt.map((year, at) => earned(year) - earned(without[at]));
	const revenueGains = withIt.map((year, at) => year.revenue - (without[at]?.revenue ?? NaN));
	// Neither inflated nor ramped: the plan years' own figures, today's left out.
	const workingCapital = WORKING_CAPITAL_SHARE * Math.max(0, ...revenueGains.slice(1));

	const netCashFlow = [-outlay - workingCapital];
	for (let year = 1; year <= life; year++) {
		const gain = gains[Math.min(year, gains.length - 1)] ?? NaN;
		const ramp = gain > 0 ? (first.ramp[Math.min(year, first.ramp.length) - 1] ?? NaN) : 1;
		const nominal = gain * ramp * (1 + inflation) ** year;
		const atEnd = year === life ? workingCapital + residual * outlay * (1 - tax) : 0;
		netCashFlow.push(nominal - tax * (nominal - outlay / life) + atEnd);
	}
	const npv = presentValue(netCashFlow, wacc);
	const discounted = netCashFlow.map((cash, year) => cash / (1 + wacc) ** year);
	return {
		outlay,
		life,
		workingCapital,
		netCashFlow,
		npv,
		irr: rateOfReturn(netCashFlow),
		mirr: modifiedRate(netCashFlow),
		payback: crossing(netCashFlow),
		discountedPayback: crossing(discounted),
		equivalentAnnualValue: (npv * real) / (1 - (1 + real) ** -life)
	};
}

export function presentValue(flows: readonly number[], rate: number): number {
	return sum(flows.map((cash, year) => cash / (1 + rate) ** year));
}

/** The only rate above −100 % at which the flows are worth nothing, found on a grid and by halving. */
export function rateOfReturn(flows: readonly number[]): number | null {
	// Evenly spaced in the discount factor's logarithm, from −99 % to 9,900 % a year.
	const steps = 4000;
	const rateAt = (step: number) => 100 ** ((2 * step) / steps - 1) - 1;
	const found: number[] = [];
	for (let step = 0; step < steps; step++) {
		let low = rateAt(step);
		let high = rateAt(step + 1);
		const below = Math.sign(presentValue(flows, low));
		if (below === Math.sign(presentValue(flows, high))) continue;
		for (let halving = 0; halving < 100; halving++) {
			const middle = (low + high) / 2;
			if (Math.sign(presentValue(flows, middle)) === below) low = middle;
			else high = middle;
		}
		found.push((low + high) / 2);
	}
	return found.length === 1 ? (found[0] ?? null) : null;
}

/** Outlays discounted and inflows compounded at the cost of capital. */
function modifiedRate(flows: readonly number[]): number | null {
	const last = flows.length - 1;
	const inflows = sum(flows.map((cash, year) => Math.max(0, cash) * (1 + wacc) ** (last - year)));
	const outlays = sum(flows.map((cash, year) => Math.max(0, -cash) / (1 + wacc) ** year));
	return inflows > 0 && outlays > 0 ? (inflows / outlays) ** (1 / last) - 1 : null;
}

/** When the running total first comes back from below nothing, on a straight line within the year. */
export function crossing(flows: readonly number[]): number | null {
	let before = 0;
	for (const [year, cash] of flows.entries()) {
		const after = before + cash;
		if (before < 0 && after >= 0) return year - 1 + -before / cash;
		before = after;
	}
	return null;
}
