/** Studies on the command line: the list, the answers as JSON and as a table, what is refused. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { answer } from '../../src/cli/answer';
import { VERSION } from '$lib/workbook/schema';

const folder = mkdtempSync(join(tmpdir(), 'metrewright-'));
afterAll(() => rmSync(folder, { recursive: true }));

const studies = [
	{
		name: 'why',
		title: 'Why the revenue differs',
		kind: 'bridge',
		quantity: 'revenue',
		from: 'base',
		to: 'dear'
	},
	{
		name: 'best',
		title: 'The best price',
		kind: 'optimise',
		quantity: 'revenue',
		scenario: 'base',
		direction: 'highest',
		options: [
			{
				label: 'Price',
				alternatives: [
					{ label: 'as it is', changes: [] },
					{ label: '13', changes: [{ quantity: 'price', value: 13 }] }
				]
			}
		]
	},
	{
		name: 'lost',
		title: 'Of a quantity that is gone',
		kind: 'bridge',
		quantity: 'gone',
		from: 'base',
		to: 'dear'
	}
];
const path = join(folder, 'small.json');
writeFileSync(
	path,
	JSON.stringify({
		format: 'metrewright',
		version: VERSION,
		title: 'Small',
		sets: [],
		sheets: [
			{
				title: 'Only',
				quantities: [
					{ name: 'price', label: 'Price', unit: 'EUR/m', value: 10 },
					{ name: 'metres', label: 'Metres', unit: 'm', value: 100 },
					{ name: 'revenue', label: 'Revenue', unit: 'EUR', formula: 'price * metres' }
				]
			}
		],
		scenarios: [
			{ id: 'base', title: 'Base', parent: null, changes: [] },
			{
				id: 'dear',
				title: 'Dear',
				parent: 'base',
				changes: [
					{ quantity: 'price', value: 12 },
					{ quantity: 'metres', value: 90 }
				]
			}
		],
		studies
	})
);
const run = (...args: string[]) => answer(['study', path, ...args]);

describe('study', () => {
	it('lists the studies with their kinds', async () => {
		const { out, code } = await run('--json');
		expect(code).toBe(0);
		expect(JSON.parse(out)).toEqual([
			{ name: 'why', kind: 'bridge' },
			{ name: 'best', kind: 'optimise' },
			{ name: 'lost', kind: 'bridge' }
		]);
		expect((await run()).out).toContain(
			'  why   bridge    Why the revenue differs     never run\n'
		);
	});

	it('prints a bridge as one JSON object whose parts add up', async () => {
		const { out, code } = await run('why', '--json');
		expect(code).toBe(0);
		// 2 × (100 + 90) / 2 and −10 × (10 + 12) / 2.
		expect(JSON.parse(out)).toEqual({
			kind: 'bridge',
			title: 'Why the revenue differs',
			quantity: 'revenue',
			members: [],
			label: 'Revenue',
			unit: 'EUR',
			from: 'base',
			to: 'dear',
			from_title: 'Base',
			to_title: 'Dear',
			at_from: 1000,
			at_to: 1080,
			total: 80,
			parts: [
				{ label: 'Price', value: 190, standard_error: null },
				{ label: 'Metres', value: -110, standard_error: null }
			],
			nothing_differs: []
		});
	});

	it('prints a bridge as a table from one scenario to the other', async () => {
		expect((await run('why')).out).toBe(
			[
				'Why the revenue differs',
				'Revenue, from Base to Dear: 80 EUR',
				'  Base    1000',
				'  Price    190',
				'  Metres  -110',
				'  Dear    1080',
				''
			].join('\n')
		);
	});

	it('prints the best combination and the runners-up', async () => {
		expect(JSON.parse((await run('best', '--json')).out)).toEqual({
			kind: 'optimise',
			title: 'The best price',
			quantity: 'revenue',
			members: [],
			label: 'Revenue',
			unit: 'EUR',
			direction: 'highest',
			as_it_is: 1000,
			combinations: 2,
			beyond_limits: 0,
			without_answer: 0,
			ranked: [
				{ value: 1300, choice: [{ option: 'Price', alternative: '13' }] },
				{ value: 1000, choice: [{ option: 'Price', alternative: 'as it is' }] }
			]
		});
		expect((await run('best')).out).toContain(
			'Highest: 1300 EUR; as it is: 1000 EUR\n2 combinations\n'
		);
	});

	it('says why a study has no answer, and ends with 1', async () => {
		expect(await run('lost')).toEqual({
			out: '',
			err: 'Of a quantity that is gone: There is no quantity gone any more. Choose another, or bring it back.',
			code: 1
		});
	});

	it.each([
		[['hwy'], `${path}: there is no study "hwy"; did you mean why?`],
		[
			['best', '--draws', '5'],
			'best draws nothing: --draws and --seed are for studies of risk, and for bridges of many changes.'
		],
		[['why', '--draws', '0'], '--draws takes a whole number from 1 to 1000000, not "0".'],
		[['why', '--seed', 'x'], '--seed takes a whole number from 0 to 4294967295, not "x".'],
		[
			['why', 'best'],
			'study takes one workbook file and the name of a study: metrewright study FILE [NAME].'
		]
	])('refuses %j with 2', async (args, err) => {
		expect(await run(...args)).toEqual({ out: '', err, code: 2 });
	});
});
