/** Prints the figures of the soak parts named on the command line, on each store that is here. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readSettings } from '$lib/server/settings';
import { start } from '$lib/server/start';
import type { Where } from '$lib/server/store/open';
import { hasPostgres, startCluster } from '../server/cluster';
import { soakEditors } from './soak-editors';
import { soakFuzz } from './soak-fuzz';
import { soakKills } from './soak-kills';

const [part = 'all', count] = process.argv.slice(2);
const wants = (name: string) => part === 'all' || part === name;
const folder = mkdtempSync(join(tmpdir(), 'metrewright-soak-'));
const cluster = hasPostgres() ? await startCluster() : null;
if (!cluster) console.log('PostgreSQL is not installed here: its figures are left out.');
const stores: [string, (name: string) => Where][] = [
	['embedded', (name) => ({ folder: join(folder, name) })],
	...(cluster
		? [
				['PostgreSQL', (name: string) => ({ url: cluster.database(name) })] as [
					string,
					(name: string) => Where
				]
			]
		: [])
];
try {
	for (const [title, place] of stores) {
		if (wants('kills')) {
			const figures = await soakKills(place('kills'), Number(count ?? 10_000), 200);
			console.log(`saves and kills, ${title}: ${JSON.stringify(figures)}`);
		}
		if (wants('editors')) {
			const figures = await soakEditors(place('editors'), 50, {
				seconds: Number(count ?? 120)
			});
			console.log(`50 editors, ${title}: ${JSON.stringify(figures)}`);
		}
		if (wants('fuzz')) {
			const where = place('fuzz');
			const read = readSettings({
				METREWRIGHT_REQUESTS_PER_MINUTE: '1000000',
				METREWRIGHT_LOG: 'silent',
				...('url' in where ? { DATABASE_URL: where.url } : { METREWRIGHT_DATA: where.folder })
			});
			if (!read.ok) throw new Error(read.problems.join('\n'));
			const running = await start(read.settings);
			const { faults, ...rest } = await soakFuzz(running, Number(count ?? 100_000), 20_261_125);
			console.log(`fuzz, ${title}: ${JSON.stringify({ ...rest, faults: faults.length })}`);
			for (const fault of faults.slice(0, 10)) console.log(`  ${fault.slice(0, 300)}`);
			await running.stop();
		}
	}
} finally {
	await cluster?.stop();
	rmSync(folder, { recursive: true, force: true });
}
