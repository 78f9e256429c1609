/**
 * The linear programme of one plan year, written out from the plant's data: who makes what in which month, what is
 * sold and what lies in stock. The workbook states the same in formulas; they share nothing.
 */
import { variableCost } from './cost';
import { chamberHoursOf, rewinderHoursByMonth } from './metres';
import { netNetPrices } from './net-net';
import { DEMAND_PATH, given, MONTHS, plant, products, productOf, sum, type Product } from './plant';
import { chamberHours, netLineHoursByMonth, rewindHours } from './time';
import { at, type Works } from './works';

export interface Term {
	readonly name: string;
	readonly coef: number;
}

/** Changes of the market or the hours against the plant's data. */
export interface Market {
	/** All demand times this. */
	readonly demand?: number;
	/** Hours more on offer, by line (or 'rewind', 'crosslink') and month from 0. */
	readonly more?: { readonly of: string; readonly month: number; readonly hours: number };
	readonly lineFactor?: number;
}

const HOURS_OF_MONTH = 730;
const { seasonality, planning, drums, finance, crosslink } = plant;
const seasons: Readonly<Record<string, readonly number[]>> = seasonality;
const contracts: Readonly<Record<string, number>> = planning.contract_minimum_m_month;
const waits: Readonly<Record<string, number>> = drums.wait_for_rewinder_h;

export interface Row {
	readonly name: string;
	readonly terms: readonly Term[];
	/** Equal to nothing where it is 'balance', else at most this. */
	readonly kind: 'balance' | 'most';
	readonly most: number;
}

export interface Programme {
	readonly profit: readonly Term[];
	readonly rows: readonly Row[];
	readonly bounds: readonly {
		readonly name: string;
		readonly least: number;
		readonly most: number;
	}[];
	/** m in the year, by product. */
	readonly wanted: ReadonlyMap<string, number>;
}

export const made = (product: string, line: string, month: number) =>
	`made ${product} ${line} ${month}`;
export const sold = (product: string, month: number) => `sold ${product} ${month}`;
export const stock = (product: string, month: number) => `stock ${product} ${month}`;
/** Months from 0. */
export const months = MONTHS.map((month) => month - 1);

/** `year` from 0, today. */
export function programmeOf(works: Works, year: number, market: Market = {}): Programme {
	const prices = netNetPrices(works);
	const lines = works.setting.lines;
	const pairs = lines.flatMap((line) =>
		line.products.map((id) => ({
			line,
			product: productOf(id),
			cost: sum(Object.values(variableCost(works, line.id, id)))
		}))
	);
	const netHours = new Map(lines.map((line) => [line.id, netLineHoursByMonth(line)]));
	const demandOf = (product: Product, month: number) =>
		product.demand_m *
		(market.demand ?? 1) *
		(DEMAND_PATH[year] ?? NaN) *
		(given(seasons, product.season)[month] ?? NaN);

	const profit: Term[] = months.flatMap((month) => [
		...pairs.map(({ line, product, cost }) => ({
			name: made(product.id, line.id, month),
			coef: -cost
		})),
		...products.flatMap((product) => [
			{ name: sold(product.id, month), coef: at(prices, product.id) },
			{
				name: stock(product.id, month),
				coef: -at(works.pipes, product.id).materialCost * finance.holding_rate_month
			}
		])
	]);

	const most = (name: string, terms: readonly Term[], most: number): Row => ({
		name,
		terms: terms.filter(({ coef }) => coef !== 0),
		kind: 'most',
		most
	});
	const more = (of: string, month: number) =>
		market.more?.of === of && market.more.month === month ? market.more.hours : 0;
	const eachMade = (month: number, need: (product: Product, line: string) => number) =>
		pairs.map(({ line, product }) => ({
			name: made(product.id, line.id, month),
			coef: need(product, line.id)
		}));
	const lineHours = (product: Product, line: string) =>
		at(at(works.runs, line), product.id).hoursPerMetre;
	const chamber = (product: Product) =>
		chamberHours(product, at(works.pipes, product.id).wallSetPoint) ?? 0;
	const drumHours = (product: Product, line: string) => {
		if (product.route === 'inline') return 0;
		const batch = product.crosslink
			? drums.wait_for_batch_h +
				crosslink.h_per_mm2 * at(works.pipes, product.id).wallSetPoint ** 2 +
				crosslink.load_heat_unload_h
			: 0;
		const standing = batch + given(waits, product.base);
		return lineHours(product, line) + (rewindHours(product) ?? 0) + standing / product.drum_m;
	};

	const rewinders = rewinderHoursByMonth(works);
	const chambers = chamberHoursOf(works);
	const rows: Row[] = months.flatMap((month) => [
		...lines.map((line) =>
			most(
				`${line.id} ${month}`,
				eachMade(month, (product, id) => (id === line.id ? lineHours(product, id) : 0)),
				(at(netHours, line.id)[month] ?? NaN) * (market.lineFactor ?? planning.line_factor) +
					more(line.id, month)
			)
		),
		most(
			`rewind ${month}`,
			eachMade(month, (product) => rewindHours(product) ?? 0),
			(rewinders[month] ?? NaN) + more('rewind', month)
		),
		most(
			`crosslink ${month}`,
			eachMade(month, chamber),
			(chambers[month] ?? NaN) + more('crosslink', month)
		),
		most(`drums ${month}`, eachMade(month, drumHours), drums.owned * HOURS_OF_MONTH),
		...products.map((product) => ({
			name: `balance ${product.id} ${month}`,
			terms: [
				...pairs
					.filter((pair) => pair.product === product)
					.map(({ line }) => ({ name: made(product.id, line.id, month), coef: 1 })),
				{ name: stock(product.id, (month + 11) % 12), coef: 1 },
				{ name: stock(product.id, month), coef: -1 },
				{ name: sold(product.id, month), coef: -1 }
			],
			kind: 'balance' as const,
			most: 0
		}))
	]);
	const bounds = products.flatMap((product) =>
		months.flatMap((month) => {
			const demand = demandOf(product, month);
			const least = Math.min(contracts[product.id] ?? 0, demand);
			return [
				{ name: sold(product.id, month), least, most: demand },
				{
					name: stock(product.id, month),
					least: 0,
					most: product.stock_max_m - Math.max(0, works.campaignStock.get(product.id) ?? 0)
				}
			];
		})
	);
	const wanted = (product: Product) => sum(months.map((month) => demandOf(product, month)));
	return {
		profit,
		rows,
		bounds,
		wanted: new Map(products.map((product) => [product.id, wanted(product)]))
	};
}
