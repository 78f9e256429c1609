/**
 * A quantity as its editor holds it: texts and choices, turned into a quantity and back. Whether it can be
 * is said by the command that takes it; whether its formula holds, by the engine.
 */
import type { Quantity } from '$lib/workbook/schema';
import { asTyped } from '../format';
import { readEntry } from '../entry';
import { plainSpec } from '../field';

export interface Draft {
	name: string;
	label: string;
	/** Apart by commas. */
	otherNames: string;
	sheet: number;
	/** "number", "yes_no" or the name of the set whose member it holds. */
	type: string;
	unit: string;
	per: string[];
	in: string[];
	fixed: boolean;
	/** Whether those who may see open values alone see it. */
	open: boolean;
	follows: 'entered' | 'formula' | 'members';
	formula: string;
	by: string;
	cases: { member: string; text: string }[];
	/** Names of the inputs by which a path in time is entered; empty where it is none. */
	setBy: string;
	movedBy: string;
	where: string;
	min: string;
	max: string;
	above: string;
	below: string;
	usualMin: string;
	usualMax: string;
	digits: string;
	note: string;
	source: string;
	date: string;
	check: string;
	caution: string;
}

const numberText = (value: number | undefined, locale: string) =>
	value === undefined ? '' : asTyped(value, locale);

export function draftOf(quantity: Quantity | null, sheet: number, locale: string): Draft {
	const formula = quantity?.formula;
	const type = quantity?.type ?? 'number';
	const cases = typeof formula === 'object' ? Object.entries(formula.cases) : [];
	return {
		name: quantity?.name ?? '',
		label: quantity?.label ?? '',
		otherNames: (quantity?.other_names ?? []).join(', '),
		sheet,
		type: typeof type === 'object' ? type.member_of : type,
		unit: quantity?.unit ?? '',
		per: [...(quantity?.per ?? [])],
		in: [...(quantity?.in ?? [])],
		fixed: quantity?.fixed ?? false,
		open: quantity?.open ?? false,
		follows:
			formula === undefined ? 'entered' : typeof formula === 'string' ? 'formula' : 'members',
		formula: typeof formula === 'string' ? formula : '',
		by: typeof formula === 'object' ? formula.by : '',
		cases: cases.map(([member, text]) => ({ member, text })),
		setBy: quantity?.path?.set_by ?? '',
		movedBy: quantity?.path?.moved_by ?? '',
		where: quantity?.where ?? '',
		min: numberText(quantity?.range?.min, locale),
		max: numberText(quantity?.range?.max, locale),
		above: numberText(quantity?.range?.above, locale),
		below: numberText(quantity?.range?.below, locale),
		usualMin: numberText(quantity?.usual?.min, locale),
		usualMax: numberText(quantity?.usual?.max, locale),
		digits: quantity?.digits === undefined ? '' : String(quantity.digits),
		note: quantity?.note ?? '',
		source: quantity?.source ?? '',
		date: quantity?.date ?? '',
		check: quantity?.check?.message ?? '',
		caution: quantity?.caution?.message ?? ''
	};
}

/** "Mass per metre" gives mass_per_metre. */
export const nameFromLabel = (label: string) =>
	label
		.normalize('NFKD')
		.replace(/\p{M}/gu, '')
		.toLowerCase()
		.replace(/[^\p{L}\p{N}]+/gu, '_')
		.replace(/^[^\p{L}]+|_+$/gu, '')
		.slice(0, 64);

export type DraftResult =
	| { readonly ok: true; readonly quantity: Quantity }
	| { readonly ok: false; readonly message: string };

type RangeResult<T> = { ok: true; range: T | undefined } | { ok: false; message: string };

/** What the field of an end takes. */
export const endSpec = (name: 'permitted' | 'usual', locale: string) =>
	plainSpec({
		locale,
		otherUnit: (unit) => `The ${name} range is in the quantity’s own unit: leave out "${unit}".`
	});

/** The ends that are written, each a number in the quantity's own unit. */
function rangeOf<Ends extends string>(
	texts: Readonly<Record<Ends, string>>,
	name: 'permitted' | 'usual',
	locale: string
): RangeResult<Partial<Record<Ends, number>>> {
	const range: Partial<Record<Ends, number>> = {};
	for (const key of Object.keys(texts) as Ends[]) {
		if (texts[key].trim() === '') continue;
		const read = readEntry(texts[key], endSpec(name, locale));
		if (!read.ok) return read;
		range[key] = Number(read.value);
	}
	return { ok: true, range: Object.keys(range).length > 0 ? range : undefined };
}

