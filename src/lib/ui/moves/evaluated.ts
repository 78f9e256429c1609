/**
 * What a revision moves: the headline results that a server computed of two revisions, read as the moves of an edit are.
 * Labels, digits and the product in hand are those of the workbook that is open.
 */
import type { JsonQuantity, JsonValues } from '$lib/engine/json-values';
import type { Layout, QuantityLayout } from '$lib/engine/layout';
import { headlinesOf } from '$lib/workbook/headlines';
import { unitShown } from '../format';
import { figureText } from '../show';
import { isNumber, type Reading } from './moves';

/** What is read of an evaluation; types of the protocol say no more of its values. */
export interface Evaluated {
	readonly scenarios: readonly {
		readonly id: string;
		readonly quantities: Readonly<Record<string, unknown>>;
	}[];
}

/** The headline results that are computed numbers: of no set, or of the one that the first screen shows a member of. */
export const headlineNames = (layout: Layout): string[] =>
	headlinesOf(layout.workbook).filter(
		(name) =>
			isNumber(layout, name) &&
			layout.byName.get(name)!.axes.every(({ set }) => set === layout.workbook.front?.subject)
	);

export function readEvaluated(
	layout: Layout,
	{ scenarios }: Evaluated,
	subject: string | null,
	locale: string
): Reading[] {
	const reading = (place: QuantityLayout, found: JsonQuantity, scenario: string): Reading => {
		const { name, label } = place.quantity;
		const one = place.axes.reduce(
			(here: JsonValues | undefined) => branch(here, subject ?? ''),
			found.value ?? found.values
		);
		const about = { quantity: name, label, scenario };
		if (typeof one !== 'number') return { ...about, value: null, text: 'no value', unit: '' };
		const text = figureText(layout, place, one, locale);
		return { ...about, value: one, text, unit: unitShown(place.quantity) };
	};
	return scenarios.flatMap(({ id, quantities }) =>
		headlineNames(layout).flatMap((name) => {
			const found = quantities[name] as JsonQuantity | undefined;
			return found ? [reading(layout.byName.get(name)!, found, id)] : [];
		})
	);
}

const branch = (values: JsonValues | undefined, member: string): JsonValues | undefined =>
	typeof values === 'object' && Object.hasOwn(values, member)
		? (values as Readonly<Record<string, JsonValues>>)[member]
		: undefined;
