/** What reads a frozen copy: formulas, and scenarios that are measured against it. */
import { formulasOf, mentionsQuantity } from './formula-names';
import { quantityPlaces } from './lookup';
import type { Workbook } from './schema';

/** The labels of the quantities whose formulas name a copy. */
export const formulasThatRead = (workbook: Workbook, id: string): string[] =>
	[...quantityPlaces(workbook).values()].flatMap(({ quantity }) =>
		formulasOf(quantity).some((text) => mentionsQuantity(text, id)) ? [quantity.label] : []
	);

/** The titles of the scenarios that are measured against a copy. */
export const scenariosAgainst = ({ scenarios }: Workbook, id: string): string[] =>
	scenarios.flatMap(({ title, against }) => (against === id ? [title] : []));

/** Whether any scenario is measured against a frozen copy: what a scenario cannot change may then differ too. */
export const isMeasuredByCopies = ({ scenarios, frozen }: Pick<Workbook, 'scenarios' | 'frozen'>) =>
	(frozen ?? []).some(({ id }) => scenarios.some(({ against }) => against === id));
