/**
 * What a revision moves: the headline results that a server computed of two revisions, read as the moves of an edit are.
 * Labels, digits and the product in hand are those of the workbook that is open.
 */
import type { JsonQuantity, JsonValues } from '$lib/engine/json-values';
import { axesOf } from '$lib/workbook/axes';
import { headlinesOf } from '$lib/workbook/headlines';
import { quantityPlaces } from '$lib/workbook/lookup';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { decimalsFor, decimalsWritten, formatNumber, MOST_DECIMALS, unitShown } from '../format';
import type { Reading } from './moves';

/** What is read of an evaluation; types of the protocol say no more of its values. */
export interface Evaluated {
	readonly scenarios: readonly {
		readonly id: string;
		readonly quantities: Readonly<Record<string, unknown>>;
	}[];
}

/** The headline results that are computed numbers: of no set, or of the one that the first screen shows a member of. */
export function headlineNames(workbook: Workbook): string[] {
	const places = quantityPlaces(workbook);
	return headlinesOf(workbook).filter((name) => {
		const quantity = places.get(name)?.quantity;
		if (quantity?.formula === undefined || (quantity.type ?? 'number') !== 'number') return false;
		return axesOf(quantity).every(({ set }) => set === workbook.front?.subject);
	});
}

export function readEvaluated(
	workbook: Workbook,
	{ scenarios }: Evaluated,
	subject: string | null,
	locale: string
): Reading[] {
	const places = quantityPlaces(workbook);
	return scenarios.flatMap(({ id, quantities }) =>
		headlineNames(workbook).flatMap((name) => {
			const quantity = places.get(name)?.quantity;
			const found = quantities[name] as JsonQuantity | undefined;
			return quantity && found ? [reading(quantity, found, id, subject, locale)] : [];
		})
	);
}

function reading(
	quantity: Quantity,
	{ value, values }: JsonQuantity,
	scenario: string,
	subject: string | null,
	locale: string
): Reading {
	const one: JsonValues | undefined = axesOf(quantity).reduce(
		(here: JsonValues | undefined) => branch(here, subject ?? ''),
		value ?? values
	);
	const number = typeof one === 'number' ? one : null;
	return {
		quantity: quantity.name,
		label: quantity.label,
		scenario,
		value: number,
		text: number === null ? 'no value' : text(number, quantity.digits ?? 4, locale),
		unit: number === null ? '' : unitShown(quantity)
	};
}

const branch = (values: JsonValues | undefined, member: string): JsonValues | undefined =>
	typeof values === 'object' && Object.hasOwn(values, member)
		? (values as Readonly<Record<string, JsonValues>>)[member]
		: undefined;

const text = (value: number, digits: number, locale: string) =>
	formatNumber(
		value,
		Math.min(decimalsFor(value, digits), decimalsWritten(value, MOST_DECIMALS)),
		locale
	);
