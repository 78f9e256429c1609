/** What the workbook plans, in the names of the independent programme, and as a plan that the model can work with. */
import { made, months, programmeOf, sold, stock } from './independent/allocation-programme';
import { holdingIn } from './independent/allocation';
import type { Plan } from './independent/model';
import { products, sum, type ScenarioId } from './independent/plant';
import { worksOf } from './independent/works';
import type { WorkbookFigures } from './workbook-figures';

export const MONTH_NAMES = [
	'Jan',
	'Feb',
	'Mar',
	'Apr',
	'May',
	'Jun',
	'Jul',
	'Aug',
	'Sep',
	'Oct',
	'Nov',
	'Dec'
];
export const PLAN_YEARS = ['today', 'y1', 'y2', 'y3', 'y4', 'y5'];

export type Decided = Readonly<Record<string, number>>;

/** Metres by the name of each decision. */
export function decidedIn(figures: WorkbookFigures, id: ScenarioId, year: number): Decided {
	const decided: Record<string, number> = {};
	const read = (quantity: string, ...at: string[]) =>
		figures.number(id, quantity, ...at, PLAN_YEARS[year] ?? '');
	for (const month of months) {
		const name = MONTH_NAMES[month] ?? '';
		for (const { id: product } of products) {
			decided[sold(product, month)] = read('sold', product, name);
			decided[stock(product, month)] = read('stock', product, name);
		}
		for (const line of worksOf(id).setting.lines)
			for (const product of line.products)
				decided[made(product, line.id, month)] = read('made', product, line.id, name);
	}
	return decided;
}

/** The workbook's own plan for the independent model: what follows from it is then held against the workbook. */
export function planOf(figures: WorkbookFigures): Plan {
	return (id, year) => {
		const works = worksOf(id);
		const decided = decidedIn(figures, id, year);
		const metres = (product: string, line: string) =>
			sum(months.map((month) => decided[made(product, line, month)] ?? NaN));
		return {
			made: works.setting.lines.flatMap((line) =>
				line.products.map((product) => ({
					line: line.id,
					product,
					metres: metres(product, line.id)
				}))
			),
			holding: holdingIn(programmeOf(works, year), decided)
		};
	};
}
