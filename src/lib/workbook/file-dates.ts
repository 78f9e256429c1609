/**
 * Entered dates in files: a quantity that is shown as a date has its values there as ISO 8601 text, "2024-02-29", and as
 * numbers of days everywhere else. Numbers are read too. What is no date is left as it stands: as a text it is refused
 * where values are checked, and as a number (a part of a day, a day before 1900-03-01) it stays a number.
 */
import { dateText, readDate } from './date-text';
import { FIRST_DATE, LAST_DATE } from './dates';
import { mapStudyNames } from './study-names';
import type { Quantity, Scalar, Values, Workbook } from './schema';
import { isTree } from './values';

/** The workbook of a file: dates as numbers. */
export const withDatesRead = (workbook: Workbook): Workbook =>
	withDates(workbook, (value) =>
		typeof value === 'string' ? (readIsoDate(value) ?? value) : value
	);

/** The workbook as a file has it: dates as text. */
export const withDatesWritten = (workbook: Workbook): Workbook =>
	withDates(workbook, (value) => (isDate(value) ? dateText(value) : value));

/** The date of a text exactly as files have it, "2027-05-06"; null for every other. */
const readIsoDate = (text: string): number | null =>
	/^\d{4}-\d\d-\d\d$/.test(text) ? readDate(text) : null;

export const holdsDates = ({ shown }: Quantity): boolean => shown === 'date';

const isDate = (value: Scalar): value is number =>
	typeof value === 'number' && Number.isInteger(value) && value >= FIRST_DATE && value <= LAST_DATE;

function withDates(workbook: Workbook, change: (value: Scalar) => Scalar): Workbook {
	const dated = new Set(
		workbook.sheets
			.flatMap(({ quantities }) => quantities.filter(holdsDates))
			.map(({ name }) => name)
	);
	if (dated.size === 0) return workbook;
	const values = (name: string, given: Values) =>
		dated.has(name) ? changedValues(given, change) : given;
	const of = <T extends { readonly quantity: string; readonly value: Values }>(one: T): T => ({
		...one,
		value: values(one.quantity, one.value)
	});
	return {
		...workbook,
		sheets: workbook.sheets.map((sheet) => ({
			...sheet,
			quantities: sheet.quantities.map((quantity) =>
				quantity.value === undefined
					? quantity
					: { ...quantity, value: values(quantity.name, quantity.value) }
			)
		})),
		scenarios: workbook.scenarios.map((scenario) => ({
			...scenario,
			changes: scenario.changes.map(of)
		})),
		...(workbook.studies && {
			studies: workbook.studies.map((study) => mapStudyNames(study, { values }))
		}),
		...(workbook.plans && {
			plans: workbook.plans.map((plan) => ({ ...plan, values: plan.values.map(of) }))
		})
	};
}

/** `fromEntries` makes own properties of every name, "__proto__" as well. */
function changedValues(values: Values, change: (value: Scalar) => Scalar): Values {
	if (!isTree(values)) return change(values);
	return Object.fromEntries(
		Object.entries(values).map(([member, value]) => [member, changedValues(value, change)])
	);
}
