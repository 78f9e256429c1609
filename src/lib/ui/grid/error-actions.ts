/**
 * What a reader can do about an error: take the base's value, go to the input, mend the formula.
 */
import { membersOf } from '$lib/engine/layout';
import { inputAt } from '$lib/workbook/scenario';
import { isInputCell } from '$lib/engine/input-cell';
import { formatUnit } from '../format';
import type { MessageRow } from '../rows';
import { asEntered, scalarWords } from '../scalar-words';
import type { Session } from '../session.svelte';

export interface WayOut {
	readonly text: string;
	readonly act: () => void;
}

export function waysOut(
	session: Session,
	row: MessageRow,
	goTo: (cell: number, scenario: string) => void
): WayOut[] {
	const { workbook, layout, baseId, readOnly } = session;
	const { tone, scenario, cell } = row.message;
	const { name, unit } = row.quantity.quantity;
	if (!workbook || !layout) return [];
	const mend: WayOut = {
		text: readOnly ? 'Read the formula' : 'Fix the formula',
		act: () => (session.view.editing = { quantity: name, sheet: row.quantity.sheet })
	};
	if (tone === 'formula') return [mend];
	if (cell === null || cell >= layout.cells) return [];
	if (tone === 'caution' || tone === 'check')
		return [{ text: 'Ask why', act: () => (session.view.why = { scenario, cell }) }];
	if (!isInputCell(workbook, row.quantity, cell))
		return [{ text: 'Ask why', act: () => (session.view.why = { scenario, cell }) }, mend];
	const ways: WayOut[] = [];
	const at = membersOf(layout, cell);
	const base = inputAt(workbook, baseId, name, at).value;
	if (scenario !== baseId && base !== null && !readOnly) {
		const shown = scalarWords(base, row.quantity.quantity, {
			nothing: '',
			number: (value) => `${asEntered(value, session.locale)} ${formatUnit(unit)}`,
			workbooks: [workbook]
		});
		ways.push({
			text: `Take the base’s ${shown.trim()}`,
			act: () => {
				const entries = [{ quantity: name, at, value: undefined }];
				session.said = session.apply({ kind: 'set_inputs', scenario, entries }) ?? '';
			}
		});
	}
	ways.push({ text: 'Go to the input', act: () => goTo(cell, scenario) });
	return ways;
}
