import { describe, expect, it } from 'vitest';
import { offsetsOf, piecesOf, rowAt } from '$lib/ui/grid/window';

const offsets = offsetsOf([40, 28, 28, 28, 28, 28]); // 0 40 68 96 124 152 180

describe('rows in the window', () => {
	it('are found by their height', () => {
		expect(rowAt(offsets, 0)).toBe(0);
		expect(rowAt(offsets, 40)).toBe(1);
		expect(rowAt(offsets, 95)).toBe(2);
		expect(rowAt(offsets, 9999)).toBe(5);
	});
	it('leave gaps as high as what is not drawn', () => {
		expect(piecesOf(offsets, 2, 4, null)).toEqual([
			{ kind: 'gap', key: 'gap 0', height: 68 },
			{ kind: 'row', index: 2 },
			{ kind: 'row', index: 3 },
			{ kind: 'gap', key: 'gap 3', height: 56 }
		]);
	});
	it('keep the row that has the focus, wherever it is', () => {
		expect(piecesOf(offsets, 4, 6, 1).filter((piece) => piece.kind === 'row')).toEqual([
			{ kind: 'row', index: 1 },
			{ kind: 'row', index: 4 },
			{ kind: 'row', index: 5 }
		]);
		const heights = piecesOf(offsets, 0, 2, 4).map((piece) =>
			piece.kind === 'gap' ? piece.height : 0
		);
		expect(heights.reduce((a, b) => a + b)).toBe(56 + 28); // rows 2, 3 and 5
	});
});
