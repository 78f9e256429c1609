/**
 * What a programmer would write by hand for one product's material cost and no other, over typed arrays: the yardstick
 * for what a step of the interpreter costs. Its figures are nobody's.
 */

/** Arithmetic operations in one draw of the chain, those on fixed numbers alone left out. */
export const CHAIN_OPERATIONS = 23;

export interface ChainInputs {
	readonly diameter: Float64Array;
	readonly wall: Float64Array;
	readonly price: Float64Array;
	readonly speed: Float64Array;
}

export function costChain({ diameter, wall, price, speed }: ChainInputs, cost: Float64Array): void {
	for (let i = 0; i < cost.length; i++) {
		const inner = diameter[i]! - 2 * wall[i]!;
		const area = (Math.PI / 4) * (diameter[i]! * diameter[i]! - inner * inner);
		const mass = area * 0.938e-3;
		const scrapped = mass / (1 - 0.02);
		const material = scrapped * price[i]! - (scrapped - mass) * 0.35;
		const metres = speed[i]! * 0.93 * 60;
		const hourly = 3 * 28.5 + 120 * 0.15 + 42;
		const energy = (mass * 0.4 + 0.03) * 0.155;
		const made = hourly / metres;
		cost[i] = (material + made + energy) / (1 - 0.015) + 0.004;
	}
}
