/** The cost card of a product, and the pools behind its rates. Volumes come from a plan. */
import { averageTariff, kWhPerMetre, siteEnergyOf, type SiteEnergy } from './energy';
import { rewinderHoursOffered, type Year } from './metres';
import { peopleOf, STAGES, type People, type Stage } from './people';
import {
	given,
	materials,
	outlayOf,
	plant,
	productOf,
	products,
	sum,
	type Item,
	type Option,
	type Product,
	type Share
} from './plant';
import { netLineHours, overMonths, restarts, rewindHours } from './time';
import { at, type Works } from './works';

/** EUR per good metre. */
export interface VariableCost {
	readonly material: number;
	readonly scrap: number;
	readonly energy: number;
	readonly packaging: number;
}

export interface Card extends VariableCost {
	readonly variable: number;
	readonly lineLabour: number;
	readonly lineOverhead: number;
	readonly crosslinking: number;
	readonly rewindLabour: number;
	readonly rewindOverhead: number;
	readonly perMetre: number;
	readonly perCoil: number;
}

export function variableCost(works: Works, lineId: string, productId: string): VariableCost {
	const product = productOf(productId);
	const pipe = at(works.pipes, productId);
	const run = at(at(works.runs, lineId), productId);
	const line = works.setting.lines.find((line) => line.id === lineId);
	if (!line) throw new Error(`no line ${lineId}`);
	return {
		material: pipe.materialCost,
		scrap: (run.kgExtruded - pipe.massPerMetre) * lostPerKg(works, productId),
		energy: kWhPerMetre(product, pipe, run, line) * overMonths(line.roster, averageTariff),
		packaging:
			sum(product.items.map((item) => item.demand_m * itemPackaging(product, item))) /
			product.demand_m
	};
}

/** Of a metre of the item: straps, film and label of its coils, its part of a pallet, a customer's print. */
export function itemPackaging(product: Product, item: Item): number {
	const { label_eur_per_coil, print_eur_per_km } = plant.item_extras;
	const coil = item.pack_eur_per_coil + (item.customer_label ? label_eur_per_coil : 0);
	const pallet = product.pallet_eur / item.coils_per_pallet;
	return (coil + pallet) / item.coil_m + (item.customer_print ? print_eur_per_km / 1000 : 0);
}

/** A kg of scrap is paid at the average price of the whole pipe and earns the base polymer's value. */
export function lostPerKg(works: Works, productId: string): number {
	const pipe = at(works.pipes, productId);
	const base = given(materials, productOf(productId).base);
	return pipe.materialCost / pipe.massPerMetre - (base.scrap_eur_per_kg ?? 0);
}

export interface Pools {
	readonly people: People;
	readonly site: SiteEnergy;
	readonly startScrap: number;
	readonly labour: Readonly<Record<Stage, number>>;
	/** Production overheads, site energy and weekly start scrap. */
	readonly overhead: Readonly<Record<Stage, number>>;
	readonly sellingAndAdministration: number;
	/** Overheads of the plant and of its options, selling and administration included. */
	readonly allOverheads: number;
	/** Of the options, which is in the pools and not among those overheads. */
	readonly depreciation: number;
}

const overheadKeys: Readonly<Record<string, Share>> = plant.allocation_keys.overhead;
const siteKeys: Share = plant.allocation_keys['site_energy (base load and demand charge)'];

