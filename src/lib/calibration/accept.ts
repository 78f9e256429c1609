/** Fitted figures as entries of the base, with what their quantities then say of their source. */
import { axesOf } from '$lib/workbook/axes';
import type { Calibration } from '$lib/workbook/calibration-schema';
import type { Command } from '$lib/workbook/commands';
import { baseOf, findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { sourceWith } from '$lib/workbook/source-words';
import type { Candidate } from './candidates';
import type { MemberFit } from './members';

/** "Base load, fitted from 12 points of meter.csv, SHA-256 …". */
export function fittedSource({ title, data = [] }: Calibration, { points }: MemberFit): string {
	const batches = [...new Set(points.map(({ batch }) => batch))];
	const from = batches.map((batch) => data[batch]?.source ?? '').filter(Boolean);
	return `${title}, fitted from ${points.length} ${points.length === 1 ? 'point' : 'points'} of ${from.join(' and ')}`;
}

/** One edit. What was said of values that stay is kept behind it. */
export function acceptCommands(
	candidates: readonly Candidate[],
	calibration: Calibration,
	one: MemberFit,
	workbook: Workbook
): Command[] {
	const usable = candidates.filter(({ quantity, refused }) => quantity && refused === '');
	const source = fittedSource(calibration, one);
	const names = [...new Set(usable.map(({ quantity }) => quantity!.name))];
	return [
		// It brings the quantity whole, with the values that stand until then.
		...names.map((name) => {
			const quantity = findQuantity(workbook, name)!;
			const who = one.member === null ? '' : `${one.member}: `;
			// Of a single value nothing stays.
			const before = axesOf(quantity).length === 0 ? '' : (quantity.source ?? '');
			const isStale = (words: string) => words.startsWith(`${who}${calibration.title}, fitted`);
			return {
				kind: 'replace_quantity' as const,
				name,
				quantity: { ...quantity, source: sourceWith(`${who}${source}`, before, isStale) }
			};
		}),
		{
			kind: 'set_inputs',
			scenario: baseOf(workbook).id,
			entries: usable.map(({ quantity, at, value }) => ({
				quantity: quantity!.name,
				at: [...at],
				value
			}))
		}
	];
}
