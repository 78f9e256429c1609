import { describe, expect, it } from 'vitest';
import { NOT_ENTERED } from '$lib/engine/state';
import {
	bridgeOf,
	bridgeRange,
	bridgeSummary,
	bridgeTable,
	bridgeTitle
} from '$lib/ui/pictures/bridge/bridge';
import { opened, pictureOf, result } from './shifts-hand';

const picture = pictureOf('bridge');
// 500 thousand in the base; 1,200 − 450 − 200 = 550 thousand with weekends.
const written = { base: result(1_000_000, 300_000), weekends: result(1_200_000, 450_000) };
const open = opened(written);

describe('a bridge', () => {
	it('moves up by what is added and down by what is taken off, and arrives', () => {
		const { steps, from, to, still } = bridgeOf(open, picture, 'base', 'weekends');
		expect(from.value).toBe(500_000);
		expect(steps.map(({ label, move }) => [label, move])).toEqual([
			['Revenue', 200_000],
			['Shift labour', -150_000]
		]);
		expect(steps.map((step) => [step.from, step.to])).toEqual([
			[500_000, 700_000],
			[700_000, 550_000]
		]);
		expect(to.value).toBe(550_000);
		expect(still).toEqual(['Rent']);
	});

	it('says what the parts leave unexplained', () => {
		const odd = opened({ ...written, weekends: result(1_200_000, 450_000, 540_000) });
		const { steps } = bridgeOf(odd, picture, 'base', 'weekends');
		expect(steps.at(-1)).toMatchObject({ label: 'Everything else', move: -10_000, to: 540_000 });
	});

	it('says in its title by how much, and what moves it most', () => {
		const bridge = bridgeOf(open, picture, 'base', 'weekends');
		expect(bridgeTitle(bridge, open, 'base', 'weekends')).toBe(
			'EBIT is 50 kEUR/year higher in Weekends than in Base, most by revenue'
		);
		const back = bridgeOf(open, picture, 'weekends', 'base');
		expect(bridgeTitle(back, open, 'weekends', 'base')).toContain('50 kEUR/year lower in Base');
		const none = bridgeOf(open, picture, 'base', 'base');
		expect(bridgeTitle(none, open, 'base', 'base')).toBe('EBIT is the same in Base and Base');
	});

	it('names as its reason what goes the same way, however much goes the other', () => {
		const bridge = bridgeOf(open, picture, 'base', 'weekends');
		const against = { ...bridge.steps[0]!, label: 'Wages', move: -9_000_000 };
		const title = bridgeTitle(
			{ ...bridge, steps: [against, ...bridge.steps] },
			open,
			'base',
			'weekends'
		);
		expect(title).toMatch(/higher in Weekends than in Base, most by revenue$/);
	});

	it('is not drawn where a part has no value', () => {
		const broken = opened({
			...written,
			weekends: { ...written.weekends, labour: { state: NOT_ENTERED } }
		});
		const bridge = bridgeOf(broken, picture, 'base', 'weekends');
		expect(bridge.missing?.kind).toBe('not-entered');
		expect(bridge.steps).toEqual([]);
		expect(bridgeTitle(bridge, broken, 'base', 'weekends')).toBe('EBIT cannot be compared yet');
	});

	it('has room for every level', () => {
		const { low, high } = bridgeRange(bridgeOf(open, picture, 'base', 'weekends'));
		expect(low).toBeLessThan(500_000);
		expect(high).toBeGreaterThan(700_000);
		const flat = bridgeRange(bridgeOf(open, picture, 'base', 'base'));
		expect(flat.high).toBeGreaterThan(flat.low);
	});
});

it('the summary and the table hold every step', () => {
	const bridge = bridgeOf(open, picture, 'base', 'weekends');
	expect(bridgeSummary(bridge, open, 'base', 'weekends')).toBe(
		'EBIT, kEUR/year: Base 500, Revenue +200, Shift labour −150, Weekends 550. Unchanged: Rent.'
	);
	expect(bridgeTable(bridge, open, 'base', 'weekends').rows).toEqual([
		['Base', 500_000],
		['Revenue', 200_000],
		['Shift labour', -150_000],
		['Weekends', 550_000]
	]);
});
