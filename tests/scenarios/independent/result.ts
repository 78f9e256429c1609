/** Prices, contribution and the year's result, by the profit-and-loss route and by full cost. */
import { capacityOf, cardsOf, variableCost, weightOf, type Card, type Pools } from './cost';
import type { Year } from './metres';
import { netNetPrices } from './net-net';
import { productOf, sum } from './plant';
import { rewindHours } from './time';
import { at, type Works } from './works';

export interface YearResult {
	/** Before rebate and commission. */
	readonly revenue: number;
	readonly contribution: number;
	/** What is earned in cash: before the depreciation of what is put in. */
	readonly beforeDepreciation: number;
	readonly ebit: number;
}

export interface FullCostResult {
	readonly margins: number;
	readonly absorbed: number;
	readonly idleLine: number;
	readonly idleRewind: number;
	readonly idle: number;
	readonly pools: number;
	/** After the depreciation of options, as by the other route. */
	readonly ebit: number;
}

/** Contribution less everything that the year costs, whatever is made, and less what holding its stock costs. */
export function yearResult(works: Works, pools: Pools, year: Year, holding: number): YearResult {
	const prices = netNetPrices(works);
	const contribution = sum(
		year.made.map((made) => {
			const variable = sum(Object.values(variableCost(works, made.line, made.product)));
			return made.metres * (at(prices, made.product) - variable);
		})
	);
	const beforeDepreciation =
		contribution -
		pools.startScrap -
		pools.site.baseCost -
		pools.site.demandCharge -
		pools.people.shiftLabour -
		pools.people.weekendLabour -
		pools.allOverheads -
		holding;
	return {
		revenue: sum(year.made.map((made) => made.metres * productOf(made.product).price_net_eur_m)),
		contribution,
		beforeDepreciation,
		ebit: beforeDepreciation - pools.depreciation
	};
}

/** Full-cost margins less idle capacity, selling and administration, and the cost of holding stock. */
export function fullCostResult(
	works: Works,
	pools: Pools,
	year: Year,
	holding: number
): FullCostResult {
	const cards = cardsOf(works, pools, year);
	const prices = netNetPrices(works);
	const capacity = capacityOf(works);
	const made = (figure: (product: string, line: string) => number) =>
		sum(year.made.map((made) => made.metres * figure(made.product, made.line)));

	const lineHours = made((product, line) => at(at(works.runs, line), product).hoursPerMetre);
	const rewinderHours = made((product) => rewindHours(productOf(product)) ?? 0);
	const weighedHours = made(
		(product, line) => at(at(works.runs, line), product).hoursPerMetre * weightOf(works, line)
	);
	const line = pools.labour.line + pools.overhead.line;
	const rewind = pools.labour.rewind + pools.overhead.rewind;
	const crosslink = pools.labour.crosslink + pools.overhead.crosslink;

	const margins = made((product) => at(prices, product) - at(cards, product).perMetre);
	const idleLine =
		pools.labour.line * (1 - lineHours / capacity.line) +
		pools.overhead.line * (1 - weighedHours / capacity.weighed);
	const idleRewind = rewind * (1 - rewinderHours / capacity.rewind);
	const idle = idleLine + idleRewind;
	const absorbed = made((product) => stageCosts(at(cards, product)));
	return {
		margins,
		absorbed,
		idleLine,
		idleRewind,
		idle,
		pools: line + rewind + crosslink,
		ebit: margins - idle - pools.sellingAndAdministration - holding
	};
}

const stageCosts = (card: Card) =>
	card.lineLabour + card.lineOverhead + card.crosslinking + card.rewindLabour + card.rewindOverhead;
