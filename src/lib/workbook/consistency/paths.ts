/** A path in time: it runs along months, its formula reads the inputs of its steps, and these fit it. */
import { axesOf } from '../axes';
import { mentionsQuantity } from '../formula-names';
import { findQuantity, findSet } from '../lookup';
import type { Quantity } from '../schema';
import type { Findings } from './findings';
import { checkQuantityName } from './front-names';

export function checkPath(
	findings: Findings,
	quantity: Quantity,
	at: readonly PropertyKey[]
): void {
	const { path, formula, type = 'number' } = quantity;
	if (!path) return;
	const { workbook } = findings;
	const add = (field: readonly PropertyKey[], message: string, remedy: string) =>
		findings.add([...at, 'path', ...field], 'bad-path', message, remedy);
	if (type !== 'number' || typeof formula !== 'string')
		return add([], 'only a number with one formula can be a path in time', 'Take "path" out.');
	const last = axesOf(quantity).at(-1);
	if (!last || findSet(workbook, last.set)?.time === undefined)
		return add(
			[],
			'a path runs along months, and the last set of the quantity is not marked as months',
			'Put such a set last in "per", or take "path" out.'
		);
	if (path.set_by === path.moved_by)
		return add([], `${path.set_by} holds both kinds of steps`, 'Name an input for each.');
	for (const field of ['set_by', 'moved_by'] as const) {
		const input = findQuantity(workbook, path[field]);
		if (!input) {
			checkQuantityName(findings, [...at, 'path', field], path[field]);
			continue;
		}
		const other = workbook.sheets
			.flatMap(({ quantities }) => quantities)
			.find(
				(one) => one !== quantity && [one.path?.set_by, one.path?.moved_by].includes(input.name)
			);
		const unit = field === 'set_by' ? (quantity.unit ?? '1') : '%';
		if (input.formula !== undefined || (input.type ?? 'number') !== 'number' || input.fixed)
			add([field], `${input.name} is no number that is entered`, 'Name an input.');
		else if (String(input.per) !== String(quantity.per) || String(input.in) !== String(quantity.in))
			add(
				[field],
				`${input.name} is not per the same sets as ${quantity.name}`,
				'Give both the same "per" and "in".'
			);
		else if ((input.unit ?? '1') !== unit)
			add([field], `${input.name} is not in ${unit}`, `Give it the unit "${unit}".`);
		else if (other)
			add([field], `${input.name} holds the steps of ${other.name} already`, 'Name another input.');
		else if (!mentionsQuantity(formula, input.name))
			add(
				[field],
				`the formula of ${quantity.name} does not read ${input.name}`,
				'Write it in the formula, or name the input that stands there.'
			);
	}
}
