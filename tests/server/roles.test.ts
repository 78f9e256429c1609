/**
 * Every route and method as nobody, as a stranger to the workbook, and in each role: what the server answers, held
 * against a table written by hand, and printed.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openApi } from '$lib/server/http/openapi';
import { ROUTES } from '$lib/server/http/routes';
import { giveRole } from '$lib/server/people/memberships';
import { saveWorkbook } from '$lib/workbook/save';
import { plant } from '../workbook/plant';
import { Client, person, PASSWORD, startServer, type Server } from './api';

const COLUMNS = ['nobody', 'outsider', 'open', 'viewer', 'editor', 'owner', 'steward'] as const;
const text = saveWorkbook(plant);
const W = '/api/v1/workbooks/{workbook}';

interface Case {
	readonly body?: unknown;
	readonly text?: string;
	readonly headers?: Record<string, string>;
	readonly query?: string;
	/** The status for each column; a workbook of their own is made for each. */
	readonly gives: readonly [number, number, number, number, number, number, number];
}

const all = (status: number): Case['gives'] => [
	status,
	status,
	status,
	status,
	status,
	status,
	status
];
const signedIn = (status: number): Case['gives'] => [
	401,
	status,
	status,
	status,
	status,
	status,
	status
];
const stewards = (status: number): Case['gives'] => [401, 403, 403, 403, 403, 403, status];
/** From a role up; strangers, stewards among them, are told that there is nothing. */
const from = (role: 'open' | 'viewer' | 'editor' | 'owner', status: number): Case['gives'] => {
	const least = COLUMNS.indexOf(role);
	const of = (column: number) => (column >= least ? status : 403);
	return [401, 404, of(2), of(3), of(4), of(5), 404];
};

const email = 'new@plant.example';
const TABLE: Readonly<Record<string, Case>> = {
	'GET /api/health': { gives: all(200) },
	'GET /api/ready': { gives: all(200) },
	'GET /api/v1/openapi.json': { gives: all(200) },
	'GET /api/v1/session': { gives: all(200) },
	'POST /api/v1/session': { body: { email: 'x@y.example', password: 'wrong' }, gives: all(401) },
	'DELETE /api/v1/session': { gives: signedIn(204) },
	'GET /api/v1/sessions': { gives: signedIn(200) },
	'DELETE /api/v1/sessions': { gives: signedIn(204) },
	'DELETE /api/v1/sessions/{session}': { gives: signedIn(404) },
	'PUT /api/v1/me/password': { body: { old: 'wrong', new: PASSWORD }, gives: all(401) },
	'GET /api/v1/me/data': { gives: signedIn(200) },
	'DELETE /api/v1/me': { body: { password: 'wrong' }, gives: all(401) },
	'GET /api/v1/people': { gives: stewards(200) },
	'POST /api/v1/reset': {
		body: { token: 'x'.repeat(40), password: PASSWORD },
		gives: all(404)
	},
	'PUT /api/v1/people/{person}': { body: { mayBegin: true }, gives: stewards(404) },
	'POST /api/v1/people/{person}/reset': { gives: stewards(404) },
	'GET /api/v1/people/{person}/workbooks': { gives: stewards(404) },
	'POST /api/v1/people/{person}/hand-over': { body: { to: 'x' }, gives: stewards(404) },
	'DELETE /api/v1/people/{person}': { gives: stewards(404) },
	'DELETE /api/v1/people/{person}/sessions': { gives: stewards(204) },
	'GET /api/v1/people/{person}/tokens': { gives: stewards(404) },
	'DELETE /api/v1/people/{person}/tokens': { gives: stewards(404) },
	'GET /api/v1/tokens': { gives: signedIn(200) },
	'POST /api/v1/tokens': {
		body: { name: 'import', scope: 'read', days: 30 },
		gives: signedIn(201)
	},
	'DELETE /api/v1/tokens/{token}': { gives: signedIn(404) },
	'GET /api/v1/audit/export': { gives: stewards(200) },
	'GET /api/v1/audit': { gives: stewards(200) },
	'GET /api/v1/invitations': { gives: stewards(200) },
	'POST /api/v1/invitations': { body: { email }, gives: stewards(201) },
	'DELETE /api/v1/invitations/{invitation}': { gives: stewards(404) },
	'POST /api/v1/invitations/accept': {
		body: { token: 'x'.repeat(40), password: PASSWORD },
		gives: all(404)
	},
	'GET /api/v1/workbooks': { gives: signedIn(200) },
	'POST /api/v1/workbooks': { text, gives: signedIn(201) },
	[`GET ${W}`]: { gives: from('viewer', 200) },
	[`PUT ${W}`]: { text, headers: { 'if-match': '"1"' }, gives: from('editor', 200) },
	[`DELETE ${W}`]: { gives: from('owner', 204) },
	[`GET ${W}/people`]: { gives: from('owner', 200) },
	[`PUT ${W}/people/{person}`]: { body: { role: 'viewer' }, gives: from('owner', 404) },
	[`DELETE ${W}/people/{person}`]: { gives: from('owner', 404) },
	[`GET ${W}/invitations`]: { gives: from('owner', 200) },
	[`DELETE ${W}/invitations/{invitation}`]: { gives: from('owner', 404) },
	[`POST ${W}/invitations`]: { body: { email, role: 'viewer' }, gives: from('owner', 201) },
	[`GET ${W}/revisions`]: { gives: from('viewer', 200) },
	[`GET ${W}/revisions/{revision}`]: { gives: from('viewer', 200) },
	[`GET ${W}/revisions/{revision}/workbook`]: { gives: from('viewer', 200) },
	[`POST ${W}/revisions/{revision}/restore`]: { gives: from('editor', 200) },
	[`PUT ${W}/revisions/{revision}/name`]: { body: { name: 'a' }, gives: from('editor', 204) },
	[`DELETE ${W}/revisions/{revision}/name`]: { gives: from('owner', 204) },
	[`GET ${W}/compare`]: { query: '?from=1', gives: from('viewer', 200) },
	[`GET ${W}/history`]: { query: '?quantity=resin_price', gives: from('viewer', 200) },
	[`POST ${W}/evaluate`]: {
		body: { quantities: ['resin_price'] },
		gives: from('viewer', 200)
	},
	// The shop's papers are made of pictures that this workbook has none of.
	[`GET ${W}/revisions/{revision}/papers/{paper}`]: { gives: from('viewer', 422) },
	[`GET ${W}/open`]: { gives: from('open', 200) },
	[`GET ${W}/events`]: { gives: from('viewer', 200) }
};

