/** The command line as a script meets it: its JSON, its exit codes, its one line for a file it cannot read. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { answer } from '../../src/cli/answer';
import { VERSION } from '$lib/workbook/schema';

const SHOP = 'scenarios/one-line-shop.json';
const folder = mkdtempSync(join(tmpdir(), 'metrewright-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, content: unknown): string {
	const path = join(folder, name);
	writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
	return path;
}

const workbook = (quantities: object[]) => ({
	format: 'metrewright',
	version: VERSION,
	title: 'Small',
	sets: [{ name: 'pipe', label: 'Pipe', members: [{ id: 'A' }, { id: 'constructor' }] }],
	sheets: [{ title: 'Only', quantities }],
	scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }]
});

async function evaluated(path: string, ...args: string[]) {
	const { out, code } = await answer(['evaluate', path, '--json', ...args]);
	expect(code).toBe(0);
	return JSON.parse(out);
}

describe('evaluate', () => {
	it('prints the chosen quantities of the chosen scenarios as one JSON object', async () => {
		const all = await evaluated(SHOP, '--scenario', 'second_shift', '--quantity', 'shifts');
		expect(all).toEqual({
			workbook: 'One-line shop',
			scenarios: [
				{
					id: 'second_shift',
					quantities: { shifts: { unit: 'shift/day', per: [], value: 2 } }
				}
			]
		});
	});

	it('takes dates from the file as text, and prints them so', async () => {
		const path = file(
			'dates.json',
			workbook([
				{ name: 'start', label: 'Start', unit: 'day', shown: 'date', value: '2024-02-29' },
				{ name: 'next', label: 'Next', unit: 'day', shown: 'date', formula: 'start + 1[day]' }
			])
		);
		expect((await answer(['evaluate', path])).out).toContain(
			'  start: 2024-02-29\n  next: 2024-03-01\n'
		);
		// Days since 1899-12-30, as formulas see it.
		expect((await evaluated(path)).scenarios[0].quantities.next.value).toBe(45352);
	});

	it('nests values by member, a member called constructor included', async () => {
		const path = file(
			'nested.json',
			workbook([
				{
					name: 'length',
					label: 'Length',
					unit: 'm',
					per: ['pipe'],
					value: { A: 2, constructor: 3 }
				}
			])
		);
		expect((await evaluated(path)).scenarios[0].quantities.length).toEqual({
			unit: 'm',
			per: ['pipe'],
			values: { A: 2, constructor: 3 }
		});
	});

	it('says yes, no and members as what they are', async () => {
		const path = file(
			'kinds.json',
			workbook([
				{ name: 'long', label: 'Long', type: 'yes_no', value: true },
				{ name: 'best', label: 'Best', type: { member_of: 'pipe' }, value: 'A' }
			])
		);
		const { quantities } = (await evaluated(path)).scenarios[0];
		expect(quantities.long.value).toBe(true);
		expect(quantities.best.value).toEqual({ member: 'A' });
	});

	it('keeps nothing, errors and where they come from apart', async () => {
		const path = file(
			'bad.json',
			workbook([
				{ name: 'coil_length', label: 'Coil length', unit: 'm', value: 0 },
				{ name: 'price', label: 'Price', unit: 'EUR' },
				{ name: 'per_metre', label: 'Per metre', unit: 'EUR/m', formula: '5[EUR] / coil_length' },
				{ name: 'twice', label: 'Twice', unit: 'EUR/m', formula: '2 * per_metre' },
				{ name: 'double', label: 'Double', unit: 'EUR', formula: '2 * price' }
			])
		);
		const { quantities } = (await evaluated(path)).scenarios[0];
		expect(quantities.price.value).toMatchObject({ nothing: 'not-entered' });
		expect(quantities.per_metre.value).toMatchObject({ error: 'divides-by-zero' });
		expect(quantities.per_metre.value.reason).toContain('coil_length');
		expect(quantities.twice.value).toMatchObject({
			error: 'divides-by-zero',
			from: { quantity: 'per_metre', member: null }
		});
		expect(quantities.double.value).toMatchObject({
			error: 'uses-empty',
			from: { quantity: 'price', member: null }
		});
	});

	it('prints lines for people without --json', async () => {
		const { out } = await answer([
			'evaluate',
			SHOP,
			'--scenario',
			'base',
			'--quantity',
			'resin_price'
		]);
		expect(out).toBe('One-line shop\n\nscenario base\n  resin_price: 1.9 EUR/kg\n');
	});

	it('asks back about a scenario or quantity that is not there', async () => {
		const { err, code } = await answer(['evaluate', SHOP, '--quantity', 'resin_prize']);
		expect(code).toBe(2);
		expect(err).toBe(`${SHOP}: there is no quantity "resin_prize"; did you mean resin_price?`);
	});
});

describe('check', () => {
	it('proves the small shop and counts what it proved', async () => {
		const { out, code } = await answer(['check', SHOP, '--json']);
		const report = JSON.parse(out);
		expect(code).toBe(0);
		expect(report.quantities).toBe(83);
		expect(report.agreeing).toBe(report.values);
		// in both scenarios: the load of the line, what is made of each pipe, and the second ways, seven of them for each pipe
		expect(report.checks).toEqual({ hold: 2 * (1 + 2 + 14 + 7 * 2), fail: 0 });
		expect(report.problems).toEqual([]);
	});

	it('ends with 1 where a check, a value or a formula fails, and names each', async () => {
		const path = file(
			'failing.json',
			workbook([
				{ name: 'share', label: 'Share', unit: '%', value: 90 },
				{
					name: 'closes',
					label: 'Closes',
					type: 'yes_no',
					formula: 'share = 100 %',
					check: { message: 'The shares do not add to 100 %.' }
				},
				{ name: 'broken', label: 'Broken', unit: 'm', formula: 'share + 1[kg]' },
				{ name: 'divided', label: 'Divided', formula: '1 / (share - 90 %)' }
			])
		);
		const { out, code } = await answer(['check', path, '--json']);
		const { problems, checks } = JSON.parse(out);
		expect(code).toBe(1);
		expect(checks.fail).toBe(1);
		expect((await answer(['check', path])).out).toContain('2 of 3 formulas proven');
		const kinds = problems.map(
			({ kind, quantity }: Record<string, string>) => `${kind} ${quantity}`
		);
		expect(kinds).toContain('formula broken');
		expect(kinds).toContain('value divided');
		expect(kinds).toContain('check closes');
	});
});

describe('a file that cannot be read', () => {
	const bad: readonly [string, () => string, RegExp][] = [
		['is missing', () => join(folder, 'none.json'), /none\.json: there is no such file/],
		['is a folder', () => folder, /it is a folder/],
		[
			'is broken JSON',
			() => file('broken.json', '{"format": "metrewright",'),
			/broken\.json.*line 1/
		],
		[
			'is of a newer version',
			() => file('newer.json', { ...workbook([]), version: 99 }),
			/newer\.json.*newer version/
		],
		['holds NaN', () => file('nan.json', '{"format": NaN}'), /nan\.json.*NaN/],
		['is nested 10,000 deep', () => file('deep.json', '['.repeat(10_000)), /deep\.json/]
	];

	it.each(bad)('%s: exit 2 and one line that names it', async (_what, path, words) => {
		for (const command of ['evaluate', 'check']) {
			const { out, err, code } = await answer([command, path()]);
			expect(code).toBe(2);
			expect(out).toBe('');
			expect(err).toMatch(words);
			expect(err!.trim()).not.toContain('\n');
		}
	});
});

describe('the command words', () => {
	it('print the JSON Schema', async () => {
		const { out, code } = await answer(['schema']);
		expect(code).toBe(0);
		expect(JSON.parse(out).properties.format).toEqual({
			const: 'metrewright',
			type: 'string',
			description: 'Says that the file is a workbook.'
		});
	});

	it('refuse an unknown option by naming the known ones', async () => {
		const { err, code } = await answer(['evaluate', SHOP, '--quantities', 'ebit']);
		expect(code).toBe(2);
		expect(err).toBe(
			'--quantities is not known here. This command takes --scenario, --quantity, --json.'
		);
	});

	it('refuse an unknown command and show the known ones', async () => {
		const { err, code } = await answer(['compute']);
		expect(code).toBe(2);
		expect(err).toContain('There is no command "compute".');
		expect(err).toContain('metrewright evaluate FILE');
	});
});

describe('a file that lies deep', () => {
	it('is named by its whole path, and the place in it by the whole id', async () => {
		const deep = `${'a-folder-with-a-long-name-'.repeat(6)}plant.json`;
		const id = 'a member whose id is longer than what a sentence would show';
		const path = file(
			deep,
			workbook([
				{ name: 'length', label: 'Length', unit: 'm', per: ['pipe'], value: { A: 1, [id]: 2 } }
			])
		);
		const { err } = await answer(['evaluate', path]);
		expect(err).toContain(`"${path}"`);
		expect(err).toContain(`(sheets[0].quantities[0].value["${id}"])`);
	});
});
