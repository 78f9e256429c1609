/** Which pairs of members exist, and what becomes of the values of those that do not. */
import { axesOf, pairKey, relationAxes } from '../axes';
import { cellGuide, fitting } from '../cells';
import { findRelation, quantityPlaces } from '../lookup';
import type { Quantity, Workbook } from '../schema';
import { edited, refused, type Edit, type MemberCommand } from './command';
import { mapped } from './lists';
import { mapChanges, mapQuantities, withValue } from './parts';

export function setPair(
	workbook: Workbook,
	{ relation: name, pair, exists }: Extract<MemberCommand, { kind: 'set_relation_pair' }>
): Edit {
	const relation = findRelation(workbook, name);
	if (!relation)
		return refused(
			'unknown-relation',
			`There is no relation "${name}". Choose one of the workbook's relations.`
		);
	const key = pairKey(pair);
	const stands = relation.pairs.some((other) => pairKey(other) === key);
	if (stands === exists) return edited(workbook);
	const pairs = exists
		? [...relation.pairs, [...pair]]
		: relation.pairs.filter((other) => pairKey(other) !== key);
	const next = {
		...workbook,
		relations: mapped(workbook.relations ?? [], (one) =>
			one === relation ? { ...one, pairs } : one
		)
	};
	if (exists) return edited(next);
	return edited(
		withoutMisfits(
			next,
			(quantity) =>
				quantity.in?.includes(name) === true && relationAxes(axesOf(quantity), relation) !== null
		)
	);
}

/** Drops the values of these quantities, in the base and in scenarios, that no longer belong. */
export function withoutMisfits(
	workbook: Workbook,
	which: (quantity: Quantity) => boolean
): Workbook {
	const touched = new Map<string, Quantity>();
	for (const { quantity } of quantityPlaces(workbook).values())
		if (which(quantity)) touched.set(quantity.name, quantity);
	const fit = (name: string, values: Quantity['value']) => {
		const quantity = touched.get(name);
		const guide = quantity && cellGuide(workbook, quantity);
		return guide ? fitting(guide, values) : values;
	};
	const next = mapQuantities(workbook, (quantity) =>
		withValue(quantity, fit(quantity.name, quantity.value))
	);
	return mapChanges(next, (change) => {
		const value = fit(change.quantity, change.value);
		if (value === change.value) return change;
		return value === undefined ? undefined : { ...change, value };
	});
}
