/** A plant of any size that is planned by months: what is made on which line, sold and stocked. All figures invented. */
import { VERSION, type Quantity, type Workbook } from '$lib/workbook/schema';

const MONTHS = 12;
const LINES_OF_A_PRODUCT = 3;

export function plannedPlant(products: number, lines: number): Workbook {
	const members = (letter: string, count: number) =>
		Array.from({ length: count }, (_, i) => ({ id: `${letter}${i + 1}` }));
	const set = (name: string, letter: string, count: number) => ({
		name,
		label: name,
		members: members(letter, count)
	});
	const quantity = (name: string, rest: Partial<Quantity>): Quantity => ({
		name,
		label: name,
		...rest
	});
	const by = (letter: string, count: number, value: (i: number) => number) =>
		Object.fromEntries(members(letter, count).map(({ id }, i) => [id, value(i)]));
	const month = (value: (i: number) => number) => by('M', MONTHS, value);
	const PM = ['product', 'month'];
	return {
		format: 'metrewright',
		version: VERSION,
		title: 'A planned plant',
		sets: [set('product', 'P', products), set('line', 'L', lines), set('month', 'M', MONTHS)],
		relations: [
			{
				name: 'runs',
				sets: ['product', 'line'],
				pairs: members('P', products).flatMap(({ id }, i) =>
					Array.from({ length: LINES_OF_A_PRODUCT }, (_, k) => [
						id,
						`L${((i + k * 7) % lines) + 1}`
					]).filter(([, line], k, all) => all.findIndex((pair) => pair[1] === line) === k)
				)
			}
		],
		sheets: [
			{
				title: 'Given',
				quantities: [
					quantity('speed', {
						unit: 'm/h',
						per: ['line'],
						value: by('L', lines, (i) => 100 + 7 * (i % 11))
					}),
					quantity('hours', {
						unit: 'h',
						per: ['line', 'month'],
						value: Object.fromEntries(members('L', lines).map(({ id }) => [id, month(() => 500)]))
					}),
					quantity('demand', {
						unit: 'm',
						per: PM,
						value: Object.fromEntries(
							members('P', products).map(({ id }, i) => [
								id,
								month((m) => 12000 + 500 * ((i * 5 + m * 3) % 17))
							])
						)
					}),
					quantity('margin', {
						unit: 'EUR/m',
						per: ['product'],
						value: by('P', products, (i) => 1 + 0.01 * ((i * 13) % 37))
					}),
					quantity('holding', { unit: 'EUR/m', value: 0.01 })
				]
			},
			{
				title: 'Planned',
				quantities: [
					quantity('made', {
						unit: 'm',
						per: ['product', 'line', 'month'],
						in: ['runs'],
						range: { min: 0 }
					}),
					quantity('sold', { unit: 'm', per: PM, range: { min: 0 } }),
					quantity('stock', { unit: 'm', per: PM, range: { min: 0 } }),
					quantity('hours_hold', {
						type: 'yes_no',
						per: ['line', 'month'],
						formula: 'SUM(made over product) / speed <= hours'
					}),
					quantity('stock_holds', {
						type: 'yes_no',
						per: PM,
						formula: 'stock <= stock[month - 1 else 0] + SUM(made over line) - sold'
					}),
					quantity('sold_holds', { type: 'yes_no', per: PM, formula: 'sold <= demand' }),
					quantity('contribution', {
						unit: 'EUR',
						formula: 'SUM(sold * margin - stock * holding over product × month)'
					})
				]
			}
		],
		scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }],
		programmes: [
			{
				name: 'allocation',
				title: 'Who makes what',
				maximise: 'contribution',
				decisions: ['made', 'sold', 'stock'],
				constraints: ['hours_hold', 'stock_holds', 'sold_holds']
			}
		]
	};
}
