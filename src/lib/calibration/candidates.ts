/** What a fit's figures would be entered as: in the quantity's unit, beside what stands there, in units of the spread. */
import { divide, sameDimension } from '$lib/units/algebra';
import { convert } from '$lib/units/convert';
import { UnitSystem } from '$lib/units/system';
import type { Unit } from '$lib/units/unit';
import type { Calibration, Fitted } from '$lib/workbook/calibration-schema';
import { axesOf } from '$lib/workbook/axes';
import { takesEntry } from '$lib/workbook/cells';
import { baseOf, findQuantity, findSet } from '$lib/workbook/lookup';
import { isPermitted } from '$lib/workbook/range';
import { inputAt } from '$lib/workbook/scenario';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import type { FittedFigure } from './fit';
import type { MemberFit } from './members';

export interface Candidate {
	readonly parameter: Fitted['parameter'];
	/** The member whose share it is. */
	readonly of: string | null;
	/** Null: it is only shown. */
	readonly quantity: Quantity | null;
	readonly at: readonly string[];
	/** Of all its figures. */
	readonly unit: string;
	readonly value: number;
	readonly error: number | null;
	readonly low: number | null;
	readonly high: number | null;
	/** What stands there; null: nothing. */
	readonly stands: number | null;
	/** Fitted less what stands, and how many standard errors that is. */
	readonly difference: number | null;
	readonly inErrors: number | null;
	/** Why it cannot be used; empty where it can. */
	readonly refused: string;
}

/** What stands in a cell of the base, entered or by formula. */
export type Standing = (quantity: string, at: readonly string[]) => number | null;

interface Found extends FittedFigure {
	readonly of: string | null;
}

export function candidatesOf(
	calibration: Calibration,
	one: MemberFit,
	workbook: Workbook,
	standing: Standing
): Candidate[] {
	const figures: Found[] = one.shares
		? one.shares.map(({ of, ...share }) => ({ parameter: 'share', of, ...share }))
		: (one.fit?.figures ?? []).map((figure) => ({ ...figure, of: null }));
	return calibration.gives.flatMap((given) =>
		figures
			.filter(({ parameter }) => parameter === given.parameter)
			.map((found) => candidate(calibration, given, found, one.member, workbook, standing))
	);
}

function candidate(
	calibration: Calibration,
	given: Fitted,
	found: Found,
	member: string | null,
	workbook: Workbook,
	standing: Standing
): Candidate {
	const quantity =
		given.quantity === undefined ? null : (findQuantity(workbook, given.quantity) ?? null);
	const at = quantity ? placeOf(quantity, calibration, given, member, found.of) : [];
	const { toOwn, unit, message } = conversion(calibration, given, quantity, workbook);
	const own = (value: number | null) =>
		value === null ? null : Number(toOwn(value).toPrecision(12));
	const value = own(found.value)!;
	const error = own(found.error);
	const stands =
		quantity && at && !message
			? (standing(quantity.name, at) ?? enteredAt(workbook, quantity, at))
			: null;
	const difference = stands === null ? null : value - stands;
	return {
		parameter: found.parameter,
		of: found.of,
		quantity,
		at: at ?? [],
		unit,
		value,
		error,
		low: own(found.low),
		high: own(found.high),
		stands,
		difference,
		inErrors: difference === null || !error ? null : difference / error,
		refused: message || refusal(given, quantity, at, value)
	};
}

function enteredAt(workbook: Workbook, quantity: Quantity, at: readonly string[]): number | null {
	const { value } = inputAt(workbook, baseOf(workbook).id, quantity.name, at);
	return typeof value === 'number' ? value : null;
}

function refusal(
	given: Fitted,
	quantity: Quantity | null,
	at: readonly string[] | null,
	value: number
): string {
	if (!quantity)
		return given.quantity === undefined
			? ''
			: `There is no quantity "${given.quantity}" any more. Give the fit another in the workbook's file.`;
	if (!at)
		return `${quantity.label} is per more than the fit says. Name its other members in the workbook's file.`;
	if (!isInput(quantity, at)) return `${quantity.label} follows a formula.`;
	return isPermitted(value, quantity.range ?? null)
		? ''
		: `${quantity.label} may not be that: it is outside of what is permitted.`;
}

function isInput(quantity: Quantity, at: readonly string[]): boolean {
	const { formula } = quantity;
	const by = typeof formula === 'object' ? formula.by : null;
	return takesEntry(quantity, at[axesOf(quantity).findIndex(({ name }) => name === by)] ?? '');
}

/** Null where an axis has no member. */
function placeOf(
	quantity: Quantity,
	{ each, over }: Calibration,
	{ at = [] }: Fitted,
	member: string | null,
	of: string | null
): string[] | null {
	const found = axesOf(quantity).map(({ name, set }) => {
		const fixed = at.find((one) => one.of === name || one.of === set);
		return fixed?.id ?? (set === each ? member : set === over ? of : null);
	});
	return found.every((id) => id !== null) ? found : null;
}

/** The figure's own unit, from those of x and y, and how it becomes the quantity's. */
function conversion(
	{ x, y }: Calibration,
	{ parameter, per }: Fitted,
	quantity: Quantity | null,
	workbook: Workbook
): { toOwn: (value: number) => number; unit: string; message: string } {
	const { system } = UnitSystem.create(workbook.units ?? []);
	const failed = (message: string) => ({
		toOwn: (value: number) => value,
		unit: '',
		message
	});
	const [above, below] = [system.parse(y.unit ?? '1'), system.parse(x?.unit ?? '1')];
	if (!above.ok) return failed(above.problem.message);
	if (!below.ok) return failed(below.problem.message);
	const one = system.parse('1');
	let from: Unit =
		parameter === 'share' && one.ok
			? one.unit
			: parameter === 'slope' || parameter === 'ratio'
				? divide(above.unit, below.unit)
				: above.unit;
	let times = 1;
	if (per !== undefined) {
		const amount = system.parseAmount(per);
		if (!amount.ok) return failed(amount.problem.message);
		from = divide(from, amount.unit);
		times = 1 / amount.value;
	}
	if (!quantity) return { toOwn: (value) => value * times, unit: from.text, message: '' };
	const own = quantity.unit ?? '1';
	const to = system.parse(own);
	if (!to.ok) return failed(to.problem.message);
	if (!sameDimension(from, to.unit))
		return failed(
			`${from.text} cannot become ${own}: they measure different things. Look at the units of the fit in the workbook's file.`
		);
	return { toOwn: (value) => convert(value * times, from, to.unit), unit: own, message: '' };
}

/** Sets are asked for by their labels. */
export const labelOfSet = (workbook: Workbook, name: string | undefined): string =>
	name === undefined ? '' : (findSet(workbook, name)?.label ?? name);
