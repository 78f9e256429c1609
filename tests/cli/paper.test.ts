/** `metrewright paper`: lists papers, makes one as PDF, and says what is wrong with what it is asked. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { getDocumentProxy } from 'unpdf';
import { afterAll, describe, expect, it } from 'vitest';
import { answer } from '../../src/cli/answer';

const folder = mkdtempSync(join(tmpdir(), 'metrewright-'));
afterAll(() => rmSync(folder, { recursive: true }));
const SHOP = 'scenarios/one-line-shop.json';
const out = (name: string) => join(folder, name);

async function textOf(file: string): Promise<string> {
	const doc = await getDocumentProxy(new Uint8Array(readFileSync(file)));
	const pages: string[] = [];
	for (let i = 1; i <= doc.numPages; i++) {
		const { items } = await (await doc.getPage(i)).getTextContent();
		pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
	}
	return pages.join(' ').replace(/\s+/g, ' ');
}

describe('the command', () => {
	it('lists the papers of a workbook', async () => {
		const { out: said, code } = await answer(['paper', SHOP]);
		expect(code).toBe(0);
		expect(said).toContain('investment');
		expect(said).toContain('standard_cost');
	});

	it('makes one of the scenarios that have an investment, with its digits and what somebody says', async () => {
		const file = out('case.pdf');
		const { code, err } = await answer([
			...['paper', SHOP, 'investment', '--out', file, '--author', 'A. Person'],
			...['--open', 'The hall', '--date', '2027-03-31', '--format', 'letter']
		]);
		expect(err ?? '').toBe('');
		expect(code).toBe(0);
		const text = await textOf(file);
		const { out: values } = await answer([
			...['evaluate', SHOP, '--scenario', 'second_shift', '--quantity', 'payback', '--json']
		]);
		const payback = (
			JSON.parse(values) as { scenarios: { quantities: { payback: { value: number } } }[] }
		).scenarios[0]!.quantities.payback.value;
		expect(text).toContain(payback.toFixed(1));
		for (const words of ['Second shift', 'A. Person', 'The hall', 'March 31, 2027'])
			expect(text).toContain(words);
	});

	it('writes over nothing unless it is told to', async () => {
		const file = out('there.pdf');
		writeFileSync(file, 'mine');
		const refused = await answer(['paper', SHOP, 'standard_cost', '--out', file]);
		expect(refused).toMatchObject({ code: 2, err: expect.stringContaining('--force') as string });
		expect(readFileSync(file, 'utf8')).toBe('mine');
		expect((await answer(['paper', SHOP, 'standard_cost', '--out', file, '--force'])).code).toBe(0);
		expect(readFileSync(file, 'latin1').startsWith('%PDF-1.7')).toBe(true);
	});

	it.each([
		[['investement', '--out', 'x.pdf'], 'did you mean investment?'],
		[['investment'], '--out investment.pdf'],
		[['investment', '--out', 'x.pdf', '--scenario', 'secnd_shift'], 'did you mean second_shift?'],
		[['investment', '--out', 'x.pdf', '--format', 'a5'], '--format takes a4 or letter'],
		[['investment', '--out', 'x.pdf', '--date', '2027-13-01'], '--date takes a day'],
		[['investment', '--out', 'x.pdf', '--locale', 'english'], '--locale takes a language'],
		[['investment', '--out', 'no/such/folder/x.pdf'], 'cannot be written']
	])('refuses %j and says what to do', async (args, words) => {
		const { code, err } = await answer(['paper', SHOP, ...args]);
		expect(code).toBe(2);
		expect(err).toContain(words);
		expect(existsSync('x.pdf')).toBe(false);
	});

	it('says that a scenario without an investment is no case', async () => {
		const { code, err } = await answer([
			...['paper', SHOP, 'investment', '--scenario', 'base', '--out', out('none.pdf')]
		]);
		expect(code).toBe(1);
		expect(err).toContain('no investment');
	});
});
