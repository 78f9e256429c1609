/** Figures of the shipped plant as a page shows them, worked out from its workbook: journeys tell that they are shown, not what they are. */
import { WorkbookFigures } from '../scenarios/workbook-figures';
import type { InputEntry } from '../../src/lib/workbook/commands';

const FILE = 'scenarios/marram-coil-works.json';
let plant: WorkbookFigures | undefined;

/** Opened when a journey first asks: listing the journeys reads their files too. */
const shipped = () => (plant ??= new WorkbookFigures(FILE));

/** In the base, unless another scenario is named. */
export function figure(
	quantity: string,
	members: readonly string[] = [],
	{ digits = 4, scenario = 'base' } = {}
): string {
	return shipped()
		.number(scenario, quantity, ...members)
		.toPrecision(digits);
}

/** With some inputs of the base entered anew, and the plan left as it is. */
export function figureWith(
	entries: readonly InputEntry[],
	quantity: string,
	...members: readonly string[]
): string {
	return new WorkbookFigures(FILE, entries).number('base', quantity, ...members).toPrecision(4);
}

/** What a metre of the product costs that the first screen shows. */
export const metre = () => figure('cost_per_metre', ['PX15B']);

export const coil = () => figure('cost_per_coil', ['PX15B']);

export const payback = (scenario: string) => figure('payback', [], { digits: 2, scenario });
