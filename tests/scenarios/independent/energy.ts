/** Electricity: average tariffs, kWh per good metre, and the site's base load and peak. */
import type { Run } from './line';
import type { Pipe } from './pipe';
import { plant, sum, type Line, type Product, type Setting } from './plant';
import { restarts, weekAverage } from './time';

const { energy, tariff } = plant;

const tariffs = new Map<string, number>();

/** EUR/kWh over the hours of a pattern's week. */
export function averageTariff(pattern: string): number {
	const known = tariffs.get(pattern) ?? averageOf(pattern);
	tariffs.set(pattern, known);
	return known;
}

function averageOf(pattern: string): number {
	return weekAverage(pattern, (weekday, hour) => {
		const band = tariff.bands.find(
			(band) =>
				band.weekdays.includes(weekday) &&
				band.hours.some(([from = 0, to = 0]) => hour >= from && hour < to)
		);
		if (!band) throw new Error(`no tariff band on weekday ${weekday} at ${hour} h`);
		return band.eur_per_kWh;
	});
}

export const processPerKg = (line: Line): number => line.process_kWh_kg ?? energy.process_kWh_kg;

export function kWhPerMetre(product: Product, pipe: Pipe, run: Run, line: Line): number {
	return (
		run.kgExtruded * processPerKg(line) +
		(product.crosslink ? pipe.massPerMetre * energy.crosslink_kWh_kg : 0) +
		run.setUps.hours * run.setUps.perMetre * (line.standby_kW ?? energy.standby_kW_per_line) +
		(product.route === 'inline' ? 0 : energy.rewind_kWh_m)
	);
}

export interface SiteEnergy {
	readonly baseCost: number;
	readonly baseKWh: number;
	readonly peakKW: number;
	readonly demandCharge: number;
}

/** The site's own: base load at the plain average of the 168 hours, and the peak paid every month. */
export function siteEnergyOf(
	setting: Setting,
	pipes: ReadonlyMap<string, Pipe>,
	runs: ReadonlyMap<string, ReadonlyMap<string, Run>>
): SiteEnergy {
	// The largest power of a line is at its technical speed: the speed ratio is an average over time.
	const largest = setting.lines.map(
		(line) =>
			processPerKg(line) *
			Math.max(
				...line.products.map(
					(id) =>
						60 * (runs.get(line.id)?.get(id)?.speed ?? NaN) * (pipes.get(id)?.massPerMetre ?? NaN)
				)
			)
	);
	const peakKW = energy.base_kW + energy.coincidence * sum(largest) + energy.crosslink_kW_peak;
	// Measured with a start of each line in fifty weeks; more of them draw more, fewer less.
	const starts = sum(setting.lines.map(({ roster }) => restarts(roster)));
	const baseKWh =
		energy.base_kW * 8760 + (starts - energy.starts_in_base_load) * energy.heat_up_kWh;
	return {
		baseKWh,
		baseCost: baseKWh * averageTariff('7x24'),
		peakKW,
		demandCharge: peakKW * tariff.demand_eur_kW_month * 12
	};
}
