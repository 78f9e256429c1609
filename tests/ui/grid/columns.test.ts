import { describe, expect, it } from 'vitest';
import { firstToShow, roomFor, windowOf } from '$lib/ui/grid/columns';

const beside = ['a', 'b', 'c', 'd'];

describe('scenarios beside the base', () => {
	it('have room as the window is wide, and one has room in any', () => {
		// (1128 − 434) ÷ 226 = 3.07
		expect(roomFor(1128, 434, 226)).toBe(3);
		expect(roomFor(656, 442, 200)).toBe(1);
		expect(roomFor(300, 442, 200)).toBe(1);
	});
	it('stand all where all have room', () => {
		expect(windowOf(beside, 4, 0)).toEqual({ shown: beside, before: 0, after: 0 });
		expect(windowOf([], 3, 2)).toEqual({ shown: [], before: 0, after: 0 });
	});
	it('stand from the first that is asked for, and leave no room empty', () => {
		expect(windowOf(beside, 2, 1)).toEqual({ shown: ['b', 'c'], before: 1, after: 1 });
		expect(windowOf(beside, 3, 9)).toEqual({ shown: ['b', 'c', 'd'], before: 1, after: 0 });
	});
	it('come in where one of them is gone to', () => {
		expect(firstToShow(3, 2, 0)).toBe(2);
		expect(firstToShow(0, 2, 2)).toBe(0);
		expect(firstToShow(1, 2, 1)).toBe(1);
		expect(firstToShow(-1, 2, 1)).toBe(1);
	});
});
