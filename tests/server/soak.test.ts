/** The soak parts, shortened: killed in mid-save, many at once, nonsense. `npm run soak` runs them in full. */
import { expect, it } from 'vitest';
import { soakEditors } from '../bench/soak-editors';
import { soakFuzz } from '../bench/soak-fuzz';
import { soakKills } from '../bench/soak-kills';
import { startServer } from './api';
import { onEachStore } from './stores';

onEachStore('Under strain', ({ fresh }) => {
	it('no acknowledged save is lost by killing the process', async () => {
		const { acknowledged, found, lost, kills } = await soakKills(fresh(), 40, 12);
		expect({ acknowledged, found, lost }).toEqual({ acknowledged: 40, found: 40, lost: 0 });
		expect(kills).toBeGreaterThan(0);
	});

	it('no change of many editors at once is lost', async () => {
		const { saves, lost } = await soakEditors(fresh(), 8, { saves: 80 });
		expect(lost).toBe(0);
		expect(saves).toBeGreaterThanOrEqual(80);
	});

	it('two processes on one store work side by side, without loss', async () => {
		const { saves, merges, lost } = await soakEditors(fresh(), 6, { saves: 60 }, 2);
		expect(lost).toBe(0);
		expect(saves).toBeGreaterThanOrEqual(60);
		expect(merges).toBeGreaterThan(0);
	});

	it('no nonsense is answered with a fault', async () => {
		const server = await startServer(fresh());
		const { faults, statuses } = await soakFuzz(server, 600, 7);
		expect(faults).toEqual([]);
		expect(Object.keys(statuses).length).toBeGreaterThan(5);
		await server.stop();
	});
});
