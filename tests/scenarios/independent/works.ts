/** One scenario's works in full: pipe, runs, hours. What cost, result and investment are worked from. */
import { byLot, runOf, type Run, type SetUps } from './line';
import { pipeOf, type Pipe } from './pipe';
import {
	plant,
	products,
	productOf,
	settingOf,
	type Product,
	type ScenarioId,
	type Setting
} from './plant';

export interface Works {
	readonly setting: Setting;
	readonly pipes: ReadonlyMap<string, Pipe>;
	/** By line, then product. */
	readonly runs: ReadonlyMap<string, ReadonlyMap<string, Run>>;
	/** m by product, on average, beyond what lots leave; nothing where set-ups are by lot. */
	readonly campaignStock: ReadonlyMap<string, number>;
}

export const worksOf = (id: ScenarioId): Works => worksIn(settingOf(id));

export function worksIn(
	setting: Setting,
	setUps: (product: Product, line: string) => SetUps = byLot,
	campaignStock: Works['campaignStock'] = new Map()
): Works {
	const pipes = new Map(
		products.map((product) => [product.id, pipeOf(product, setting.capability)])
	);
	const ratio = plant.time_model.speed_ratio;
	const runs = new Map(
		setting.lines.map((line) => [
			line.id,
			new Map(
				line.products.map((id) => {
					const product = productOf(id);
					return [id, runOf(product, at(pipes, id), line, ratio, setUps(product, line.id))];
				})
			)
		])
	);
	return { setting, pipes, runs, campaignStock };
}

export function at<K, T>(map: ReadonlyMap<K, T>, key: K): T {
	const value = map.get(key);
	if (value === undefined) throw new Error(`nothing held for ${String(key)}`);
	return value;
}
