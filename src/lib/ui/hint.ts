/**
 * What stands beside and below a field while it is edited: what the entry becomes, what is permitted,
 * and the base's value.
 */
import { membersOf } from '$lib/engine/layout';
import { inputAt } from '$lib/workbook/scenario';
import type { Quantity, Scalar } from '$lib/workbook/schema';
import type { Entry, FieldSpec } from './entry';
import { becomesOf } from './entry-words';
import { asTyped, formatUnit, unitShown } from './format';
import { permittedText } from './permitted';
import type { QuantityRow } from './rows';
import { asEntered, scalarWords } from './scalar-words';
import type { Session } from './session.svelte';

export interface Hint {
	/** "= 1.95 EUR/kg", where a unit was converted or digits could be read in two ways. */
	readonly becomes: string;
	readonly below: string;
	readonly aloud: string;
}

/** What the field holds when it opens: the scenario's value with all its digits; a choice by its id. */
export function fieldText(
	session: Session,
	row: QuantityRow,
	scenario: string,
	spec: FieldSpec
): string {
	const { layout, workbook } = session;
	if (!layout || !workbook) return '';
	const { quantity } = row.quantity;
	const at = membersOf(layout, row.from);
	if (quantity.path)
		return session.paths?.stepText(workbook, scenario, quantity.name, at, spec) ?? '';
	const { value } = inputAt(workbook, scenario, quantity.name, at);
	const number = (entered: number) => asTyped(entered, spec.locale);
	return scalarWords(value, quantity, { nothing: '', number, workbooks: [] });
}

/** A value as it is told beside the field, with its unit. */
function told(session: Session, value: Scalar, quantity: Quantity, spec: FieldSpec): string {
	const number = (entered: number) =>
		[asEntered(entered, spec.locale), unitShown(quantity)].filter(Boolean).join(' ');
	const workbooks = session.workbook ? [session.workbook] : [];
	return scalarWords(value, quantity, { nothing: '', number, workbooks });
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
	const { quantity } = row.quantity;
	const aloud = [formatUnit(spec.unit), spec.type === 'number' ? 'number' : 'choice']
		.filter(Boolean)
		.join(', ');
	if (!entry.ok) return { becomes: '', below: entry.message, aloud };
	const notes: string[] = [];
	if (quantity.path && workbook && layout && session.paths) {
		const at = membersOf(layout, row.from);
		return { ...session.paths.stepHint(workbook, quantity, at, entry, text, spec), aloud };
	}
	const permitted = permittedText(spec.range, spec.unit, spec.locale);
	if (permitted) notes.push(`permitted ${permitted}`);
	const usual = permittedText(quantity.usual ?? null, spec.unit, spec.locale);
	if (usual) notes.push(`usually ${usual}`);
	if (scenario !== baseId && workbook && layout) {
		const at = membersOf(layout, row.from);
		const base = inputAt(workbook, baseId, quantity.name, at).value;
		if (base !== null) notes.push(`base ${told(session, base, quantity, spec)}`);
	}
	if (text.trim() === '' && spec.type === 'number') notes.unshift('empty: nobody entered a value');
	const becomes = becomesOf(text, entry, spec);
	const below = notes.join('; ');
	return { becomes, below: below ? below[0]!.toUpperCase() + below.slice(1) : '', aloud };
}
