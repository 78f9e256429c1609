/** The commands by which an author finds where slips would pass: `review`, `ranges`, `check --faults`. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { answer } from '../../src/cli/answer';

const SHOP = 'scenarios/one-line-shop.json';
const folder = mkdtempSync(join(tmpdir(), 'metrewright-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('review', () => {
	it('lists what to look over, by kind, with why and what to do', async () => {
		const { out, code } = await answer(['review', SHOP]);
		expect(code).toBe(0);
		expect(out).toMatch(/\d+ lines to review, 0 ticked off/);
		expect(out).toContain('Numbers standing in formulas');
		expect(out).toContain('wall_set_point: 3 stands in the formula');
	});

	it('says the same as JSON, and check counts the lines', async () => {
		const lines = JSON.parse((await answer(['review', SHOP, '--json'])).out);
		expect(lines).toContainEqual({
			...{ id: 'literal wall_set_point', kind: 'literal', quantity: 'wall_set_point' },
			...{ members: [], scenario: null, what: '3 stands in the formula' },
			...{ ticked: null, changed_since: false }
		});
		const { out } = await answer(['check', SHOP, '--json']);
		expect(JSON.parse(out)).toMatchObject({ to_review: lines.length, problems: [] });
	});
});

describe('review of a workbook begun from a shipped one', () => {
	const own = join(folder, 'own.json');

	it('lists the entries that still stand, or says what it needs for that', async () => {
		const { invented: _invented, ...shop } = JSON.parse(readFileSync(SHOP, 'utf8'));
		writeFileSync(own, JSON.stringify(shop));
		const bare = await answer(['review', own]);
		expect(bare.out).toContain('--template FILE');
		const { out } = await answer(['review', own, '--template', SHOP]);
		expect(out).toContain('Entries as in the workbook that this one was begun from');
		expect(out).toContain('resin_price: its value as in One-line shop');
		expect(out).not.toContain('--template FILE');
		const missing = await answer(['review', own, '--template', join(folder, 'none.json')]);
		expect(missing).toMatchObject({ code: 2, err: expect.stringContaining('none.json') });
	});
});

describe('ranges', () => {
	const bare = join(folder, 'bare.json');

	it('writes a copy with the chosen ones, which it then suggests no more', async () => {
		const shop = JSON.parse(readFileSync(SHOP, 'utf8'));
		for (const { quantities } of shop.sheets) for (const one of quantities) delete one.usual;
		writeFileSync(bare, JSON.stringify(shop));
		const names = async (path: string) =>
			JSON.parse((await answer(['ranges', path, '--json'])).out).map(
				({ quantity }: { quantity: string }) => quantity
			);
		expect(await names(bare)).toContain('resin_price');
		const copy = join(folder, 'copy.json');
		const words = ['ranges', bare, '--quantity', 'resin_price', '--accept', copy];
		const { out, code } = await answer(words);
		expect([code, out]).toEqual([0, expect.stringContaining('1 usual range accepted')]);
		expect(await names(copy)).not.toContain('resin_price');
		expect(await names(copy)).toContain('scrap');
	});

	it('names a quantity that it has nothing to suggest for', async () => {
		const { err, code } = await answer(['ranges', SHOP, '--quantity', 'nothing']);
		expect([code, err]).toEqual([2, expect.stringContaining('"nothing"')]);
	});
});

describe('check --faults', () => {
	it('tells by class and by sheet what meets a person, and what would pass', async () => {
		const { out, code } = await answer(['check', '--faults', '24', '--seed', '3', SHOP]);
		expect(code).toBe(0);
		expect(out).toContain('24 faults, seed 3');
		expect(out).toMatch(/unit slip in an entry +2 /);
		expect(out).toContain('By sheet:');
		expect(out).toMatch(/\d+ of 5 edits that are meant raise an alarm/);
	});

	it.each([
		[['check', '--faults', 'many', SHOP], /--faults takes a whole number/],
		[['check', '--seed', '3', SHOP], /--seed goes with --faults/]
	])('refuses %j', async (words, message) => {
		const { err, code } = await answer(words);
		expect([code, err]).toEqual([2, expect.stringMatching(message)]);
	});
});
