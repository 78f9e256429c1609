import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Engine } from '$lib/browser/engine-client';
import type { BrowserStore } from '$lib/browser/store';
import '$lib/browser/sync/connection';
import '$lib/ui/shared/others-words';
import type { StoredLink } from '$lib/browser/sync/stored-link';
import { applyCommand } from '$lib/workbook/commands';
import { inputAt } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import { Session } from '$lib/ui/session.svelte';
import { Sharing } from '$lib/ui/shared/sharing.svelte';
import { shop } from '../shop';
import { FakeServer } from './server';

const price = (value: number) =>
	({
		kind: 'set_inputs',
		scenario: 'base',
		entries: [{ quantity: 'price', at: [], value }]
	}) as const;
const heavier = (value: number) =>
	({
		kind: 'set_inputs',
		scenario: 'base',
		entries: [{ quantity: 'mass', at: ['B22'], value }]
	}) as const;
const heavierLine = {
	kind: 'value',
	label: 'Mass per metre',
	at: ['B22'],
	was: 0.1,
	now: 0.2,
	unit: 'kg/m'
} as const;
function after(workbook: Workbook, command: Parameters<typeof applyCommand>[1]): Workbook {
	const result = applyCommand(workbook, command);
	if (!result.ok) throw new Error(result.problem.message);
	return result.workbook;
}
const priceIn = (workbook: Workbook | null) => inputAt(workbook!, 'base', 'price', []).value;
const massIn = (workbook: Workbook | null) => inputAt(workbook!, 'base', 'mass', ['B22']).value;

const silent: Engine = {
	open() {},
	apply() {},
	why: () => Promise.resolve(null),
	tryQuantity: () => Promise.resolve(null),
	lend() {},
	close() {}
};

/** A desk with the shop on it, linked to the server as its revision 1. */
async function shared(role: StoredLink['role'] = null) {
	const server = new FakeServer(shop);
	server.role = role;
	const settings = new Map<string, unknown>();
	const order: string[] = [];
	const store = {
		setting: async (key: string) => settings.get(key),
		keepSetting: async (key: string, value: unknown) => {
			order.push('link');
			settings.set(key, value);
		},
		dropSetting: async (key: string) => void settings.delete(key)
	} as unknown as BrowserStore;
	const session = new Session(() => silent, 'en');
	session.open(shop);
	const sharing = new Sharing(session, store);
	session.onedit = () => sharing.edited();
	const link: StoredLink = { id: 'w1', number: 1, base: shop, at: 1000, role };
	settings.set('link d', link);
	const written = async () => void order.push('written');
	await sharing.attach({ document: 'd', owns: true, written });
	const kept = () => settings.get('link d') as StoredLink | undefined;
	return { server, session, sharing, kept, order };
}
type Shared = Awaited<ReturnType<typeof shared>>;

/** Until nothing more happens without time passing. */
async function rest() {
	for (let i = 0; i < 40; i++) await new Promise((resolve) => setImmediate(resolve));
}
async function pass(ms: number) {
	await vi.advanceTimersByTimeAsync(ms);
	await rest();
}
async function awake(role: StoredLink['role'] = null): Promise<Shared> {
	const all = await shared(role);
	all.sharing.wake();
	await rest();
	return all;
}

beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] }));
afterEach(() => {
	vi.useRealTimers();
	vi.unstubAllGlobals();
});

