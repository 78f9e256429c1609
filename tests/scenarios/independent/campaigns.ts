/**
 * How often each product is run, by trying every choice: set-ups in the order of the line, their hours at the cost of a
 * line hour, their scrap, and half of what a campaign leaves in stock. No solver.
 */
import { capacityOf, lostPerKg, poolsOf, weightOf } from './cost';
import { averageTariff, processPerKg } from './energy';
import type { SetUps } from './line';
import { given, plant, products, productOf, sum, type Product, type Setting } from './plant';
import { netLineHours, overMonths } from './time';
import { at, worksIn, type Works } from './works';

const { campaigns, planning, finance, energy } = plant;
const { times_a_year: TIMES, change_h: change } = campaigns;
const colours: Readonly<Record<string, string>> = campaigns.colour;
const rounds: Readonly<Record<string, readonly string[]>> = campaigns.round;
const leastLots: Readonly<Record<string, number>> = campaigns.least_lot_m;
const splits: Readonly<Record<string, Readonly<Record<string, number>>>> = campaigns.usual_split;

/** A product on a line that can run it in campaigns. */
export interface Candidate {
	readonly product: Product;
	readonly line: string;
	/** m/year that campaigns are laid out for. */
	readonly metres: number;
	/** h, from the product before it. */
	readonly changeover: number;
	/** EUR of one, hours at their cost. */
	readonly setUpCost: number;
	/** m/year, were it made all the time. */
	readonly couldMake: number;
	/** EUR for a metre that lies in stock for a year. */
	readonly holding: number;
}

export interface Campaign extends Candidate {
	readonly timesAYear: number;
}

export function changeoverBetween(from: Product, to: Product): number {
	if (from === to) return change.print_or_coil;
	const shade = (product: Product) =>
		campaigns.colours_light_to_dark.indexOf(given(colours, product.id));
	const hasBarrier = (product: Product) =>
		product.layers.some(({ material }) => material === 'EVOH');
	const side = [
		change.print_or_coil,
		shade(from) !== shade(to) ? change.colour : 0,
		hasBarrier(from) !== hasBarrier(to) ? change.barrier : 0,
		from.od_mm !== to.od_mm ? change.size : 0,
		from.base !== to.base ? change.polymer : 0
	];
	return (
		Math.max(...side) +
		(to.od_mm < from.od_mm ? change.more_to_thinner : 0) +
		(shade(to) < shade(from) ? change.more_to_lighter : 0)
	);
}

/** m/year of each product on each line: demand in the usual split, no more than a line has hours for by lot. */
function laidOut(works: Works): ReadonlyMap<string, ReadonlyMap<string, number>> {
	const lines = works.setting.lines;
	const partOf = (product: string, line: string) => given(splits, product)[line] ?? 0;
	return new Map(
		lines.map((line) => {
			const wanted = line.products.map((id) => {
				const able = lines.filter((one) => one.products.includes(id));
				const all = sum(able.map((one) => partOf(id, one.id)));
				return (productOf(id).demand_m * partOf(id, line.id)) / all;
			});
			const hours = sum(
				line.products.map(
					(id, i) => (wanted[i] ?? NaN) * at(at(works.runs, line.id), id).hoursPerMetre
				)
			);
			const room = Math.min(1, (netLineHours(line) * planning.line_factor) / hours);
			return [line.id, new Map(line.products.map((id, i) => [id, (wanted[i] ?? NaN) * room]))];
		})
	);
}

/** `works`: by lot. */
export function candidatesOf(works: Works): readonly Candidate[] {
	const pools = poolsOf(works);
	const capacity = capacityOf(works);
	const hourCost = (line: string) =>
		pools.labour.line / capacity.line +
		(pools.overhead.line * weightOf(works, line)) / capacity.weighed;
	const metres = laidOut(works);
	return works.setting.lines.flatMap((line) => {
		const made = (id: string) => at(at(metres, line.id), id);
		const round = given(rounds, line.id).filter(
			(id) => made(id) > 0 && made(id) >= given(leastLots, id) * Math.min(...TIMES)
		);
		const tariff = overMonths(line.roster, averageTariff);
		return round.map((id, place) => {
			const product = productOf(id);
			const before = productOf(round.at(place - 1) ?? id);
			const changeover = changeoverBetween(before, product);
			return {
				product,
				line: line.id,
				metres: made(id),
				changeover,
				setUpCost:
					changeover *
						(hourCost(line.id) + (line.standby_kW ?? energy.standby_kW_per_line) * tariff) +
					product.setup_scrap_kg * (lostPerKg(works, id) + processPerKg(line) * tariff),
				couldMake: netLineHours(line) * at(at(works.runs, line.id), id).goodPerHour,
				holding: at(works.pipes, id).materialCost * finance.holding_rate_month * 12
			};
		});
	});
}

/** The rest is sold while it runs. */
export const shareIntoStock = ({ metres, couldMake }: Candidate): number => 1 - metres / couldMake;

/** m, on average. */
const stockAt = (one: Candidate, times: number) => ((one.metres / times) * shareIntoStock(one)) / 2;

/** EUR/year. */
export const costAt = (one: Candidate, times: number): number =>
	times * one.setUpCost + stockAt(one, times) * one.holding;

/** m, on average, of these campaigns of a product beyond what its lots would leave. */
const beyondLots = (chosen: readonly Campaign[]): number =>
	sum(
		chosen.map(
			(one) => stockAt(one, one.timesAYear) - (one.product.lot_m * shareIntoStock(one)) / 2
		)
	);

/** The cheapest within room and least lots: of each product every choice for all its lines is tried. */
export function bestCampaigns(
	candidates: readonly Candidate[],
	shareOfRoom = campaigns.share_of_room
): readonly Campaign[] {
	return products.flatMap((product) => {
		const own = candidates.filter((one) => one.product === product);
		const choices = own.reduce<readonly (readonly Campaign[])[]>(
			(so, one) =>
				so.flatMap((chosen) =>
					TIMES.filter((times) => times * given(leastLots, product.id) <= one.metres).map(
						(timesAYear) => [...chosen, { ...one, timesAYear }]
					)
				),
			[[]]
		);
		const cost = (chosen: readonly Campaign[]) =>
			sum(chosen.map((one) => costAt(one, one.timesAYear)));
		const within = choices.filter(
			(chosen) => beyondLots(chosen) <= product.stock_max_m * shareOfRoom
		);
		const [first, ...others] = within;
		if (!first) throw new Error(`no campaigns of ${product.id} have room`);
		return others.reduce((best, chosen) => (cost(chosen) < cost(best) ? chosen : best), first);
	});
}

/** The works with these campaigns as their set-ups; what is in none is set up by lot. */
export function worksInCampaigns(setting: Setting, chosen: readonly Campaign[]): Works {
	const setUps = (product: Product, line: string): SetUps => {
		const one = chosen.find((each) => each.product === product && each.line === line);
		return one
			? { perMetre: one.timesAYear / one.metres, hours: one.changeover }
			: { perMetre: 1 / product.lot_m, hours: product.setup_h };
	};
	const stock = products.map((product): [string, number] => [
		product.id,
		beyondLots(chosen.filter((one) => one.product === product))
	]);
	return worksIn(setting, setUps, new Map(stock));
}

/** EUR/year, of all campaigns beyond what lots would leave. */
export const campaignHolding = (works: Works): number =>
	sum(
		[...works.campaignStock].map(
			([id, metres]) => metres * at(works.pipes, id).materialCost * finance.holding_rate_month * 12
		)
	);