export function poolsOf(works: Works): Pools {
	const people = peopleOf(works.setting);
	const site = siteEnergyOf(works.setting, works.pipes, works.runs);
	const startScrap = sum(
		works.setting.lines.map(
			(line) =>
				restarts(line.roster) *
				(line.weekly_start_scrap_kg ?? plant.time_model.weekly_start_scrap_kg) *
				lostPerKg(works, line.products[0] ?? '')
		)
	);
	const production = Object.entries(plant.overheads_eur_year).filter(([name]) =>
		Object.hasOwn(overheadKeys, name)
	);
	const overheadOf = (option: Option) => option.overhead_extra ?? 0;
	// Straight line over its own life; in the factory cost, not in the result before it.
	const depreciationOf = (option: Option) => outlayOf(option) / option.life_y;
	// No rule says which stage an option's overheads burden: here the rewinder's the rewind stage,
	// a line's and the gauges' the line stage.
	const extra = (stage: Stage, of: (option: Option) => number) =>
		sum(
			works.setting.options.map((option) =>
				stage === (option.add_rewinder ? 'rewind' : 'line') ? of(option) : 0
			)
		);
	const overhead = (stage: Stage) =>
		sum(production.map(([name, eur]) => eur * (given(overheadKeys, name)[stage] ?? 0))) +
		extra(stage, (option) => overheadOf(option) + depreciationOf(option)) +
		(site.baseCost + site.demandCharge) * given(siteKeys, stage) +
		(stage === 'line' ? startScrap : 0);
	const all = sum(Object.values(plant.overheads_eur_year));
	return {
		people,
		site,
		startScrap,
		labour: people.byStage,
		overhead: {
			line: overhead('line'),
			rewind: overhead('rewind'),
			crosslink: overhead('crosslink')
		},
		sellingAndAdministration: all - sum(production.map(([, eur]) => eur)),
		allOverheads: all + sum(STAGES.map((stage) => extra(stage, overheadOf))),
		depreciation: sum(STAGES.map((stage) => extra(stage, depreciationOf)))
	};
}

/** What an hour of the line bears of the overheads, against other lines. */
export const weightOf = (works: Works, lineId: string): number =>
	works.setting.lines.find(({ id }) => id === lineId)?.rate_weight ?? 1;

/** Practical-capacity hours of the two stages that have them. */
export function capacityOf(works: Works) {
	const lines = works.setting.lines;
	return {
		line: sum(lines.map((line) => netLineHours(line))),
		/** Hours, each at the weight of its line. */
		weighed: sum(lines.map((line) => netLineHours(line) * weightOf(works, line.id))),
		rewind: rewinderHoursOffered(works)
	};
}

/** kg of cross-linked pipe in the year's plan: what the cross-linking pool is divided by. */
export function crosslinkedKg(works: Works, year: Year): number {
	return sum(
		year.made.map((made) =>
			productOf(made.product).crosslink
				? made.metres * at(works.pipes, made.product).massPerMetre
				: 0
		)
	);
}

export function cardsOf(works: Works, pools: Pools, year: Year): ReadonlyMap<string, Card> {
	const capacity = capacityOf(works);
	const crosslinkRate =
		(pools.labour.crosslink + pools.overhead.crosslink) / crosslinkedKg(works, year);
	return new Map(
		products.map((product) => {
			const weigh = weights(works, year, product.id);
			const over = (figure: (line: string) => number) =>
				sum(weigh.map(([line, share]) => share * figure(line)));
			const item = (name: keyof VariableCost) =>
				over((line) => variableCost(works, line, product.id)[name]);
			const lineHours = over((line) => at(at(works.runs, line), product.id).hoursPerMetre);
			const weighedHours = over(
				(line) => at(at(works.runs, line), product.id).hoursPerMetre * weightOf(works, line)
			);
			const rewind = (rewindHours(product) ?? 0) / capacity.rewind;
			const kg = product.crosslink ? at(works.pipes, product.id).massPerMetre : 0;
			const variable = {
				material: item('material'),
				scrap: item('scrap'),
				energy: item('energy'),
				packaging: item('packaging')
			};
			const stages = {
				lineLabour: (lineHours * pools.labour.line) / capacity.line,
				lineOverhead: (weighedHours * pools.overhead.line) / capacity.weighed,
				crosslinking: kg * crosslinkRate,
				rewindLabour: rewind * pools.labour.rewind,
				rewindOverhead: rewind * pools.overhead.rewind
			};
			const total = sum(Object.values(variable));
			const perMetre = total + sum(Object.values(stages));
			const perCoil = perMetre * product.coil_m;
			return [product.id, { ...variable, variable: total, ...stages, perMetre, perCoil }];
		})
	);
}

/** Shares of the lines in what is made of a product; all to its first able line when nothing is. */
function weights(
	works: Works,
	year: Year,
	product: string
): readonly (readonly [string, number])[] {
	const made = year.made.filter((made) => made.product === product && made.metres > 0);
	const total = sum(made.map((made) => made.metres));
	if (total > 0) return made.map((made) => [made.line, made.metres / total]);
	const able = works.setting.lines.find((line) => line.products.includes(product));
	return able ? [[able.id, 1]] : [];
}
