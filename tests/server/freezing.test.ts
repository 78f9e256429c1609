/**
 * No request keeps the others waiting, whatever workbook it brings: while hostile ones are sent, the process that
 * serves stays free. How free is counted against a piece of work of known size, so that a busy machine changes nothing.
 */
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import * as load from '$lib/workbook/load';
import { Documents, NotDoneError } from '$lib/server/documents/documents';
import { saveWorkbook } from '$lib/workbook/save';
import { plant } from '../workbook/plant';
import { Client, startServer, type Server } from './api';
import { HOSTILE } from './hostile';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Milliseconds for a loop that takes 100 ms on a quiet machine of about 3 GHz. */
function hundred(): number {
	const started = performance.now();
	let x = 1;
	for (let i = 0; i < 75_000_000; i++) x = (Math.imul(x, 1664525) + 1013904223) | 0;
	if (x === 0.5) throw new Error('not reached');
	return performance.now() - started;
}

/** The longest that the process was kept from its other work, in milliseconds. */
async function longestStop(work: () => Promise<unknown>): Promise<number> {
	const delay = monitorEventLoopDelay({ resolution: 5 });
	delay.enable();
	await new Promise((resolve) => setTimeout(resolve, 20));
	await work();
	await new Promise((resolve) => setTimeout(resolve, 20));
	delay.disable();
	return delay.max / 1e6;
}

describe('A hostile workbook', () => {
	const folder = mkdtempSync(join(tmpdir(), 'metrewright-'));
	let server: Server;
	let client: Client;
	beforeAll(async () => {
		server = await startServer({ folder });
		client = new Client(server);
		// Threads are there, and what is compiled on first use is.
		await Promise.all([1, 2, 3, 4].map(() => send(saveWorkbook(plant))));
	});
	afterAll(async () => {
		await server.stop();
		rmSync(folder, { recursive: true });
	});
	const send = (text: string) => client.ask('POST', '/api/v1/workbooks', { text });

	it.each(Object.entries(HOSTILE))('with %s stops nobody else', async (_name, make) => {
		const text = make();
		const stops: number[] = [];
		const unit: number[] = [];
		// Another process may take the processor meanwhile, and never ten times at the worst moment.
		for (let i = 0; i < 10; i++) {
			unit.push(hundred());
			stops.push(
				await longestStop(async () => {
					const answer = await send(text);
					expect([201, 422]).toContain(answer.status);
				})
			);
			if (Math.min(...stops) < Math.min(...unit)) break;
		}
		expect(Math.min(...stops)).toBeLessThan(Math.min(...unit));
	});

	it('is read in a thread: the process that serves parses and compares none', async () => {
		const read = vi.spyOn(load, 'loadWorkbook');
		const begun = await send(saveWorkbook(plant));
		const { id } = (await begun.json()) as { id: string };
		const changed = saveWorkbook({ ...plant, title: 'Another' });
		const saved = await client.ask('PUT', `/api/v1/workbooks/${id}`, {
			text: changed,
			headers: { 'if-match': '"1"' }
		});
		expect(saved.status).toBe(200);
		await client.json('GET', `/api/v1/workbooks/${id}/compare?from=1&to=2`);
		expect(read).not.toHaveBeenCalled();
		read.mockRestore();
	});
});

describe('Reading a workbook', () => {
	it('that takes longer than it may is stopped and says so, and the next is read', async () => {
		const limits = { threads: 1, seconds: 0.001, megabytes: 256, waiting: 1 };
		const documents = new Documents(limits);
		const stopped = await documents.begin(saveWorkbook(plant)).catch((error: unknown) => error);
		expect(stopped).toBeInstanceOf(NotDoneError);
		expect(stopped).toMatchObject({ why: 'time' });
		limits.seconds = 60;
		expect((await documents.begin(saveWorkbook(plant))).kind).toBe('prepared');
		const many = await Promise.allSettled([1, 2, 3].map(() => documents.begin('{}')));
		expect(many.map(({ status }) => status)).toEqual(['fulfilled', 'fulfilled', 'rejected']);
		await documents.close();
	});
});
