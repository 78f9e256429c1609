/** What would be entered of a month that went exactly as the plan and the standard have it. */
import type { Model } from '$lib/engine/model';
import { read, type Entry } from '../reference/shipped';

/** Without the price of process electricity, which is held against what the output allows. */
export function asBudgeted(model: Model, month: string): Entry[] {
	const of = (name: string, ...at: string[]) => read(model, name, ...at);
	const ids = (set: string) => model.layout.sets.get(set)!.members.map(({ id }) => id);
	const pairs = model.workbook
		.relations!.find(({ name }) => name === 'runs')!
		.pairs.filter(([, line]) => of('line_installed', line!) === 1) as [string, string][];
	const made = (product: string, line: string) => of('budget_made', product, line, month);
	const inAll = (product: string, perMetre: (line: string) => number) =>
		pairs
			.filter(([one]) => one === product)
			.reduce((sum, [, line]) => sum + made(product, line) * perMetre(line), 0);
	const rows = (set: string, name: string, value: (id: string) => number) =>
		ids(set).map((id): Entry => [name, [id, month], value(id)]);
	const single = (name: string, value: number): Entry => [name, [month], value];
	const sum = (values: readonly number[]) => values.reduce((all, one) => all + one, 0);
	const products = ids('product');
	const mass = (product: string) => of('standard_mass', product);
	return [
		...pairs.map(([product, line]): Entry => {
			return ['actual_metres', [product, line, month], made(product, line)];
		}),
		...rows('product', 'invoiced_metres', (id) => of('budget_metres', id, month)),
		...rows('product', 'actual_net_price', (id) => of('standard_net_price', id)),
		...rows('product', 'actual_mass_per_metre', mass),
		...rows('product', 'actual_dosed', (id) =>
			inAll(id, (line) => mass(id) + of('standard_scrap_mass', id, line) / 1000)
		),
		...rows('material', 'actual_material_price', (id) => of('standard_material_price', id)),
		...ids('line')
			.filter((line) => of('line_installed', line) === 1)
			.map((line): Entry => {
				return ['actual_line_hours', [line, month], of('budget_line_hours', line, month)];
			}),
		single(
			'actual_rewinder_hours',
			sum(products.map((id) => (inAll(id, () => 1) * of('standard_rewind_need', id)) / 1000))
		),
		...rows('post', 'actual_paid_hours', (id) => of('standard_paid_hours', id, month)),
		...rows('post', 'actual_hour_cost', (id) => of('standard_hour_cost', id, month)),
		...rows('overhead', 'actual_overhead', (id) => of('standard_overhead', id) / 12),
		single(
			'actual_process_electricity',
			sum(products.map((id) => inAll(id, (line) => of('standard_electricity', id, line))))
		),
		single(
			'actual_packaging',
			sum(products.map((id) => inAll(id, () => of('standard_packaging', id))))
		),
		single('actual_site_electricity', of('budget_site_electricity', month)),
		single('actual_site_price', of('standard_site_price')),
		single('actual_demand_charge', of('demand_cost') / 12),
		single('actual_start_scrap', of('budget_starts', month)),
		single('actual_stock_cost', of('budget_stock_cost', month))
	];
}