function formulaOf(draft: Draft): Quantity['formula'] {
	if (draft.follows === 'entered') return undefined;
	if (draft.follows === 'formula') return draft.formula.trim() || undefined;
	const cases: Record<string, string> = Object.create(null) as Record<string, string>;
	for (const { member, text } of draft.cases) if (text.trim()) cases[member] = text.trim();
	return { by: draft.by, cases: { ...cases } };
}

/** A path needs both; one alone is said where the quantity is kept. */
function pathOf({ follows, setBy, movedBy }: Draft): Quantity['path'] {
	if (follows !== 'formula' || (setBy === '' && movedBy === '')) return undefined;
	return { set_by: setBy, moved_by: movedBy };
}

/** Each once, without what is empty between commas. */
function otherNamesOf(text: string): string[] | undefined {
	const names = new Set(
		text
			.split(',')
			.map((name) => name.replace(/\s+/gu, ' ').trim())
			.filter(Boolean)
	);
	return names.size > 0 ? [...names] : undefined;
}

/** What the draft says, with the entered values, tolerance and spread of the quantity it came from. */
export function quantityOf(draft: Draft, from: Quantity | null, locale: string): DraftResult {
	const name = draft.name.trim() || nameFromLabel(draft.label);
	if (!name)
		return {
			ok: false,
			message: 'The quantity has no label. Write what it is, as in "Mass per metre".'
		};
	const { min, max, above, below, usualMin, usualMax } = draft;
	const range = rangeOf({ min, max, above, below }, 'permitted', locale);
	if (!range.ok) return range;
	const usual = rangeOf({ min: usualMin, max: usualMax }, 'usual', locale);
	if (!usual.ok) return usual;
	const isNumber = draft.type === 'number';
	const formula = formulaOf(draft);
	if (draft.follows === 'formula' && formula === undefined)
		return { ok: false, message: 'The formula is empty. Write one, or choose "entered values".' };
	if (draft.follows === 'formula' && (draft.setBy === '') !== (draft.movedBy === ''))
		return {
			ok: false,
			message: 'A path in time needs both inputs of its steps. Choose the other, or neither.'
		};
	const digits = draft.digits.trim() === '' ? undefined : Number(draft.digits);
	if (digits !== undefined && !(Number.isInteger(digits) && digits >= 1 && digits <= 15))
		return {
			ok: false,
			message: 'Digits on screen is a whole number from 1 to 15, or empty for 4.'
		};
	const text = (value: string) => value.trim() || undefined;
	// Each field of a quantity: one that is new comes from the draft, or from the quantity as it was.
	const parts: { [K in keyof Required<Quantity>]: Quantity[K] | undefined } = {
		name,
		label: draft.label.trim() || name,
		other_names: otherNamesOf(draft.otherNames),
		type: isNumber ? undefined : draft.type === 'yes_no' ? 'yes_no' : { member_of: draft.type },
		unit: isNumber ? text(draft.unit) : undefined,
		per: draft.per.length > 0 ? draft.per : undefined,
		in: draft.in.length > 0 ? draft.in : undefined,
		shown: isNumber ? from?.shown : undefined,
		fixed: draft.fixed && draft.follows === 'entered' ? true : undefined,
		whole: isNumber ? from?.whole : undefined,
		value: from?.value,
		formula,
		path: pathOf(draft),
		where: text(draft.where),
		range: isNumber ? range.range : undefined,
		usual: isNumber ? usual.range : undefined,
		check: draft.check.trim() ? { ...from?.check, message: draft.check.trim() } : undefined,
		caution: draft.caution.trim() ? { ...from?.caution, message: draft.caution.trim() } : undefined,
		note: text(draft.note),
		source: text(draft.source),
		date: text(draft.date),
		spread: from?.spread,
		digits,
		open: draft.open ? true : undefined
	};
	const present = Object.entries(parts).filter(([, value]) => value !== undefined);
	return { ok: true, quantity: Object.fromEntries(present) as Quantity };
}
