/** Guesses of passwords: slowed on every path, all at once too, and fair to those who share an address. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { saveWorkbook } from '$lib/workbook/save';
import { networkOf } from '$lib/server/people/attempts';
import { passwordProblem } from '$lib/server/people/passwords';
import { plant } from '../workbook/plant';
import { Client, PASSWORD, person, startServer, type Server } from './api';
import { onEachStore } from './stores';

const text = saveWorkbook(plant);
const AT_ONCE = 12;
/** Wrong ones that are looked at before the first wait. */
const FREE = 4;

onEachStore('Guesses', ({ fresh }) => {
	let server: Server;
	let ada: Awaited<ReturnType<typeof person>>;
	beforeAll(async () => {
		server = await startServer(fresh());
		ada = await person(server, 'ada', { steward: true });
	});
	afterAll(() => server.stop());

	/** How many of many guesses at the same moment were looked at; the others were told to wait. */
	async function lookedAt(guess: (i: number) => Promise<Response>): Promise<number> {
		let statuses: number[] = [];
		await server.atOnce(async () => {
			const all = await Promise.all(Array.from({ length: AT_ONCE }, (_, i) => guess(i)));
			statuses = all.map(({ status }) => status);
		});
		expect(statuses.every((status) => status === 401 || status === 429)).toBe(true);
		return statuses.filter((status) => status === 401).length;
	}

	it('of a sign-in, sent all at once, are looked at as if they came by turns', async () => {
		const attacker = new Client(server, '203.0.113.7');
		expect(await lookedAt((i) => attacker.signIn(ada.email, `wrong ${i}`))).toBe(FREE);
		// The right one is not looked at either before the wait is over.
		expect((await attacker.signIn(ada.email)).status).toBe(429);
		server.pass(2000);
		expect((await attacker.signIn(ada.email)).status).toBe(200);
	});

	it('of the old password, and of the one that confirms a removal', async () => {
		const bob = await person(server, 'bob');
		const change = () =>
			bob.ask('PUT', '/api/v1/me/password', {
				body: { old: 'wrong', new: 'nine herons in a row' }
			});
		const remove = () => bob.ask('DELETE', '/api/v1/me', { body: { password: 'wrong' } });
		expect(await lookedAt(change)).toBe(FREE);
		// They are guesses at the same password.
		expect(await lookedAt(remove)).toBe(0);
		// Elsewhere the person is not kept out by what this session tries.
		expect((await new Client(server, '192.0.2.90').signIn(bob.email)).status).toBe(200);
	});

	it('of an account’s password through an invitation', async () => {
		const carl = await person(server, 'carl', { signIn: false });
		const { id } = await ada.json<{ id: string }>('POST', '/api/v1/workbooks', { text });
		// Invited before there was an account of that address.
		const made = await ada.json<{ token: string }>('POST', `/api/v1/workbooks/${id}/invitations`, {
			body: { email: 'later@plant.example', role: 'viewer' }
		});
		await server.services.store.db
			.updateTable('people')
			.set({ email: 'later@plant.example' })
			.where('id', '=', carl.id)
			.execute();
		const attacker = new Client(server, '203.0.113.8');
		const accept = (password: string) =>
			attacker.ask('POST', '/api/v1/invitations/accept', { body: { token: made.token, password } });
		expect(await lookedAt((i) => accept(`wrong ${i}`))).toBe(FREE);
		expect((await accept(PASSWORD)).status).toBe(429);
		const { entries } = await ada.json<{ entries: { event: string; detail: string }[] }>(
			'GET',
			'/api/v1/audit?limit=500'
		);
		expect(entries).toContainEqual(
			expect.objectContaining({ event: 'password_refused', detail: 'invitation' })
		);
	});

	it('of links for a new password are few a minute', async () => {
		const guesser = new Client(server, '203.0.113.9');
		const statuses: number[] = [];
		await server.atOnce(async () => {
			for (let i = 0; i < 31; i++) {
				const body = { token: `${i}`.padEnd(40, 'x'), password: PASSWORD };
				statuses.push((await guesser.ask('POST', '/api/v1/reset', { body })).status);
			}
		});
		expect(statuses.filter((status) => status === 429)).toHaveLength(1);
	});

	it('of one behind a proxy leave the others behind it their tries', async () => {
		const proxy = '203.0.113.10';
		const dora = await person(server, 'dora');
		const sprayer = new Client(server, proxy);
		await server.atOnce(async () => {
			for (let i = 0; i < 31; i++) await sprayer.signIn(`somebody${i}@plant.example`, 'wrong');
			for (let i = 0; i < 6; i++) await sprayer.signIn(dora.email, 'wrong');
			expect((await sprayer.signIn(dora.email)).status).toBe(429);
			// Her own browser, behind the same proxy, is known from before.
			const hers = new Client(server, proxy);
			hers.cookies.set('metrewright_browser', dora.cookies.get('metrewright_browser')!);
			expect((await hers.signIn(dora.email)).status).toBe(200);
		});
	});

	it('are not made longer by a clock that is set back', async () => {
		const attacker = new Client(server, '203.0.113.11');
		for (let i = 0; i < FREE; i++) await attacker.signIn(ada.email, 'wrong');
		server.pass(-3_600_000);
		const refused = await attacker.signIn(ada.email);
		expect(Number(refused.headers.get('retry-after'))).toBeLessThanOrEqual(2);
		server.pass(3_600_000);
	});
});

