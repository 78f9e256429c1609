/** What an order pushes out of the plan, in words, on the plant that is solved by hand. */
import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { chargedWords, floorByPlan, hoursInPlan, pushesOutWords } from '$lib/ui/quote/pushes-out';
import { placeLabel } from '$lib/ui/programmes/labels';
import type { Quote } from '$lib/ui/quote/quote';
import type { Taking } from '$lib/programmes/inquiry/questions';
import { smallPlant } from '../programmes/small-plant';

const layout = layOut(smallPlant());
const line = { id: 'L2', label: 'L2', set: 'line', ordinal: 1 };
const month = { id: 'feb', label: 'February', set: 'month', ordinal: 1 };

describe('the hours of an order in the plan', () => {
	it('are where a programme makes those of its line and month scarce', () => {
		const found = hoursInPlan(layout, 'base', line, month)!;
		expect(found).toMatchObject({
			where: { programme: 'allocation', scenario: 'base', members: [] },
			money: 'EUR'
		});
		expect(placeLabel(layout, found.cell)).toBe('L2, feb');
		expect(layout.quantities[layout.quantityOfCell[found.cell]!]!.quantity.name).toBe('hours_hold');
	});

	it('are nowhere without a line, or without a programme that is solved', () => {
		expect(hoursInPlan(layout, 'base', null, month)).toBeNull();
		expect(hoursInPlan(layout, 'base', { ...line, set: 'other' }, month)).toBeNull();
		const off = smallPlant((book) => ({
			...book,
			programmes: book.programmes!.map((one) => ({ ...one, off: true }))
		}));
		expect(hoursInPlan(layOut(off), 'base', line, month)).toBeNull();
	});
});

describe('what they push out', () => {
	const { base } = layout.byName.get('sold')!;
	const say = (cost: number | null, gives: readonly number[] = []) =>
		pushesOutWords(
			layout,
			{ each: [], money: 'EUR' },
			{
				cost,
				gives: gives.map((amount, at) => ({ cell: base + at, amount, money: amount }))
			} satisfies Taking,
			'10 h of L2 in February',
			'en'
		);

	it('is named with its amounts, the greatest first, and what it costs in all', () => {
		expect(say(190, [100])).toBe(
			'The 10 h of L2 in February push out 100 m of A, jan. With the plan made again around them that costs 190 EUR.'
		);
		expect(say(900, [400, 300, 200, 100])).toContain(
			'400 m of A, jan, 300 m of A, feb, 200 m of B, jan and one more.'
		);
	});

	it('is nothing, or other work that moves, or more than there is', () => {
		expect(say(0)).toContain('push nothing out');
		expect(say(12)).toContain('other work moves to where it costs more: 12 EUR');
		expect(say(null)).toContain('cannot give this order 10 h of L2 in February');
	});
});

describe('what the floor charges for them', () => {
	const of = (value: number, unit = '') => ({
		...{ kind: 'value' as const, value, because: '' },
		quantity: { quantity: { unit, digits: 4 } }
	});
	const quote = {
		months: [{ isChosen: false }, { isChosen: true, value: of(2) }],
		...{ hours: of(50, 'h'), size: of(1000, 'm'), floor: of(0.25, 'EUR/m') }
	} as unknown as Quote;
	const say = (cost: number | null, of = quote) => chargedWords(of, cost, 'EUR', 'en');

	it('stands beside what the plan loses, with the reason and the floor that follows', () => {
		expect(say(340)).toMatch(/^The floor charges 100 EUR for them, 240 EUR less: it reckons from/);
		expect(say(340)).toMatch(/With it the floor would be 0\.4900 EUR\/m instead of 0\.2500\.$/);
		expect(say(98)).toMatch(/2 EUR more: .* 0\.2480 EUR\/m instead of 0\.2500\.$/);
	});

	it('gives the floor of the plan made again, where a digit of it changes', () => {
		expect(floorByPlan(quote, 340, 'en')).toMatchObject({ kind: 'value', value: 0.49 });
		expect(floorByPlan(quote, 100.04, 'en')).toBeNull();
		expect(floorByPlan(quote, null, 'en')).toBeNull();
		expect(floorByPlan({ ...quote, months: [] }, 340, 'en')).toBeNull();
	});

	it('is as much, or nothing to compare', () => {
		expect(say(100.4)).toBe('The floor charges as much for them.');
		expect(say(null)).toBe('');
		expect(say(10, { ...quote, months: [] })).toBe('');
	});
});
