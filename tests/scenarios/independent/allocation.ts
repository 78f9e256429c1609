/**
 * Who makes what in which month, stock included: the linear programme of one plan year, written out from the
 * plant's data and solved by GLPK (GNU Linear Programming Kit). The workbook states the same in formulas and has it
 * solved by another solver; they share nothing.
 */
import GLPK from 'glpk.js/node';
import { variableCost } from './cost';
import { rewinderHoursByMonth } from './metres';
import { netNetPrices } from './net-net';
import { DEMAND_PATH, given, MONTHS, plant, products, productOf, sum, type Product } from './plant';
import { chamberHours, netLineHoursByMonth, rewindHours } from './time';
import { at, type Works } from './works';

const glpk = await GLPK();

export interface MonthlyMetres {
	readonly product: string;
	readonly line: string;
	/** From 0. */
	readonly month: number;
	readonly metres: number;
}

export interface Allocation {
	/** EUR in the year: net-net sales less variable cost less the cost of holding stock. */
	readonly contribution: number;
	/** Of stock, EUR in the year. */
	readonly holding: number;
	readonly made: readonly MonthlyMetres[];
	/** m in the year. */
	readonly sold: ReadonlyMap<string, number>;
	readonly unmet: ReadonlyMap<string, number>;
	/** EUR/h by line, or 'rewind' or 'crosslink', and month. */
	readonly hourWorth: ReadonlyMap<string, readonly number[]>;
}

interface Term {
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

/** `year` from 0, today. */
export function allocate(works: Works, year: number, market: Market = {}): Allocation {
	const prices = netNetPrices(works);
	const lines = works.setting.lines;
	const made = (product: string, line: string, month: number) => `made ${product} ${line} ${month}`;
	const sold = (product: string, month: number) => `sold ${product} ${month}`;
	const stock = (product: string, month: number) => `stock ${product} ${month}`;
	const pairs = lines.flatMap((line) =>
		line.products.map((id) => ({
			line,
			product: productOf(id),
			cost: sum(Object.values(variableCost(works, line.id, id)))
		}))
	);
	const netHours = new Map(lines.map(({ id, roster }) => [id, netLineHoursByMonth(roster)]));
	const months = MONTHS.map((month) => month - 1);
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

	const most = (name: string, vars: readonly Term[], ub: number) => ({
		name,
		vars: vars.filter(({ coef }) => coef !== 0),
		bnds: { type: glpk.GLP_UP, ub, lb: 0 }
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
	const rows = months.flatMap((month) => [
		...lines.map((line) =>
			most(
				`line ${line.id} ${month}`,
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
			crosslink.chambers * HOURS_OF_MONTH * crosslink.uptime_of_calendar + more('crosslink', month)
		),
		most(`drums ${month}`, eachMade(month, drumHours), drums.owned * HOURS_OF_MONTH),
		...products.map((product) => ({
			name: `balance ${product.id} ${month}`,
			vars: [
				...pairs
					.filter((pair) => pair.product === product)
					.map(({ line }) => ({ name: made(product.id, line.id, month), coef: 1 })),
				{ name: stock(product.id, (month + 11) % 12), coef: 1 },
				{ name: stock(product.id, month), coef: -1 },
				{ name: sold(product.id, month), coef: -1 }
			],
			bnds: { type: glpk.GLP_FX, ub: 0, lb: 0 }
		}))
	]);
	const bounds = products.flatMap((product) =>
		months.flatMap((month) => {
			const demand = demandOf(product, month);
			const least = Math.min(contracts[product.id] ?? 0, demand);
			return [
				{ name: sold(product.id, month), type: glpk.GLP_DB, ub: demand, lb: least },
				{ name: stock(product.id, month), type: glpk.GLP_DB, ub: product.stock_max_m, lb: 0 }
			];
		})
	);

	const { result } = glpk.solve(
		{
			name: 'allocation',
			objective: { direction: glpk.GLP_MAX, name: 'contribution', vars: profit },
			subjectTo: rows,
			bounds
		},
		{ msglev: glpk.GLP_MSG_OFF, presol: true }
	);
	if (result.status !== glpk.GLP_OPT) throw new Error(`no plan of year ${year}: ${result.status}`);
	const value = (name: string) => result.vars[name] ?? NaN;
	const dual = (name: string) => result.dual?.[name] ?? NaN;
	const soldOf = (product: Product) => sum(months.map((month) => value(sold(product.id, month))));
	const wanted = (product: Product) => sum(months.map((month) => demandOf(product, month)));
	return {
		contribution: result.z,
		holding: -sum(
			profit
				.filter(({ name }) => name.startsWith('stock'))
				.map(({ name, coef }) => coef * value(name))
		),
		made: pairs.flatMap(({ line, product }) =>
			months.map((month) => ({
				product: product.id,
				line: line.id,
				month,
				metres: value(made(product.id, line.id, month))
			}))
		),
		sold: new Map(products.map((product) => [product.id, soldOf(product)])),
		unmet: new Map(products.map((product) => [product.id, wanted(product) - soldOf(product)])),
		hourWorth: new Map([
			...lines.map(({ id }) => [id, months.map((month) => dual(`line ${id} ${month}`))] as const),
			...['rewind', 'crosslink'].map(
				(of) => [of, months.map((month) => dual(`${of} ${month}`))] as const
			)
		])
	};
}
