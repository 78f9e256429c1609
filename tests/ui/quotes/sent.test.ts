/** A quote of several items that is sent: what is kept once, what two people did at a time, and its sheet for the house. */
import { describe, expect, it } from 'vitest';
import { paperText } from '$lib/papers/paper';
import { internalSheetPaper } from '$lib/papers/internal-sheet';
import { addedSince, asSent, changedSinceSent } from '$lib/ui/quotes/since-sent';
import { allInputs, withSharedInputs } from '$lib/ui/quotes/shared-inputs';
import { NO_FIGURES } from '$lib/ui/quotes/tender';
import { heldAnswers } from '$lib/ui/quotes/item-words';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { KeptQuote, QuoteItem } from '$lib/workbook/schema';

const item = (id: string, metres: number, inputs: Record<string, number>): QuoteItem => ({
	id,
	entries: [{ quantity: 'metres', value: metres }],
	grounds: {
		...{ date: '2028-03-14', of: 'Base', inputs },
		figures: [{ name: 'metres', label: 'Quantity', unit: 'm', value: metres }]
	}
});
const quote: KeptQuote = {
	...{ id: 'q', number: '28-AB-001', version: 1, state: 'sent', date: '2028-03-14' },
	items: [item('one', 1000, { wage: 20, resin: 2 }), item('two', 500, { wage: 20, resin: 3 })]
};

describe('inputs behind several items', () => {
	it('are kept once where they are the same, and read whole again', () => {
		const kept = { ...quote, items: withSharedInputs(quote.items) };
		expect(kept.items[0]).toBe(quote.items[0]);
		expect(kept.items[1]!.grounds!.inputs).toEqual({ resin: 3 });
		expect(allInputs(kept, kept.items[1]!).grounds!.inputs).toEqual({ wage: 20, resin: 3 });
	});
});

describe('a quote that one sent while another changed it', () => {
	const merged: KeptQuote = {
		...quote,
		items: [
			{ ...quote.items[0]!, entries: [{ quantity: 'metres', value: 1200 }] },
			quote.items[1]!,
			{ id: 'three', entries: [{ quantity: 'metres', value: 7 }] }
		]
	};

	it('tells what differs from what was sent', () => {
		expect(changedSinceSent(quote.items[0]!)).toEqual([]);
		expect(changedSinceSent(merged.items[0]!)).toMatchObject([
			{ label: 'Quantity', sent: '1000', now: '1200' }
		]);
		expect(addedSince(merged).map(({ id }) => id)).toEqual(['three']);
		expect(addedSince(quote)).toEqual([]);
	});

	it('goes back to what was sent when that is asked', () => {
		expect(asSent(merged)).toEqual(quote);
	});
});

describe('the sheet for the house', () => {
	const figures = {
		...NO_FIGURES,
		...{
			revenue: 400,
			net: 360,
			contribution: -12.5,
			result: 20,
			hours: 3,
			floor: 0.37,
			price: 0.36
		}
	};
	const paper = internalSheetPaper({
		...{ title: 'Internal sheet 28-AB-001', facts: ['Tidewell'], money: 'EUR', hours: 'h' },
		locale: 'en-GB',
		items: [
			{
				...{ name: 'PX15B-50', metres: 1000, when: 'October', test: null },
				answer: { id: 'one', whole: figures },
				remarks: ['Below its floor: 12.5 EUR short.']
			}
		],
		plan: {
			...{ money: 'EUR', loses: null, brings: 100, fits: 0.23, gives: [], made: [] },
			hours: [{ place: 'L2', month: 'October', free: 462, free_with: null, taken: 3122 }]
		}
	});

	it('says of each item floor, what is left and hours, what is amiss, and what the plan has room for', () => {
		const text = paperText(paper).replaceAll('\u00a0', ' ');
		expect(text).toContain('1. PX15B-50\t1,000\tOctober');
		expect(text).toContain('0.3700');
		expect(text).toContain('−12.50');
		expect(text).toContain('1. PX15B-50: Below its floor: 12.5 EUR short.');
		expect(text).toContain('23 % of it would fit');
		expect(text).toMatch(/L2\tOctober\t3,122 h\t462.* h\t–/);
		// 20 of 360 that stay.
		expect(text).toContain('5.56');
	});
});

describe('a quote that was sent before sums were kept', () => {
	it('comes to its prices times its metres', () => {
		const picture = {
			...{ size: 'metres', price: 'net', floor: 'floor', target: 't', invoice: 'invoice' },
			...{
				margin: 'margin',
				hours: 'h',
				tender: { net: 'x', revenue: 'x', contribution: 'x', result: 'x' }
			}
		} as unknown as QuotePicture;
		const old = item('one', 1000, {});
		old.grounds!.figures.push(
			...Object.entries({ net: 0.4, floor: 0.3, invoice: 0.5, margin: 10 }).map(
				([name, value]) => ({
					...{ name, label: name, value }
				})
			)
		);
		const [answer] = heldAnswers({ ...quote, items: [old] }, picture);
		expect(answer!.whole.revenue).toBeCloseTo(500, 9);
		expect(answer!.whole.contribution).toBeCloseTo(100, 9);
		expect(answer!.whole.result).toBeCloseTo(40, 9);
	});
});
