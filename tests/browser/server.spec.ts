/** The built server as a program meets it: what only the build can show. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'playwright/test';

test('the built server saves, computes in its own thread, and describes itself', async ({
	request
}) => {
	expect((await request.get('/api/ready')).status()).toBe(200);
	const headers = { 'content-type': 'application/json', 'x-metrewright': '1' };
	const text = readFileSync('scenarios/one-line-shop.json', 'utf8');
	const made = await request.post('/api/v1/workbooks', { headers, data: text });
	expect(made.status()).toBe(201);
	const { id } = (await made.json()) as { id: string };
	const path = `/api/v1/workbooks/${id}`;
	const evaluated = await request.post(`${path}/evaluate`, {
		headers,
		data: JSON.stringify({ scenarios: ['second_shift'], quantities: ['shifts'] })
	});
	expect(await evaluated.json()).toMatchObject({
		scenarios: [{ quantities: { shifts: { value: 2 } } }]
	});
	const large = await request.put(path, {
		headers: { ...headers, 'if-match': '"1"' },
		// Beyond the framework's own limit of half a megabyte.
		data: text + ' '.repeat(700_000)
	});
	expect(large.status()).toBe(200);
	const described = await request.get('/api/v1/openapi.json');
	expect(((await described.json()) as { openapi: string }).openapi).toBe('3.1.0');
	expect(described.headers()).toMatchObject({
		'x-content-type-options': 'nosniff',
		'cache-control': 'no-store',
		'content-security-policy': "default-src 'none'; frame-ancestors 'none'"
	});
	const foreign = await request.get('/api/v1/workbooks', { headers: { host: 'evil.example' } });
	expect(foreign.status()).toBe(421);
	expect((await request.delete(path, { headers })).status()).toBe(204);
});
