/** Evaluations that run away: stopped, while the next one is answered. */
import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { answerOf } from '$lib/server/evaluation/answer';
import { Pool } from '$lib/server/evaluation/pool';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { withPrices } from '../bench/soak-workbook';

const shop = readFileSync('scenarios/one-line-shop.json', 'utf8');

describe('an evaluation', () => {
	const limits = { threads: 1, seconds: 60, megabytes: 256, waiting: 8 };
	const pool = new Pool(limits);
	afterAll(() => pool.close());

	it('that takes too long is stopped, and the next one is answered by a new thread', async () => {
		limits.seconds = 0.001;
		const slow = await pool.evaluate({ key: 'a', text: shop });
		expect(slow).toEqual({ kind: 'stopped', why: 'time' });
		limits.seconds = 60;
		const next = await pool.evaluate({ key: 'a', text: shop, quantities: ['shifts'] });
		expect(next.kind).toBe('done');
		const again = await pool.evaluate({ key: 'a', text: shop, quantities: ['nothing'] });
		expect(again).toEqual({ kind: 'unknown', what: 'quantity', name: 'nothing' });
	});

	it('waits its turn, and is sent away where too many wait', async () => {
		const asks = Array.from({ length: 12 }, () =>
			pool.evaluate({ key: 'a', text: shop, quantities: ['shifts'] })
		);
		const kinds = (await Promise.all(asks)).map(({ kind }) => kind);
		expect(kinds.filter((kind) => kind === 'done')).toHaveLength(9);
		expect(kinds.filter((kind) => kind === 'busy')).toHaveLength(3);
	});

	it('of more values than the memory holds is not begun', async () => {
		const members = Array.from({ length: 300 }, (_, i) => ({ id: `m${i}` }));
		const names = ['a', 'b', 'c', 'd'];
		const wide: Workbook = {
			...withPrices([]),
			sets: names.map((name) => ({ name, label: name, members })),
			sheets: [{ title: 'Wide', quantities: [{ name: 'x', label: 'X', per: names, formula: '1' }] }]
		};
		const ask = { key: 'wide', text: saveWorkbook(wide), megabytes: 256, seconds: 60 };
		expect(await answerOf(ask)).toEqual({
			kind: 'too_large',
			cells: 300 ** 4
		});
	});

	it('tells of open values without reasons, whatever members are called', async () => {
		const names = ['reason', 'from', '__proto__'];
		const workbook: Workbook = {
			...withPrices([]),
			sets: [{ name: 'part', label: 'Part', members: names.map((id) => ({ id })) }],
			sheets: [
				{
					title: 'Only',
					quantities: [
						{ name: 'secret', label: 'Secret', per: ['part'], value: { reason: 2, from: 0 } },
						{
							name: 'shown',
							label: 'Shown',
							per: ['part'],
							formula: '1 / secret',
							open: true,
							note: 'from the secret'
						}
					]
				}
			]
		};
		const answered = await answerOf({
			seconds: 60,
			key: 'open',
			text: saveWorkbook(workbook),
			openOnly: true,
			megabytes: 256
		});
		if (answered.kind !== 'done') throw new Error(answered.kind);
		expect(answered.json).not.toContain('secret');
		expect(answered.json).not.toContain('Secret');
		const { quantities } = JSON.parse(answered.json) as { quantities: { values: object }[] };
		expect(quantities).toHaveLength(1);
		const { values } = quantities[0]!;
		expect(Object.entries(values)).toEqual([
			['reason', 0.5],
			['from', { error: expect.any(String) }],
			['__proto__', { error: expect.any(String) }]
		]);
	});
});