describe('every route and method', () => {
	const folder = mkdtempSync(join(tmpdir(), 'metrewright-roles-'));
	let server: Server;
	const clients = new Map<string, Client & { id?: string; email?: string }>();
	beforeAll(async () => {
		server = await startServer({ folder });
		for (const name of COLUMNS.slice(1))
			clients.set(name, await person(server, name, { steward: name === 'steward' }));
		clients.set('nobody', new Client(server, '198.51.100.99'));
	});
	afterAll(async () => {
		await server.stop();
		rmSync(folder, { recursive: true });
	});

	/** A workbook with somebody in each role. */
	async function workbook(): Promise<string> {
		const made = await server.services.saver.create(
			text,
			{ id: clients.get('owner')!.id!, name: 'owner' },
			'',
			Date.now()
		);
		if (!made.ok) throw new Error(made.problem.line);
		const roles = { editor: 'editor', viewer: 'viewer', open: 'open_viewer' } as const;
		for (const [name, role] of Object.entries(roles))
			await giveRole(server.services.store.db, made.id, clients.get(name)!.id!, role);
		return made.id;
	}

	it('is in the table, and in the description, and nothing more is', () => {
		const routes = ROUTES.map(({ method, path }) => `${method} ${path}`);
		expect(Object.keys(TABLE).sort()).toEqual([...routes].sort());
		const { paths } = openApi(ROUTES) as { paths: Record<string, object> };
		const described = Object.entries(paths).flatMap(([path, methods]) =>
			Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`)
		);
		expect(described.sort()).toEqual([...routes].sort());
	});

	it('answers each role as the table says', async () => {
		const lines = [`${'route'.padEnd(66)}${COLUMNS.map((name) => name.padStart(9)).join('')}`];
		// What only reads leaves its workbook as it was.
		const read = await workbook();
		for (const [route, one] of Object.entries(TABLE)) {
			const [method, path] = route.split(' ') as [string, string];
			const statuses: number[] = [];
			for (const column of COLUMNS) {
				const client = clients.get(column)!;
				const place = path
					.replace(
						'{workbook}',
						!path.includes('{workbook}') ? '' : method === 'GET' ? read : await workbook()
					)
					.replace('{revision}', '1')
					.replace(/\{\w+\}/, 'somebody');
				const answer = await client.ask(method, `${place}${one.query ?? ''}`, one);
				statuses.push(answer.status);
				await answer.body?.cancel();
				if (route === 'DELETE /api/v1/session' && client.email) await client.signIn(client.email);
			}
			lines.push(`${route.padEnd(66)}${statuses.map((n) => String(n).padStart(9)).join('')}`);
			expect(statuses, route).toEqual(one.gives);
		}
		console.log(lines.join('\n'));
	});

	it('takes no other method', async () => {
		const owner = clients.get('owner')!;
		for (const { path } of ROUTES)
			for (const method of ['GET', 'POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS']) {
				if (ROUTES.some((route) => route.path === path && route.method === method)) continue;
				const answer = await owner.ask(method, path.replace(/\{\w+\}/g, 'x1'));
				const others = ROUTES.some(
					(route) => route.method === method && fits(route.path, path.replace(/\{\w+\}/g, 'x1'))
				);
				if (!others) expect(answer.status, `${method} ${path}`).toBe(405);
			}
	});
});

const fits = (pattern: string, path: string) =>
	new RegExp(`^${pattern.replace(/\{\w+\}/g, '[\\w-]+')}$`).test(path);
