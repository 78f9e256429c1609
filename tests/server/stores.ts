/**
 * The stores that a suite runs on: the embedded one always, PostgreSQL where it is installed. Where it is not,
 * the suite says so in its list of tests.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, it } from 'vitest';
import { openStore, type Store, type Where } from '$lib/server/store/open';
import { hasPostgres, startCluster, type Cluster } from './cluster';

export interface StoreAtHand {
	/** Of the store that this suite shares. */
	readonly store: () => Store;
	/** An empty one, by place, for those that open it themselves; gone after the suite. */
	readonly fresh: () => Where;
}

export function onEachStore(title: string, suite: (at: StoreAtHand) => void): void {
	describe(`${title}, on the embedded store`, () => {
		const folders: string[] = [];
		const fresh = (): Where => {
			const folder = mkdtempSync(join(tmpdir(), 'metrewright-store-'));
			folders.push(folder);
			return { folder };
		};
		shared(fresh, suite);
		afterAll(() => {
			for (const folder of folders) rmSync(folder, { recursive: true, force: true });
		});
	});
	if (!hasPostgres()) {
		describe(`${title}, on PostgreSQL`, () => {
			it('is left out: PostgreSQL is not installed here (Debian: postgresql)', () => undefined);
		});
		return;
	}
	describe(`${title}, on PostgreSQL`, () => {
		let cluster: Cluster | undefined;
		let made = 0;
		beforeAll(async () => {
			cluster = await startCluster();
		});
		shared(() => {
			if (!cluster) throw new Error('The cluster has not started.');
			return { url: cluster.database(`db${++made}`) };
		}, suite);
		afterAll(async () => cluster?.stop());
	});
}

function shared(fresh: () => Where, suite: (at: StoreAtHand) => void): void {
	let store: Store | undefined;
	beforeAll(async () => {
		store = await openStore(fresh(), Date.now());
	});
	suite({
		store: () => {
			if (!store) throw new Error('The store is not open.');
			return store;
		},
		fresh
	});
	afterAll(async () => store?.close());
}