describe('a shared workbook', () => {
	it('asks nothing of the server before the first numbers stand', async () => {
		const { server, sharing } = await shared();
		await pass(60_000);
		expect(server.asked).toEqual([]);
		expect(sharing.link?.number).toBe(1);
		sharing.wake();
		await rest();
		expect(server.asked).toContain('GET /api/v1/workbooks');
		expect(sharing.state).toEqual({ is: 'in_step' });
	});
	it('never asks the server for one that is not shared', async () => {
		const { server, session, sharing } = await awake();
		await sharing.part();
		server.asked = [];
		session.apply(price(1.9));
		await pass(60_000);
		await sharing.now();
		expect(server.asked).toEqual([]);
		expect(server.listeners).toBe(0);
	});
	it('sends an edit after a quiet moment, with the reason, once', async () => {
		const { server, session, sharing, kept } = await awake();
		sharing.say('new contract');
		session.apply(price(1.9));
		expect(sharing.pending).toBe(true);
		await pass(1500);
		session.apply(price(1.8));
		await pass(1500);
		expect(server.revisions).toHaveLength(1);
		await pass(500);
		expect(priceIn(server.newest)).toBe(1.8);
		expect(server.reasons).toEqual(['new contract']);
		expect(sharing.reason).toBe('');
		expect(sharing.pending).toBe(false);
		expect(kept()).toMatchObject({ number: 2 });
		session.apply(price(1.7));
		await pass(2000);
		expect(server.reasons).toEqual(['new contract', '']);
	});
	it('writes the workbook down before the link that says what of it is sent', async () => {
		const { session, order } = await awake();
		order.length = 0;
		session.apply(price(1.9));
		await pass(2000);
		expect(order.length).toBeGreaterThan(0);
		expect(order.filter((name, i) => name === 'link' && order[i - 1] !== 'written')).toEqual([]);
	});
	it('takes in what others save, says so, and sends nothing back', async () => {
		const { server, session, kept } = await awake('editor');
		server.savedBy('Anna', after(shop, heavier(0.2)), heavierLine);
		await rest();
		expect(massIn(session.workbook)).toBe(0.2);
		expect(session.said).toBe('Anna: Mass per metre of B22: 0.1 to 0.2 kg/m, times 2');
		expect(kept()).toMatchObject({ number: 2, at: 2000 });
		await pass(10_000);
		expect(server.revisions).toHaveLength(2);
	});
	it('calls the other one another browser where nobody has an account', async () => {
		const { server, session } = await awake();
		server.savedBy('Anna', after(shop, heavier(0.2)), heavierLine);
		await rest();
		expect(session.said).toBe('Another browser: Mass per metre of B22: 0.1 to 0.2 kg/m, times 2');
	});
	it('keeps edits of different values of both', async () => {
		const { server, session } = await awake();
		session.apply(price(1.9));
		server.savedBy('Anna', after(shop, heavier(0.2)));
		await pass(2000);
		expect([priceIn(server.newest), massIn(server.newest)]).toEqual([1.9, 0.2]);
		expect([priceIn(session.workbook), massIn(session.workbook)]).toEqual([1.9, 0.2]);
	});
	it('works on without a connection and catches up by itself, trying less and less often', async () => {
		const { server, session, sharing } = await awake();
		server.reachable = false;
		session.apply(price(1.9));
		await pass(2000);
		expect(sharing.state).toEqual({ is: 'offline' });
		expect(sharing.pending).toBe(true);
		server.asked = [];
		await pass(120_000);
		expect(server.asked.length).toBeGreaterThan(2);
		expect(server.asked.length).toBeLessThan(12);
		server.reachable = true;
		await pass(64_000);
		expect(priceIn(server.newest)).toBe(1.9);
		expect(sharing.state).toEqual({ is: 'in_step' });
	});
	it('catches up at once when it is told that the line is back', async () => {
		const { server, session, sharing } = await awake();
		server.reachable = false;
		session.apply(price(1.9));
		await pass(100_000);
		server.reachable = true;
		await sharing.now();
		expect(priceIn(server.newest)).toBe(1.9);
	});
	it('stops listening when another workbook is opened', async () => {
		const { server, sharing } = await awake();
		expect(server.listeners).toBe(1);
		sharing.leave();
		expect(server.listeners).toBe(0);
		expect(sharing.link).toBeNull();
	});
});

describe('the same value changed by two', () => {
	async function asked() {
		const all = await awake();
		all.session.apply(price(1.9));
		all.server.savedBy('Anna', after(shop, price(2.5)));
		await pass(2000);
		const [conflict] = all.sharing.asked;
		return { ...all, key: conflict?.key ?? '' };
	}
	it('is asked, with nothing lost on either side meanwhile', async () => {
		const { server, session, sharing } = await asked();
		expect(sharing.asked).toMatchObject([{ base: 2.02, mine: 1.9, theirs: 2.5 }]);
		expect(priceIn(session.workbook)).toBe(1.9);
		expect(priceIn(server.newest)).toBe(2.5);
	});
	it.each([
		['mine', 1.9],
		['theirs', 2.5]
	] as const)('ends as chosen: %s', async (side, value) => {
		const { server, session, sharing, key } = await asked();
		sharing.choices = new Map([[key, side]]);
		await sharing.settle();
		await rest();
		expect(priceIn(session.workbook)).toBe(value);
		expect(priceIn(server.newest)).toBe(value);
		expect(sharing.asked).toEqual([]);
		expect(sharing.state).toEqual({ is: 'in_step' });
	});
	it('forgets a choice when the other value is another one by now', async () => {
		const { server, sharing, key } = await asked();
		sharing.choices = new Map([[key, 'theirs']]);
		server.savedBy('Anna', after(server.newest, price(3)));
		await rest();
		expect(sharing.asked).toMatchObject([{ theirs: 3 }]);
		expect(sharing.choices.size).toBe(0);
	});
});

describe('one’s part in a shared workbook', () => {
	it('of a viewer is to read, and still to see what others do', async () => {
		const { server, session, sharing } = await awake('viewer');
		expect(session.apply(price(1.9))).toMatch(/You may read this workbook, not change it/);
		server.savedBy('Anna', after(shop, price(2.5)));
		await rest();
		expect(priceIn(session.workbook)).toBe(2.5);
		await sharing.part();
		expect(session.apply(price(1.9))).toBeNull();
	});
	it('is heard anew: a viewer who became editor may change it', async () => {
		const { server, session, sharing } = await shared('viewer');
		server.role = 'editor';
		sharing.wake();
		await rest();
		expect(session.readOnly).toBe(false);
		expect(session.apply(price(1.9))).toBeNull();
	});
	it('waits for signing in, with the work kept, and then goes on', async () => {
		const { server, session, sharing } = await awake('editor');
		server.signedIn = false;
		session.apply(price(1.9));
		await pass(2000);
		expect(sharing.state).toEqual({ is: 'refused', message: 'Sign in, then try again.' });
		expect(priceIn(session.workbook)).toBe(1.9);
		server.signedIn = true;
		await sharing.now();
		expect(priceIn(server.newest)).toBe(1.9);
	});
});
