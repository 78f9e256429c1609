/**
 * What stands beside and below a field while it is edited: what the entry becomes, what is permitted,
 * and the base's value.
 */
import { dateText } from '$lib/workbook/date-text';
import { membersOf } from '$lib/engine/layout';
import { inputAt } from '$lib/workbook/scenario';
import type { Scalar } from '$lib/workbook/schema';
import { permittedText, type Entry, type FieldSpec } from './entry';
import { decimalsWritten, formatNumber, formatUnit, marksOf } from './format';
import type { QuantityRow } from './rows';
import type { Session } from './session.svelte';

export interface Hint {
	/** "= 1.95 EUR/kg", where a unit was converted or digits could be read in two ways. */
	readonly becomes: string;
	readonly below: string;
	readonly aloud: string;
}

const scalarText = (value: Scalar, spec: FieldSpec): string => {
	if (value === null) return '';
	if (typeof value === 'boolean') return value ? 'yes' : 'no';
	if (typeof value === 'string') return value;
	if (spec.date) return dateText(value);
	return String(value).replace('.', marksOf(spec.locale).decimal);
};

/** What the field holds when it opens: the scenario's value with all its digits. */
export function fieldText(
	session: Session,
	row: QuantityRow,
	scenario: string,
	spec: FieldSpec
): string {
	const { layout, workbook } = session;
	if (!layout || !workbook) return '';
	const { name } = row.quantity.quantity;
	return scalarText(inputAt(workbook, scenario, name, membersOf(layout, row.from)).value, spec);
}

function shown(value: number, spec: FieldSpec): string {
	if (spec.date) return dateText(value);
	const unit = formatUnit(spec.unit);
	const text = formatNumber(value, decimalsWritten(Number(value.toPrecision(9)), 9), spec.locale);
	return unit ? `${text} ${unit}` : text;
}

export function editHint(
	session: Session,
	row: QuantityRow,
	spec: FieldSpec,
	entry: Entry,
	text: string,
	scenario: string
): Hint {
	const { workbook, layout, baseId } = session;
	const aloud = [formatUnit(spec.unit), spec.type === 'number' ? 'number' : 'choice']
		.filter(Boolean)
		.join(', ');
	if (!entry.ok) return { becomes: '', below: entry.message, aloud };
	const notes: string[] = [];
	const permitted = permittedText(spec.range, spec.unit, spec.locale);
	if (permitted) notes.push(`permitted ${permitted}`);
	const usual = permittedText(row.quantity.quantity.usual ?? null, spec.unit, spec.locale);
	if (usual) notes.push(`usually ${usual}`);
	if (scenario !== baseId && workbook && layout) {
		const at = membersOf(layout, row.from);
		const base = inputAt(workbook, baseId, row.quantity.quantity.name, at).value;
		if (typeof base === 'number') notes.push(`base ${shown(base, spec)}`);
		else if (base !== null) notes.push(`base ${scalarText(base, spec)}`);
	}
	if (text.trim() === '' && spec.type === 'number') notes.unshift('empty: nobody entered a value');
	const marked = /[.,'’\s]/.test(text.trim());
	const becomes =
		typeof entry.value === 'number' && (entry.from !== null || entry.isReckoned === true || marked)
			? `= ${shown(entry.value, spec)}`
			: '';
	const below = notes.join('; ');
	return { becomes, below: below ? below[0]!.toUpperCase() + below.slice(1) : '', aloud };
}
