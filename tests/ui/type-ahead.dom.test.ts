import { describe, expect, it } from 'vitest';
import { neighbourOf } from '$lib/ui/focus';
import { choicesBeginning, typeOn } from '$lib/ui/type-ahead';

const patterns = [
	{ id: '5x24', label: 'Five days' },
	{ id: '6x16', label: 'Six days, two shifts' },
	{ id: '6x24', label: 'Six days' },
	{ id: 'five', label: '' }
];

describe('typing on a choice', () => {
	const found = (text: string) => choicesBeginning(text, patterns).map(({ id }) => id);

	it('finds the ids that begin so, in any case', () => {
		expect(found('6')).toEqual(['6x16', '6x24']);
		expect(found('6X2')).toEqual(['6x24']);
	});

	it('finds by label where no id begins so', () => {
		expect(found('six')).toEqual(['6x16', '6x24']);
		expect(found('five')).toEqual(['five']);
		expect(found('five d')).toEqual(['5x24']);
	});

	it('takes what is written in full alone, though more begins so', () => {
		const choices = [
			{ id: '2x8x5', label: '' },
			{ id: '2x8', label: '' }
		];
		expect(choicesBeginning('2x8', choices)).toEqual([choices[1]]);
		expect(found('six days')).toEqual(['6x24']);
	});

	it('finds nothing for what begins no choice', () => {
		expect(found('8')).toEqual([]);
		expect(found('x24')).toEqual([]);
		expect(found(' ')).toEqual([]);
	});

	it('joins letters however slowly they come, and Backspace takes the last', () => {
		expect(typeOn('', '6')).toBe('6');
		expect(typeOn('6', 'x')).toBe('6x');
		expect(typeOn('five', ' ')).toBe('five ');
		expect(typeOn('', ' ')).toBeNull();
		expect(typeOn('6x', 'Backspace')).toBe('6');
		expect(typeOn('', 'Backspace')).toBeNull();
		expect(typeOn('6', 'Enter')).toBeNull();
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
