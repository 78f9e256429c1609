/**
 * The invented plant's figures (../plant.json) as data with a shape, and what each scenario makes of
 * them: which lines, rewinders, patterns, posts and gauges stand. No arithmetic on pipe or money here.
 */
import data from '../plant.json';

export type Share = Readonly<Record<string, number>>;

export interface Material {
	readonly eur_per_kg: number;
	readonly density_kg_m3: number;
	readonly cool_s_mm2?: number;
	readonly scrap_eur_per_kg?: number;
	/** Of an extruder, against what it was accepted with. */
	readonly output?: number;
}

export interface Capability {
	readonly eccentricity_mm: number;
	readonly sigma_mm: number;
	readonly gauge_u_mm: number;
}

/** What a pipe is sold as. */
export interface Item {
	readonly id: string;
	readonly coil_m: number;
	readonly demand_m: number;
	readonly pack_eur_per_coil: number;
	readonly coils_per_pallet: number;
	readonly customer_label: boolean;
	readonly customer_print: boolean;
	readonly list_eur_m: number;
}

export interface Product {
	readonly id: string;
	readonly base: string;
	readonly od_mm: number;
	readonly wall_min_mm: number;
	readonly k: number;
	readonly capability: { readonly today: Capability; readonly gauged: Capability };
	readonly layers: readonly { readonly material: string; readonly mm: number | null }[];
	/** Of the standard coil, by which the pipe is told. */
	readonly coil_m: number;
	readonly route: string;
	readonly crosslink: boolean;
	readonly price_net_eur_m: number;
	/** Of its items together. */
	readonly demand_m: number;
	readonly items: readonly Item[];
	readonly season: string;
	readonly stock_max_m: number;
	readonly lot_m: number;
	readonly setup_h: number;
	readonly setup_scrap_kg: number;
	readonly run_scrap: number;
	readonly coil_loss: number;
	readonly drum_m: number;
	readonly drum_change_s: number;
	readonly rewind: {
		readonly speed_m_min: number;
		readonly accel_s: number;
		readonly doff_wrap_s: number;
	};
	readonly pallet_eur: number;
}

export interface Line {
	readonly id: string;
	readonly pattern: string;
	readonly products: readonly string[];
	readonly cooling_m: number;
	readonly extruders: readonly {
		readonly id: string;
		readonly max_kg_h: number;
		readonly run_at: number;
	}[];
	readonly haul_off_max_m_min: number;
	readonly winder_max_m_min: number;
	readonly inspection_max_m_min: number;
	readonly mtbf_h: number;
	readonly mttr_h: number;
	readonly restart_scrap_kg: number;
	/** Its own, where it differs from the plant. */
	/** Overheads of its hour, against those of other lines. */
	readonly rate_weight?: number;
	readonly pm_h_per_month?: number;
	readonly restart_h?: number;
	readonly weekly_start_scrap_kg?: number;
	readonly process_kWh_kg?: number;
	readonly standby_kW?: number;
}

export interface Rewinder {
	readonly id: string;
	readonly pattern: string;
}

export interface Option {
	readonly capex?: number;
	readonly capex_items?: Share;
	readonly life_y: number;
	readonly residual?: number;
	readonly ramp: readonly number[];
	readonly line_pattern?: Readonly<Record<string, string>>;
	readonly rewinder_pattern?: Readonly<Record<string, string>>;
	readonly chamber_pattern?: string;
	/** Months, from 1, in which the option's patterns hold; all of them when left out. */
	readonly weekend_months?: readonly number[];
	readonly weekend_posts?: Share;
	readonly add_line?: Line;
	readonly add_rewinder?: Rewinder;
	readonly overhead_extra?: number;
	readonly posts_extra?: Share;
	readonly gauging?: string;
}

export const plant = data;
export const products: readonly Product[] = data.products.map((pipe) => ({
	...pipe,
	demand_m: pipe.items.reduce((metres, item) => metres + item.demand_m, 0)
}));
export const materials: Readonly<Record<string, Material>> = data.materials;
const options: Readonly<Record<string, Option>> = data.options;
export type OptionName = keyof typeof data.options;

/** Demand against today by plan year, today first. */
export const DEMAND_PATH: readonly number[] = [1, ...data.demand_path];

/** The options of each scenario, the first of a combination first. */
const CHOSEN = {
	base: [],
	weekend_crews: ['A1 weekend crews all year'],
	weekend_crews_jul_nov: ['A2 weekend crews Jul-Nov'],
	new_line: ['B new line L8'],
	new_rewinder: ['C new rewinder R4'],
	better_gauging: ['D gauging on L1-L7'],
	new_line_and_rewinder: ['B new line L8', 'C new rewinder R4'],
	weekend_crews_and_gauging: ['A1 weekend crews all year', 'D gauging on L1-L7']
} as const satisfies Readonly<Record<string, readonly OptionName[]>>;

export type ScenarioId = keyof typeof CHOSEN;
export const SCENARIOS = Object.keys(CHOSEN) as ScenarioId[];

/** The pattern worked in each month of the year. */
export type Roster = readonly string[];

export interface Setting {
	readonly options: readonly Option[];
	readonly lines: readonly (Line & { readonly roster: Roster })[];
	readonly rewinders: readonly (Rewinder & { readonly roster: Roster })[];
	readonly chambers: Roster;
	readonly capability: 'today' | 'gauged';
}

export const MONTHS: readonly number[] = Array.from({ length: 12 }, (_, month) => month + 1);

/** The same pattern in every month. */
export const allYear = (pattern: string): Roster => MONTHS.map(() => pattern);

/** The plant as it stands in one scenario. */
export const settingOf = (id: ScenarioId): Setting => settingWith(CHOSEN[id]);

/** The plant with these options, the one whose ramp-up counts first. */
export function settingWith(names: readonly OptionName[]): Setting {
	const chosen = names.map((name) => given(options, name));
	const byMonth = (own: string, patternIn: (option: Option) => string | undefined): Roster =>
		MONTHS.map((month) =>
			chosen
				.filter(({ weekend_months }) => weekend_months?.includes(month) ?? true)
				.reduce((pattern, option) => patternIn(option) ?? pattern, own)
		);
	const rosterOf = (own: Rewinder, of: 'line_pattern' | 'rewinder_pattern') =>
		byMonth(own.pattern, (option) => option[of]?.[own.id]);
	const lines: Line[] = [...data.lines, ...chosen.flatMap((option) => option.add_line ?? [])];
	const rewinders = [...data.rewinders, ...chosen.flatMap((option) => option.add_rewinder ?? [])];
	return {
		options: chosen,
		lines: lines.map((line) => ({ ...line, roster: rosterOf(line, 'line_pattern') })),
		rewinders: rewinders.map((rewinder) => ({
			...rewinder,
			roster: rosterOf(rewinder, 'rewinder_pattern')
		})),
		chambers: byMonth(data.crosslink.pattern, (option) => option.chamber_pattern),
		capability: chosen.some((option) => option.gauging === 'gauged') ? 'gauged' : 'today'
	};
}

export const outlayOf = ({ capex, capex_items: items }: Option) =>
	capex ?? sum(Object.values(items ?? {}));

export function productOf(id: string): Product {
	const found = products.find((product) => product.id === id);
	if (!found) throw new Error(`plant.json has no product ${id}`);
	return found;
}

export function given<T>(record: Readonly<Record<string, T>>, key: string): T {
	const value = record[key];
	if (value === undefined) throw new Error(`plant.json has no ${key}`);
	return value;
}

export function sum(terms: readonly number[]): number {
	return terms.reduce((total, term) => total + term, 0);
}
