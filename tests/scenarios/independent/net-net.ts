/** What is left of the price of a metre after rebate, commission and freight. */
import { plant, products } from './plant';
import { at, type Works } from './works';

export function netNetPrices(works: Works): ReadonlyMap<string, number> {
	const { rebate_commission, freight_eur_kg } = plant.selling;
	return new Map(
		products.map((product) => [
			product.id,
			product.price_net_eur_m * (1 - rebate_commission) -
				at(works.pipes, product.id).massPerMetre * freight_eur_kg
		])
	);
}
