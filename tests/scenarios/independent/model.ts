/**
 * An independent model of the invented plant: plain arithmetic from plant.json by the trade's rules,
 * sharing no code, formula or unit conversion with the workbook that it checks.
 */
import { cardsOf, poolsOf, type Card, type Pools } from './cost';
import { investmentOf, type Investment } from './investment';
import type { Run } from './line';
import { yearsOf, type Year } from './metres';
import type { Pipe } from './pipe';
import { products, SCENARIOS, sum, type Roster, type ScenarioId } from './plant';
import {
	fullCostResult,
	netNetPrices,
	yearResult,
	type FullCostResult,
	type YearResult
} from './result';
import { netLineHours, scheduledHours } from './time';
import { at, worksOf } from './works';

export interface IndependentResults {
	readonly scenario: ScenarioId;
	readonly lines: readonly string[];
	readonly pipes: ReadonlyMap<string, Pipe>;
	/** By line, then product. */
	readonly runs: ReadonlyMap<string, ReadonlyMap<string, Run>>;
	readonly scheduledHours: ReadonlyMap<string, number>;
	readonly netHours: ReadonlyMap<string, number>;
	readonly pools: Pools;
	/** Of the plan as of today. */
	readonly cards: ReadonlyMap<string, Card>;
	readonly netNet: ReadonlyMap<string, number>;
	readonly contribution: ReadonlyMap<string, number>;
	/** Good metres of today's plan. */
	readonly goodMetres: ReadonlyMap<string, number>;
	/** Today, then the years of the demand path. */
	readonly years: readonly Year[];
	readonly results: readonly YearResult[];
	readonly ebit: number;
	readonly fullCost: FullCostResult;
	readonly investment: Investment | null;
}

const known = new Map<ScenarioId, IndependentResults>();

export function modelOf(id: ScenarioId): IndependentResults {
	const model = known.get(id) ?? build(id);
	known.set(id, model);
	return model;
}

export const allModels = () => SCENARIOS.map(modelOf);

function build(id: ScenarioId): IndependentResults {
	const works = worksOf(id);
	const pools = poolsOf(works);
	const years = yearsOf(works);
	const [today] = years;
	if (!today) throw new Error(`plant.json plans no year of ${id}`);
	const results = years.map((year) => yearResult(works, pools, year));
	const cards = cardsOf(works, pools, today);
	const netNet = netNetPrices(works);
	const perProduct = (figure: (product: string) => number) =>
		new Map(products.map((product) => [product.id, figure(product.id)]));
	const perLine = (figure: (roster: Roster) => number) =>
		new Map(works.setting.lines.map((line) => [line.id, figure(line.roster)]));
	return {
		scenario: id,
		lines: works.setting.lines.map((line) => line.id),
		pipes: works.pipes,
		runs: works.runs,
		scheduledHours: perLine(scheduledHours),
		netHours: perLine(netLineHours),
		pools,
		cards,
		netNet,
		contribution: perProduct((product) => at(netNet, product) - at(cards, product).variable),
		goodMetres: perProduct((product) =>
			sum(today.made.map((made) => (made.product === product ? made.metres : 0)))
		),
		years,
		results,
		ebit: results[0]?.ebit ?? NaN,
		fullCost: fullCostResult(works, pools, today),
		investment:
			id === 'base' ? null : investmentOf(works.setting.options, results, modelOf('base').results)
	};
}
