/** What stewards do for people, on screens and on the command line: rights, new passwords, workbooks of leavers. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { saveWorkbook } from '$lib/workbook/save';
import { storeCommand } from '../../src/cli/store-commands';
import type { Where } from '$lib/server/store/open';
import { plant } from '../workbook/plant';
import { Client, PASSWORD, person, startServer, type Server } from './api';
import { onEachStore } from './stores';

const text = saveWorkbook(plant);
const NEXT = 'another pipe of nine metres';

onEachStore('Stewards', ({ fresh }) => {
	let where: Where;
	let server: Server;
	let ada: Awaited<ReturnType<typeof person>>;
	beforeAll(async () => {
		where = fresh();
		server = await startServer(where);
		ada = await person(server, 'ada', { steward: true });
	});
	afterAll(() => server.stop());
	const command = (...words: string[]) =>
		storeCommand(
			words,
			'url' in where ? { DATABASE_URL: where.url } : { METREWRIGHT_DATA: where.folder },
			async () => NEXT
		);
	const trail = async () =>
		(
			await ada.json<{ entries: { event: string; subject: string }[] }>(
				'GET',
				'/api/v1/audit?limit=500'
			)
		).entries;

	it('give somebody a new password by a link that is shown once, ends with its use and after a day', async () => {
		const bea = await person(server, 'bea');
		const link = (client: Client = ada) =>
			client.json<{ token: string; expiresAt: number }>('POST', `/api/v1/people/${bea.id}/reset`);
		const use = (token: string, password = NEXT) =>
			new Client(server, '192.0.2.40').ask('POST', '/api/v1/reset', { body: { token, password } });

		const first = await link();
		const second = await link();
		// A later link ends the one before; what is kept of it is a hash.
		expect((await use(first.token)).status).toBe(404);
		const rows = await server.services.store.db.selectFrom('resets').selectAll().execute();
		expect(JSON.stringify(rows)).not.toContain(second.token);
		expect((await use(second.token, 'short')).status).toBe(422);
		// Until it is used, the old password holds.
		expect((await new Client(server, '192.0.2.41').signIn(bea.email)).status).toBe(200);
		expect((await use(second.token)).status).toBe(204);
		expect((await use(second.token)).status).toBe(404);
		expect((await bea.ask('GET', '/api/v1/sessions')).status).toBe(401);
		expect((await bea.signIn(bea.email)).status).toBe(401);
		expect((await bea.signIn(bea.email, NEXT)).status).toBe(200);

		const third = await link();
		server.pass(24 * 3_600_000 + 1);
		expect((await use(third.token)).status).toBe(404);
		await ada.signIn(ada.email);
		expect((await trail()).map(({ event }) => event)).toEqual(
			expect.arrayContaining(['reset_made', 'password_reset'])
		);
	});

	it('hand over what a leaver owns, and then can remove them', async () => {
		const leaver = await person(server, 'leaver');
		const taker = await person(server, 'taker');
		const begun = await leaver.json<{ id: string }>('POST', '/api/v1/workbooks', { text });
		const path = `/api/v1/workbooks/${begun.id}`;
		const { token } = await leaver.json<{ token: string }>('POST', `${path}/invitations`, {
			body: { email: 'friend@elsewhere.example', role: 'owner' }
		});
		const place = `/api/v1/people/${leaver.id}`;
		expect((await ada.ask('DELETE', place)).status).toBe(409);
		expect(await ada.json('GET', `${place}/workbooks`)).toEqual({
			workbooks: [{ id: begun.id, title: plant.title, alone: true }]
		});
		// Who manages the server sees the title, and not what is in it.
		expect((await ada.ask('GET', path)).status).toBe(404);
		const handOver = (to: string) => ada.ask('POST', `${place}/hand-over`, { body: { to } });
		expect((await handOver(leaver.id)).status).toBe(422);
		expect((await handOver('nobody')).status).toBe(422);
		expect(await (await handOver(taker.id)).json()).toEqual({ workbooks: [begun.id] });
		expect((await leaver.ask('GET', path)).status).toBe(404);
		expect((await taker.ask('DELETE', `${path}/people/nobody`)).status).toBe(404);
		const friend = await new Client(server, '192.0.2.50').ask(
			'POST',
			'/api/v1/invitations/accept',
			{ body: { token, password: PASSWORD } }
		);
		expect(friend.status).toBe(404);
		expect((await ada.ask('DELETE', place)).status).toBe(204);
	});

	it('make an existing person one of them, and no longer, but never leave nobody', async () => {
		const bob = await person(server, 'bob');
		const set = (id: string, body: object) => ada.ask('PUT', `/api/v1/people/${id}`, { body });
		expect((await set(ada.id, { steward: false })).status).toBe(409);
		expect((await set(bob.id, {})).status).toBe(422);
		expect((await set(bob.id, { steward: true })).status).toBe(204);
		expect((await bob.ask('GET', '/api/v1/people')).status).toBe(200);
		const { token } = await bob.json<{ token: string }>('POST', '/api/v1/invitations', {
			body: { email: 'later@plant.example' }
		});
		expect((await set(bob.id, { steward: false })).status).toBe(204);
		expect((await bob.ask('GET', '/api/v1/people')).status).toBe(403);
		const late = await new Client(server, '192.0.2.51').ask('POST', '/api/v1/invitations/accept', {
			body: { token, password: PASSWORD }
		});
		expect(late.status).toBe(404);
		expect((await trail()).some(({ subject }) => subject === bob.id)).toBe(true);
	});

	it('two at once do not step down past each other', async () => {
		const zoe = await person(server, 'zoe', { steward: true });
		const down = (id: string) =>
			ada.ask('PUT', `/api/v1/people/${id}`, { body: { steward: false } });
		const both = await Promise.all([down(ada.id), down(zoe.id)]);
		const left = await server.services.store.db
			.selectFrom('people')
			.where('steward', '=', 1)
			.select('id')
			.execute();
		expect(both.map(({ status }) => status)).toContain(204);
		expect(left).toHaveLength(1);
		if (left[0]!.id !== ada.id) {
			await zoe.json('PUT', `/api/v1/people/${ada.id}`, { body: { steward: true } });
			await ada.json('PUT', `/api/v1/people/${zoe.id}`, { body: { steward: false } });
		}
	});

	it('say who may begin workbooks, and who may invite people without an account', async () => {
		const carl = await person(server, 'carl');
		const dora = await person(server, 'dora');
		const { id } = await carl.json<{ id: string }>('POST', '/api/v1/workbooks', { text });
		const ask = (email: string) =>
			carl.ask('POST', `/api/v1/workbooks/${id}/invitations`, { body: { email, role: 'viewer' } });
		const open = (await (await ask('new@plant.example')).json()) as { token: string };
		await ada.json('PUT', `/api/v1/people/${carl.id}`, {
			body: { mayBegin: false, mayInvite: false }
		});
		expect(await ada.json('GET', '/api/v1/people')).toMatchObject({
			people: expect.arrayContaining([
				expect.objectContaining({ id: carl.id, mayBegin: false, mayInvite: false, sessions: 1 })
			])
		});
		const begin = await carl.ask('POST', '/api/v1/workbooks', { text });
		expect(begin.status).toBe(403);
		expect(await begin.json()).toMatchObject({
			detail: expect.stringContaining('Ask an administrator')
		});
		expect((await ask('other@plant.example')).status).toBe(403);
		// Whoever is here already may be given a part: no account comes of it.
		expect((await ask(dora.email)).status).toBe(200);
		const late = await new Client(server, '192.0.2.52').ask('POST', '/api/v1/invitations/accept', {
			body: { token: open.token, password: PASSWORD }
		});
		expect(late.status).toBe(404);
	});

	it('end the invitations of an owner who is one no longer, and those to a workbook that is gone', async () => {
		const emil = await person(server, 'emil');
		const fay = await person(server, 'fay');
		const begun = await emil.json<{ id: string }>('POST', '/api/v1/workbooks', { text });
		const path = `/api/v1/workbooks/${begun.id}`;
		const role = (client: Client, id: string, to: string) =>
			client.json('PUT', `${path}/people/${id}`, { body: { role: to } });
		await emil.json('POST', `${path}/invitations`, { body: { email: fay.email, role: 'owner' } });
		const invited = (client: Client, email: string) =>
			client.json<{ token: string }>('POST', `${path}/invitations`, {
				body: { email, role: 'viewer' }
			});
		const accept = async (token: string) =>
			(
				await new Client(server, '192.0.2.53').ask('POST', '/api/v1/invitations/accept', {
					body: { token, password: PASSWORD }
				})
			).status;
		const byFay = await invited(fay, 'x@plant.example');
		const byEmil = await invited(emil, 'y@plant.example');
		await role(emil, fay.id, 'editor');
		expect(await accept(byFay.token)).toBe(404);
		await emil.json('DELETE', path);
		expect(await accept(byEmil.token)).toBe(404);
	});

	it('do the same on the command line', async () => {
		const gil = await person(server, 'gil');
		const hal = await person(server, 'hal');
		await gil.json('POST', '/api/v1/workbooks', { text });
		expect(await command('account', 'reset', 'nobody@plant.example')).toMatchObject({ code: 2 });
		expect(await command('account', 'reset', gil.email)).toMatchObject({ code: 0 });
		expect((await gil.ask('GET', '/api/v1/sessions')).status).toBe(401);
		expect((await gil.signIn(gil.email, NEXT)).status).toBe(200);
		expect(await command('account', 'hand-over', gil.email, hal.email)).toMatchObject({
			out: `${hal.email} owns 1 workbook of ${gil.email} now.\n`
		});
		expect(await command('account', 'make-administrator', hal.email)).toMatchObject({ code: 0 });
		expect((await hal.ask('GET', '/api/v1/people')).status).toBe(200);
		expect(await command('account', 'unmake-administrator', hal.email)).toMatchObject({ code: 0 });
		expect(await command('account', 'unmake-administrator', ada.email)).toMatchObject({
			code: 2,
			err: expect.stringContaining('last administrator')
		});
		expect(await command('account', 'hand-over', gil.email)).toMatchObject({ code: 2 });
		const again = await command('account', 'add-owner', gil.email);
		expect(again.err).toContain('account make-administrator');
	});
});
