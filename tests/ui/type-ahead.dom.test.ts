import { describe, expect, it } from 'vitest';
import { neighbourOf } from '$lib/ui/focus';
import { choiceBeginning, typeOn } from '$lib/ui/type-ahead';

const patterns = [
	{ id: '5x24', label: 'Five days' },
	{ id: '6x16', label: 'Six days, two shifts' },
	{ id: '6x24', label: 'Six days' },
	{ id: 'five', label: '' }
];

describe('typing on a choice', () => {
	it('finds the first id that begins so, in any case', () => {
		expect(choiceBeginning('6', patterns)).toBe('6x16');
		expect(choiceBeginning('6X2', patterns)).toBe('6x24');
	});

	it('finds by label where no id begins so', () => {
		expect(choiceBeginning('six', patterns)).toBe('6x16');
		expect(choiceBeginning('five', patterns)).toBe('five');
		expect(choiceBeginning('five d', patterns)).toBe('5x24');
	});

	it('finds nothing for what begins no choice', () => {
		expect(choiceBeginning('8', patterns)).toBeNull();
		expect(choiceBeginning('x24', patterns)).toBeNull();
		expect(choiceBeginning(' ', patterns)).toBeNull();
	});

	it('joins letters within a second, and begins anew after a pause', () => {
		const first = typeOn(null, '6', 100);
		const second = typeOn(first, 'x', 1100);
		expect(second).toEqual({ text: '6x', at: 1100 });
		expect(typeOn(second, '5', 2101)).toEqual({ text: '5', at: 2101 });
	});
});

describe('the neighbour that takes the place of one removed', () => {
	it('is the next, the one before for the last, none for the only one', () => {
		expect(neighbourOf(['a', 'b', 'c'], 'b')).toBe('c');
		expect(neighbourOf(['a', 'b', 'c'], 'c')).toBe('b');
		expect(neighbourOf(['a'], 'a')).toBeNull();
		expect(neighbourOf(['a'], 'z')).toBeNull();
	});
});
