/** `roll` as a script meets it. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { answer } from '../../src/cli/answer';
import { rollCommand } from '../../src/cli/roll';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import { VERSION, type Workbook } from '$lib/workbook/schema';

const folder = mkdtempSync(join(tmpdir(), 'metrewright-'));
afterAll(() => rmSync(folder, { recursive: true }));

const TODAY = new Date(2028, 0, 15);
const book = (closed: boolean): Workbook => ({
	...{ format: 'metrewright', version: VERSION, title: 'Months' },
	sets: [
		{
			...{ name: 'period', label: 'Dated month', time: 'month' },
			members: [
				{ id: '2027-11', label: 'November 2027', number: 10 },
				{ id: '2027-12', label: 'December 2027', number: 11 }
			]
		}
	],
	sheets: [
		{
			title: 'One',
			quantities: [
				{
					...{ name: 'closed', label: 'Closed', type: 'yes_no', per: ['period'] },
					value: { '2027-11': closed, '2027-12': false }
				},
				{
					...{ name: 'made', label: 'Made', unit: 'm', per: ['period'] },
					value: { '2027-11': 7, '2027-12': 8 }
				},
				{ name: 'twice', label: 'Twice', unit: 'm', per: ['period'], formula: '2 * made' }
			]
		}
	],
	scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }],
	pictures: [
		{ kind: 'months', title: 'Months', period: 'period', results: ['twice'], closed: 'closed' }
	]
});
function file(workbook: Workbook): string {
	const path = join(folder, 'months.json');
	writeFileSync(path, saveWorkbook(workbook));
	return path;
}

describe('roll', () => {
	it('says what would happen, and writes nothing', () => {
		const path = file(book(true));
		const before = readFileSync(path, 'utf8');
		const { out, code } = rollCommand([path], TODAY);
		expect(code).toBe(0);
		expect(out).toBe(
			[
				'November 2027 leaves as the frozen copy november_2027, with 3 quantities.',
				'2028-01 comes at the end. What steps in time said in November 2027 holds on.',
				'Nothing is written: say --out FILE to keep it.',
				''
			].join('\n')
		);
		expect(readFileSync(path, 'utf8')).toBe(before);
	});

	it('writes the workbook with the copy, dated, and the month at the end', () => {
		const out = join(folder, 'next.json');
		const { code } = rollCommand([file(book(true)), '--out', out, '--json'], TODAY);
		expect(code).toBe(0);
		const loaded = loadWorkbook(readFileSync(out, 'utf8'), out);
		if (!loaded.ok) throw new Error(loaded.problem.line);
		const { sets, frozen } = loaded.workbook;
		expect(sets[0]!.members.map(({ id }) => id)).toEqual(['2027-12', '2028-01']);
		expect(frozen).toMatchObject([
			{ id: 'november_2027', title: 'November 2027', of: 'Base', date: '2028-01-15' }
		]);
		expect(frozen![0]!.quantities.find(({ name }) => name === 'twice')?.value).toEqual({
			'2027-11': 14
		});
	});

	it('refuses what cannot roll, says why, and writes nothing', () => {
		const out = join(folder, 'never.json');
		const open = rollCommand([file(book(false)), '--out', out], TODAY);
		expect(open).toMatchObject({ code: 1, out: '' });
		expect(open.err).toContain('November 2027 is not closed.');
		expect(() => readFileSync(out)).toThrow();
		const none = { ...book(true), sets: [], sheets: [], pictures: [] };
		expect(rollCommand([file(none)], TODAY).err).toContain('has no list of dated months');
		const path = file(book(true));
		expect(rollCommand([path, '--set', 'week'], TODAY).err).toContain('There is period.');
		expect(rollCommand([path, '--date', '5/1/28'], TODAY).err).toContain('is no day');
		expect(rollCommand([path, '--month', 'x'], TODAY).err).toContain('--month is not known');
		expect(rollCommand([], TODAY)).toMatchObject({ code: 2 });
	});

	it('is a command of the command line', async () => {
		expect((await answer(['help'])).out).toContain('metrewright roll FILE');
		expect((await answer(['roll'])).err).toContain('roll takes one workbook file');
	});
});
