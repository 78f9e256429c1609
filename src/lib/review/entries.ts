/** What stands out among the entered values of a quantity, in the base and where scenarios change it. */
import { withUnit } from '$lib/engine/naming';
import { rangeText, type Writing } from '$lib/engine/number-words';
import { INPUT, OTHERS } from '$lib/workbook/cells';
import { findSet } from '$lib/workbook/lookup';
import { isPermitted } from '$lib/workbook/range';
import { inputValues } from '$lib/workbook/scenario';
import type { Quantity, Scenario, Values, Workbook } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import type { Line, LineKind } from './line';
import { farEntries } from './siblings';

/** More digits than this and a number was computed, not measured. */
const MOST_DIGITS = 8;

/** Of the base. */
export const entryLines = (quantity: Quantity, writing: Writing): Line[] =>
	lines(quantity, quantity.value, quantity.value, null, writing);

/** Of what a scenario itself enters, seen among what it inherits. */
export function changeLines(
	workbook: Workbook,
	scenario: Scenario,
	quantity: Quantity,
	own: Values,
	writing: Writing
): Line[] {
	const all = inputValues(workbook, scenario.id, quantity.name);
	return lines(quantity, own, all, scenario.id, writing);
}

function lines(
	quantity: Quantity,
	own: Values | undefined,
	all: Values | undefined,
	scenario: string | null,
	{ short, full }: Writing
): Line[] {
	if (own === undefined || (quantity.type ?? 'number') !== 'number' || quantity.shown) return [];
	const { usual, unit } = quantity;
	const show = (value: number) => withUnit(value, unit, short);
	const line = (kind: LineKind, at: readonly string[], value: number, what: string): Line => ({
		...{ kind, quantity, at, scenario, what, speaksOf: String(value) }
	});
	const found: Line[] = [];
	const owned = new Set<string>();
	for (const { at, value } of flatten(own)) {
		owned.add(at.join('\u0001'));
		if (typeof value !== 'number') continue;
		if (usual && !isPermitted(value, usual)) {
			const range = rangeText(usual, unit === '1' ? '' : (unit ?? ''), short);
			found.push(line('outside_usual', at, value, `${show(value)}; usual is ${range}`));
		}
		if (digitsOf(value) > MOST_DIGITS)
			found.push(line('pasted', at, value, [full(value), unit].filter(Boolean).join(' ')));
	}
	for (const { at, value, median } of farEntries(quantity, all))
		if (owned.has(at.join('\u0001')))
			found.push({
				...line(
					'far_from_siblings',
					at,
					value,
					`${show(value)}; the others lie about ${show(rounded(median))}`
				),
				speaksOf: sizeOf(value)
			});
	return found;
}

/** Where one lies far from its siblings rightly, it still does when it moves a little. */
const sizeOf = (value: number) =>
	`${value < 0 ? '-' : ''}2^${Math.round(Math.log2(Math.abs(value)))}`;

const rounded = (value: number) => Number(value.toPrecision(3));

const digitsOf = (value: number): number =>
	value.toExponential().split('e')[0]!.replace(/[-.]/g, '').length;

/** Where most members follow a formula, those that take an entered value. */
export function amongFormulasLine(workbook: Workbook, quantity: Quantity): Line | null {
	const { formula } = quantity;
	if (typeof formula !== 'object') return null;
	const entered = Object.entries(formula.cases).flatMap(([id, text]) =>
		id !== OTHERS && text.trim() === INPUT ? [id] : []
	);
	const set = findSet(workbook, formula.by);
	const isRule = (formula.cases[OTHERS] ?? '').trim() !== INPUT;
	if (entered.length === 0 || !set || !isRule || entered.length * 2 >= set.members.length)
		return null;
	const what = `${entered.join(', ')} ${entered.length === 1 ? 'is' : 'are'} entered, the others follow formulas`;
	return { kind: 'entered_among_formulas', quantity, at: [], scenario: null, what, speaksOf: what };
}
