/** What a check or a caution says of one cell: the one place that knows, for the page, the command line and the server. */
import { hasInputs } from '$lib/workbook/cells';
import { isPermitted } from '$lib/workbook/range';
import { isOfQuoteElsewhere } from '$lib/workbook/quote-cautions';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { isInputCell } from './input-cell';
import type { Layout, QuantityLayout } from './layout';
import { ABSENT, OK, type State } from './state';

/**
 * A number is to be zero within the tolerance, a yes/no to be yes. One without a value cannot hold; one of a member
 * that is absent in the scenario is not asked.
 */
export function checkVerdict(
	{ check, type = 'number' }: Pick<Quantity, 'check' | 'type'>,
	value: number,
	state: State
): 'not-asked' | 'holds' | 'fails' {
	if (!check || state === ABSENT) return 'not-asked';
	if (state !== OK) return 'fails';
	const holds = type === 'number' ? Math.abs(value) <= (check.tolerance ?? 0) : value !== 0;
	return holds ? 'holds' : 'fails';
}

/** Whether the quantity cautions in a scenario: its yes/no is yes, and it is of no quote that stands on another. */
export const isCaution = (
	{ caution, name }: Pick<Quantity, 'caution' | 'name'>,
	value: number,
	state: State,
	{ workbook, scenario }: { readonly workbook: Workbook; readonly scenario: string }
): boolean =>
	caution !== undefined &&
	state === OK &&
	value !== 0 &&
	!isOfQuoteElsewhere(workbook, name, scenario);

/**
 * Whether its number lies outside of where it usually does. Where some members are entered and others follow formulas,
 * what is usual is said of those that are entered: the others lie where their formulas put them.
 */
export function isUnusual(
	{ workbook }: Layout,
	laid: QuantityLayout,
	cell: number,
	value: number,
	state: State
): boolean {
	const { quantity } = laid;
	const { usual, formula } = quantity;
	if (usual === undefined || state !== OK || isPermitted(value, usual)) return false;
	const isPartly = typeof formula === 'object' && hasInputs(quantity);
	return !isPartly || isInputCell(workbook, laid, cell);
}