describe('addresses', () => {
	it('of one IPv6 network count as one', () => {
		// RFC 4291: the first 64 bits are the network's.
		const one = networkOf('2001:db8:0:7::1');
		expect(networkOf('2001:0DB8:0000:0007:ffff:ffff:ffff:ffff')).toBe(one);
		expect(networkOf('2001:db8:0:8::1')).not.toBe(one);
		expect(networkOf('::1')).toBe(networkOf('0:0:0:0:0:0:0:2'));
		expect(networkOf('192.0.2.1')).toBe('192.0.2.1');
	});
});

describe('new passwords', () => {
	const why = (password: string) => passwordProblem(password, 'anna.berg@plant.example');

	// The first five passed the earlier rule; the words come of the packages' list.
	it.each([
		['Summer2026!!', /too easy to guess/],
		['Passw0rd1234', /“Passw0rd” is among the words that are tried first/],
		['letmeinletmein', /it repeats the same piece/],
		['plantplantplant', /it repeats the same piece/],
		['administrator', /“administrator” is among the words/],
		['qwertyuiop[]', /“qwertyuiop\[\]” is a row of neighbouring keys/],
		['abcdefghijklmnop', /goes on letter by letter/],
		['metrewright2026', /“metrewright” stands in your name or address|too easy/],
		['anna.berg@plant.example', /it holds your address/],
		['aaaaaaaaaaaa', /too easy/],
		['short', /at least 12 characters/],
		['x'.repeat(201), /longer than 200/]
	])('such as %s are refused, with the reason', async (password, words) => {
		expect(await why(password)).toMatch(words);
	});

	it.each([PASSWORD, 'nine grey herons by the weir', 'x7Kq!pLm29vZ', 'Gießkanne im Hof, rot'])(
		'such as %s are taken',
		async (password) => {
			expect(await why(password)).toBeNull();
		}
	);

	it('are judged by their beginning, since long ones can be made to be judged slowly', async () => {
		const strong = 'x7Kq!pLm29vZ';
		expect(await why('ab1!'.repeat(16) + strong)).toMatch(/it repeats the same piece/);
		expect(await why(strong + 'ab1!'.repeat(40))).toBeNull();
	});
});

onEachStore('Sessions', ({ fresh }) => {
	it('are renewed while they are used, cookie and all, and end at last', async () => {
		const hour = 3_600_000;
		const server = await startServer(fresh(), {
			METREWRIGHT_SESSION_HOURS: '8',
			METREWRIGHT_SESSION_DAYS: '1'
		});
		const ada = await person(server, 'ada');
		const use = () => ada.ask('GET', '/api/v1/sessions');
		server.pass(7 * hour);
		const renewed = await use();
		expect(renewed.headers.getSetCookie()[0]).toMatch(
			/^metrewright=[\w-]+;.*HttpOnly.*Max-Age=28800$/
		);
		// Not with every request.
		expect((await use()).headers.getSetCookie()).toEqual([]);
		server.pass(7 * hour);
		expect((await use()).status).toBe(200);
		server.pass(7 * hour);
		// Three hours are left of its day.
		const last = await use();
		expect(last.status).toBe(200);
		expect(last.headers.getSetCookie()[0]).toMatch(/Max-Age=10[78]\d\d$/);
		server.pass(3.5 * hour);
		expect((await use()).status).toBe(401);
		await server.stop();
	});

	it('are not kept going by a stream that somebody left open', async () => {
		const server = await startServer(fresh());
		const ada = await person(server, 'ada');
		const { id } = await ada.json<{ id: string }>('POST', '/api/v1/workbooks', { text });
		const stream = (await ada.ask('GET', `/api/v1/workbooks/${id}/events`)).body!;
		server.pass(3_600_000);
		await ada.ask('PUT', `/api/v1/workbooks/${id}`, {
			text: text.replace('1.95', '3'),
			headers: { 'if-match': '"1"' }
		});
		const before = await server.services.store.db
			.selectFrom('sessions')
			.select('seen_at')
			.execute();
		server.pass(3_600_000);
		server.services.hub.tell(id, 3);
		await new Promise((resolve) => setTimeout(resolve, 20));
		const after = await server.services.store.db.selectFrom('sessions').select('seen_at').execute();
		expect(after).toEqual(before);
		await stream.cancel();
		await server.stop();
	});
});
