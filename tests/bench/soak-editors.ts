/**
 * Many people on one workbook at once over loopback: each changes a price of their own or one that all share, saves, takes
 * over what others did, and where asked lets their own stand. Every acknowledged change must be in the history.
 */
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { openStore, type Where } from '$lib/server/store/open';
import { valueHistory } from '$lib/server/store/revisions';
import { startProcess, type ApiProcess } from './api-process';
import { withPrices } from './soak-workbook';

export interface EditorFigures {
	readonly saves: number;
	readonly merges: number;
	readonly conflicts: number;
	readonly lost: number;
	/** Of the answer to a save, in milliseconds. */
	readonly p95: number;
}

/** Prices that everybody changes now and then. */
const SHARED = 5;

/** How long they go on: by the clock, or until so many saves are done, which a slow machine reaches as well. */
export type Until = { readonly seconds: number } | { readonly saves: number };

export async function soakEditors(
	where: Where,
	editors: number,
	until: Until,
	processes = 1
): Promise<EditorFigures> {
	const servers = await Promise.all(Array.from({ length: processes }, () => startProcess(where)));
	const [server] = servers as [ApiProcess, ...ApiProcess[]];
	const start = withPrices(Array.from({ length: editors + SHARED }, () => 1));
	const text = saveWorkbook(start);
	const { id } = (await (await server.ask('POST', '/api/v1/workbooks', text)).json()) as {
		id: string;
	};
	const tally = { saves: 0, merges: 0, conflicts: 0, times: [] as number[] };
	const acknowledged: { quantity: string; value: number }[] = [];
	let next = 1;
	const begun = Date.now();
	const goOn = () =>
		'saves' in until ? tally.saves < until.saves : Date.now() < begun + until.seconds * 1000;
	const edit = async (editor: number) => {
		let here: { workbook: Workbook; revision: number } = { workbook: start, revision: 1 };
		while (goOn()) {
			const shared = Math.random() < 0.1;
			const place = shared ? editors + Math.floor(Math.random() * SHARED) : editor;
			// Each value once, so that it can be found again.
			const value = ++next / 1000;
			here = await saveOne(servers[editor % processes]!, id, here, place, value, tally);
			acknowledged.push({ quantity: `price_${place}`, value });
		}
	};
	await Promise.all(Array.from({ length: editors }, (_, editor) => edit(editor)));
	for (const server of servers) await server.kill();
	const store = await openStore(where, Date.now());
	let lost = 0;
	for (let place = 0; place < editors + SHARED; place++) {
		const quantity = `price_${place}`;
		const story = await valueHistory(store.db, id, { quantity, limit: 1_000_000 });
		const found = new Set(story.map(({ now }) => Number(now)));
		for (const one of acknowledged) if (one.quantity === quantity && !found.has(one.value)) lost++;
	}
	await store.close();
	const times = tally.times.sort((a, b) => a - b);
	const { saves, merges, conflicts } = tally;
	return { saves, merges, conflicts, lost, p95: times[Math.floor(times.length * 0.95)] ?? NaN };
}

async function saveOne(
	server: ApiProcess,
	id: string,
	from: { workbook: Workbook; revision: number },
	place: number,
	value: number,
	tally: { saves: number; merges: number; conflicts: number; times: number[] }
): Promise<{ workbook: Workbook; revision: number }> {
	let here = from;
	for (;;) {
		const mine = withPrice(here.workbook, place, value);
		const began = performance.now();
		const answer = await server.ask('PUT', `/api/v1/workbooks/${id}`, saveWorkbook(mine), {
			'if-match': `"${here.revision}"`
		});
		const body = (await answer.json()) as {
			revision: number;
			merged?: boolean;
			workbook?: Workbook;
		};
		tally.times.push(performance.now() - began);
		if (answer.status === 412 && body.workbook) {
			tally.conflicts++;
			here = { workbook: body.workbook, revision: body.revision };
			continue;
		}
		if (answer.status === 503) continue;
		if (answer.status !== 200) throw new Error(`The server answered ${answer.status}.`);
		tally.saves++;
		if (body.merged) tally.merges++;
		return { workbook: body.workbook ?? mine, revision: body.revision };
	}
}

const withPrice = (workbook: Workbook, place: number, value: number): Workbook => ({
	...workbook,
	sheets: workbook.sheets.map((sheet) => ({
		...sheet,
		quantities: sheet.quantities.map((quantity) =>
			quantity.name === `price_${place}` ? { ...quantity, value } : quantity
		)
	}))
});
