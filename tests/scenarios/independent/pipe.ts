/** Wall, layers and mass of one product, worked from its section. Nothing about lines or money. */
import { given, materials, sum, type Product } from './plant';

export interface Pipe {
	readonly wallSetPoint: number;
	/** kg/m, inner to outer. */
	readonly layerMasses: readonly number[];
	readonly massPerMetre: number;
	/** kg/m asked of each extruder, as of the material it was accepted with; an extruder that feeds nothing is left out. */
	readonly fed: ReadonlyMap<string, number>;
	/** EUR per metre of the material in the pipe. */
	readonly materialCost: number;
	/** Extra area over a pipe at the minimum wall, as a fraction. */
	readonly giveaway: number;
}

export function pipeOf(product: Product, capability: 'today' | 'gauged'): Pipe {
	const { eccentricity_mm, sigma_mm, gauge_u_mm } = product.capability[capability];
	const wall = product.wall_min_mm + eccentricity_mm + product.k * Math.hypot(sigma_mm, gauge_u_mm);
	const others = sum(product.layers.map((layer) => layer.mm ?? 0));

	// From the outside inward: A = π s (2 r − s), r the layer's outer radius, in mm².
	let radius = product.od_mm / 2;
	const layerMasses: number[] = [];
	for (const layer of [...product.layers].reverse()) {
		const thickness = layer.mm ?? wall - others;
		const area = Math.PI * thickness * (2 * radius - thickness);
		layerMasses.unshift(area * given(materials, layer.material).density_kg_m3 * 1e-6);
		radius -= thickness;
	}

	const fed = new Map<string, number>();
	product.layers.forEach((layer, at) => {
		const extruder = extruderOf(layer.material, at === product.layers.length - 1);
		const asked = (layerMasses[at] ?? 0) / (given(materials, layer.material).output ?? 1);
		fed.set(extruder, (fed.get(extruder) ?? 0) + asked);
	});
	return {
		wallSetPoint: wall,
		layerMasses,
		massPerMetre: sum(layerMasses),
		fed,
		materialCost: sum(
			product.layers.map(
				(layer, at) => (layerMasses[at] ?? 0) * given(materials, layer.material).eur_per_kg
			)
		),
		giveaway: ring(wall, product.od_mm) / ring(product.wall_min_mm, product.od_mm) - 1
	};
}

function extruderOf(material: string, outermost: boolean): string {
	if (material === 'TIE') return 'tie';
	if (material === 'EVOH') return 'evoh';
	return outermost ? 'outer' : 'main';
}

const ring = (wall: number, diameter: number) => wall * (diameter - wall);
