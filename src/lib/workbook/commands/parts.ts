/** Changes to all quantities, changes or other parts of a workbook at once, sharing what stays. */
import { edited, type Edit } from './command';
import { mapped } from './lists';
import type { Change, Picture, Quantity, Sheet, Workbook } from '../schema';

export function mapQuantities(
	workbook: Workbook,
	change: (quantity: Quantity) => Quantity
): Workbook {
	const sheets = mapped(workbook.sheets, (sheet) => {
		const quantities = mapped(sheet.quantities, change);
		return quantities === sheet.quantities ? sheet : { ...sheet, quantities };
	});
	return sheets === workbook.sheets ? workbook : { ...workbook, sheets };
}

export function mapSheets(workbook: Workbook, change: (sheet: Sheet) => Sheet): Workbook {
	const sheets = mapped(workbook.sheets, change);
	return sheets === workbook.sheets ? workbook : { ...workbook, sheets };
}

/** With another list of its own; the field goes with its last entry, so that taking the first one back leaves the file as it was. */
export function withList<Field extends 'tables' | 'calibrations' | 'frozen' | 'quotes'>(
	workbook: Workbook,
	field: Field,
	list: NonNullable<Workbook[Field]>
): Edit {
	const { [field]: _list, ...rest } = workbook;
	return edited((list.length > 0 ? { ...rest, [field]: list } : rest) as Workbook);
}

/** Undefined takes a change out. */
export function mapChanges(
	workbook: Workbook,
	change: (change: Change) => Change | undefined
): Workbook {
	const scenarios = mapped(workbook.scenarios, (scenario) => {
		const changes = scenario.changes.map(change);
		if (changes.every((next, i) => next === scenario.changes[i])) return scenario;
		return { ...scenario, changes: changes.filter((next) => next !== undefined) };
	});
	return scenarios === workbook.scenarios ? workbook : { ...workbook, scenarios };
}

/** Undefined takes a picture out. */
export function mapPictures(
	workbook: Workbook,
	change: (picture: Picture) => Picture | undefined
): Workbook {
	const { pictures } = workbook;
	if (!pictures) return workbook;
	const next = pictures.map(change);
	if (next.every((picture, i) => picture === pictures[i])) return workbook;
	return { ...workbook, pictures: next.filter((picture) => picture !== undefined) };
}

/** The quantity with another value, or with none. */
export function withValue(quantity: Quantity, value: Quantity['value'] | undefined): Quantity {
	if (value === quantity.value) return quantity;
	if (value !== undefined) return { ...quantity, value };
	const { value: _value, ...rest } = quantity;
	return rest;
}
