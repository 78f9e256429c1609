import { describe, expect, it } from 'vitest';
import { pairKey } from '$lib/workbook/axes';
import { marksText, readMarks } from '$lib/ui/members/mark-block';

const rows = ['PX15B', 'PX22B', 'PX28B'];
const columns = ['L1', 'L2'];
const pairs = new Set([pairKey(['PX15B', 'L1']), pairKey(['PX22B', 'L2'])]);
const corner = { rows, columns, pairs };

describe('a block of marks', () => {
	it('makes the pairs that it marks and takes those that it leaves empty, and names none that stay', () => {
		const block = [
			['x', 'YES'],
			['', '0']
		];
		expect(readMarks(block, corner)).toEqual({
			ok: true,
			marks: [
				{ pair: ['PX15B', 'L2'], exists: true },
				{ pair: ['PX22B', 'L2'], exists: false }
			]
		});
	});

	it('is read back as it was taken along', () => {
		const text = marksText(rows, columns, pairs);
		expect(text).toBe('x\t\n\tx\n\t');
		const block = text.split('\n').map((line) => line.split('\t'));
		expect(readMarks(block, corner)).toEqual({ ok: true, marks: [] });
	});

	it('enters nothing where one cell is no mark, and says which pair it stands at', () => {
		const read = readMarks([['x'], ['perhaps']], corner);
		expect(read).toMatchObject({ ok: false });
		expect(!read.ok && read.message).toMatch(/^“perhaps” for PX22B with L1 is no mark: write x/);
	});

	it.each([
		[[['x'], ['x'], ['x'], ['x']], /4 lines and 1 column; .+ 3 lines and 2 columns/],
		[[['x', 'x', 'x']], /1 line and 3 columns/]
	])('enters nothing where it is larger than the table', (block, said) => {
		const read = readMarks(block, corner);
		expect(!read.ok && read.message).toMatch(said);
	});
});
