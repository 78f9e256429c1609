/** The desk that holds a file away from the page: heads and samples go out, rows stay. */
import { describe, expect, it } from 'vitest';
import { TableDesk } from '$lib/exchange/table/desk';
import { NO_CHOICES, unknownKey, type MemberChoices } from '$lib/exchange/table/new-members';
import { openShipped } from '../../reference/shipped';

const { workbook } = openShipped('shop');
const bytes = (text: string) => new TextEncoder().encode(text);

describe('a table on the desk', () => {
	it('is told by heads, samples and signs, then by what it would change', async () => {
		const desk = new TableDesk();
		const held = await desk.read(bytes('Product;Coil length;x\nR16;;a\nR20;62,5;b\n'), 'f.csv');
		expect(held).toEqual({
			ok: true,
			sheets: [
				{
					name: '',
					message: null,
					head: ['Product', 'Coil length', 'x'],
					rows: 2,
					samples: [['R16', 'R20'], ['62,5'], ['a', 'b']],
					signs: [
						{ sign: ',', own: false, seen: false },
						{ sign: ',', own: true, seen: true },
						{ sign: ',', own: false, seen: false }
					],
					openDates: [false, false, false],
					remarks: []
				}
			]
		});
		const mapping = desk.propose(0, workbook);
		const looked = desk.look(0, mapping, NO_CHOICES, workbook);
		if (!looked.ok) throw new Error(looked.message);
		expect(looked.look.changes.map(({ at, before, after }) => [at[0], before, after])).toEqual([
			['R20', 50, 62.5]
		]);
	});

	it('says how far it is, and of a long list of faults the first', async () => {
		const desk = new TableDesk();
		const rows = Array.from({ length: 20_000 }, (_, i) => `X${i},5`);
		const told: number[] = [];
		await desk.read(bytes(`product,scrap\n${rows.join('\n')}\n`), 'f.csv', (share) =>
			told.push(share)
		);
		expect(told.length).toBeGreaterThan(2);
		expect([...told].sort((a, b) => a - b)).toEqual(told);
		const looked = desk.look(0, desk.propose(0, workbook), NO_CHOICES, workbook, (share) =>
			told.push(share)
		);
		expect(told.length).toBeGreaterThan(5);
		expect(Math.max(...told)).toBeLessThanOrEqual(1);
		if (!looked.ok) throw new Error(looked.message);
		expect([looked.look.problems.length, looked.look.refused]).toEqual([500, 20_000]);
	});

	it('reads its rows once for what is decided of new names', async () => {
		const desk = new TableDesk();
		const rows = Array.from({ length: 12_000 }, (_, i) => `${i % 2 ? 'R20' : 'NEW1'},5`);
		await desk.read(bytes(`product,scrap\n${rows.join('\n')}\n`), 'f.csv');
		const mapping = desk.propose(0, workbook);
		const look = (unknown: MemberChoices['unknown']) => {
			let told = 0;
			const looked = desk.look(0, mapping, { ...NO_CHOICES, unknown }, workbook, () => told++);
			if (!looked.ok) throw new Error(looked.message);
			return { told, unknown: looked.look.unknown };
		};
		const first = look(new Map());
		expect(first.unknown).toMatchObject([{ text: 'NEW1', rows: 6000 }]);
		const decided = look(new Map([[unknownKey('product', 'NEW1'), { as: 'new', like: null }]]));
		expect(decided).toEqual(first);
		expect(first.told).toBe(2);
	});
});
