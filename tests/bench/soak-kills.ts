/**
 * Saves one after the other while the server is killed at random moments, in the middle of saves too. What it
 * acknowledged must be there when it is started again.
 */
import { setTimeout as sleep } from 'node:timers/promises';
import { saveWorkbook } from '$lib/workbook/save';
import { openStore, type Where } from '$lib/server/store/open';
import { unpack } from '$lib/server/store/packing';
import { readDocument } from '$lib/server/store/revisions';
import { headOf } from '$lib/server/store/workbooks';
import { withPrices, pricesIn } from './soak-workbook';
import { startProcess } from './api-process';

export interface KillFigures {
	readonly acknowledged: number;
	readonly found: number;
	readonly lost: number;
	readonly kills: number;
	/** Saves whose answer was cut off, and that turned out to have been written. */
	readonly unanswered: number;
}

export async function soakKills(where: Where, saves: number, every: number): Promise<KillFigures> {
	const acknowledged = new Map<number, number>();
	let kills = 0;
	let unanswered = 0;
	let server = await startProcess(where);
	const first = await server.ask('POST', '/api/v1/workbooks', saveWorkbook(withPrices([0])));
	const { id } = (await first.json()) as { id: string };
	const path = `/api/v1/workbooks/${id}`;
	let revision = 1;
	const soon = () => 1 + Math.floor(Math.random() * 2 * every);
	let left = soon();
	for (let price = 1; acknowledged.size < saves; price++) {
		const willDie = --left === 0;
		if (willDie) left = soon();
		const dying = willDie ? sleep(Math.random() * 30).then(() => server.kill()) : null;
		try {
			const answer = await server.ask('PUT', path, saveWorkbook(withPrices([price])), {
				'if-match': `"${revision}"`
			});
			const saved = (await answer.json()) as { revision: number };
			if (answer.status !== 200) throw new Error(`The server answered ${answer.status}.`);
			revision = saved.revision;
			acknowledged.set(revision, price);
		} catch (error) {
			if (!dying) throw error;
		}
		if (!dying) continue;
		await dying;
		kills++;
		server = await startProcess(where);
		const now = await server.ask('GET', path);
		await now.body?.cancel();
		const head = Number(now.headers.get('etag')?.replaceAll('"', ''));
		if (head > revision) unanswered++;
		revision = head;
	}
	await server.kill();
	const store = await openStore(where, Date.now());
	let found = 0;
	for (const [number, price] of acknowledged) {
		const packed = await readDocument(store.db, id, number);
		if (packed !== null && pricesIn(unpack(packed))[0] === price) found++;
	}
	const head = await headOf(store.db, id);
	await store.close();
	const lost = acknowledged.size - found + (head !== null && head >= revision ? 0 : 1);
	return { acknowledged: acknowledged.size, found, lost, kills, unanswered };
}
