/** What one product runs at on one line: speed, what limits it, good metres an hour, scrap by weight. */
import type { Pipe } from './pipe';
import { given, materials, type Line, type Product } from './plant';

/** Of a product on a line: one by lot for each lot, else as campaigns are run. */
export interface SetUps {
	/** For each good metre. */
	readonly perMetre: number;
	/** Of one. */
	readonly hours: number;
}

export const byLot = (product: Product): SetUps => ({
	perMetre: 1 / product.lot_m,
	hours: product.setup_h
});

export interface Run {
	/** m/min by limit. */
	readonly limits: ReadonlyMap<string, number>;
	readonly speed: number;
	readonly limitedBy: string;
	/** Good metres in an hour of running, before breakdowns and set-up. */
	readonly goodPerRunningHour: number;
	/** The same, less breakdowns. */
	readonly goodPerHour: number;
	readonly hoursPerMetre: number;
	/** kg through the extruders for each good metre. */
	readonly kgExtruded: number;
	readonly setUps: SetUps;
}

export function runOf(
	product: Product,
	pipe: Pipe,
	line: Line,
	speedRatio: number,
	setUps: SetUps = byLot(product)
): Run {
	const limits = limitsOf(product, pipe, line);
	const [limitedBy, speed] = [...limits].reduce((least, limit) =>
		limit[1] < least[1] ? limit : least
	);

	const gross = 60 * speed * speedRatio;
	const restartMetres = line.restart_scrap_kg / pipe.massPerMetre / line.mtbf_h;
	const goodPerRunningHour =
		(gross - restartMetres) * (1 - product.run_scrap) * (1 - product.coil_loss);
	const goodPerHour = goodPerRunningHour * (line.mtbf_h / (line.mtbf_h + line.mttr_h));
	return {
		limits,
		speed,
		limitedBy,
		goodPerRunningHour,
		goodPerHour,
		hoursPerMetre: 1 / goodPerHour + setUps.hours * setUps.perMetre,
		// Metres are scrapped while the line runs, so breakdown time does not enter.
		kgExtruded:
			(pipe.massPerMetre * gross) / goodPerRunningHour + product.setup_scrap_kg * setUps.perMetre,
		setUps
	};
}

function limitsOf(product: Product, pipe: Pipe, line: Line): ReadonlyMap<string, number> {
	const limits = new Map<string, number>();
	for (const extruder of line.extruders) {
		const kg = pipe.fed.get(extruder.id);
		if (kg) limits.set(extruder.id, (extruder.max_kg_h * extruder.run_at) / (60 * kg));
	}
	const coolSeconds = given(materials, product.base).cool_s_mm2 ?? NaN;
	limits.set('cooling', (60 * line.cooling_m) / (coolSeconds * pipe.wallSetPoint ** 2));
	limits.set('haul_off', line.haul_off_max_m_min);
	limits.set('winder', line.winder_max_m_min);
	limits.set('inspection', line.inspection_max_m_min);
	return limits;
}
