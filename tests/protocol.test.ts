/** Rules that the server and the page share: who may what, and how large a workbook may be. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openApi } from '$lib/server/http/openapi';
import { readTextFile } from '$lib/browser/files';
import { includes, mayEdit, ROLES } from '$lib/protocol/roles';
import { ROUTES } from '$lib/server/http/routes';
import { readSettings } from '$lib/server/settings';
import { ROLE_MEANS, ROLE_WORDS } from '$lib/ui/shared/words';
import { megabytes, MOST_BYTES, MOST_MEGABYTES, sizeWords } from '$lib/workbook/file-size';

describe('a role', () => {
	it('may change a workbook on the page exactly where the server lets it save', () => {
		const save = ROUTES.find(
			({ method, path }) => method === 'PUT' && path === '/api/v1/workbooks/{workbook}'
		)!;
		const needed = ROLES.find((role) => role === save.needs)!;
		for (const role of ROLES) expect(mayEdit(role), role).toBe(includes(role, needed));
		expect(mayEdit(null)).toBe(true);
	});

	it('that nobody knows may change nothing', () => {
		expect(mayEdit('commenter' as (typeof ROLES)[number])).toBe(false);
	});

	it('has a word and a meaning of its own', () => {
		for (const words of [ROLE_WORDS, ROLE_MEANS])
			expect(new Set(ROLES.map((role) => words[role])).size).toBe(ROLES.length);
	});
});

describe('the largest workbook', () => {
	const limits = (value: number) => readSettings({ METREWRIGHT_BODY_MB: String(value) });

	it('that a server can be set to take is the largest that opens', () => {
		expect(limits(MOST_MEGABYTES)).toMatchObject({
			ok: true,
			settings: { bodyLimitBytes: MOST_BYTES }
		});
		expect(limits(MOST_MEGABYTES + 1)).toMatchObject({
			problems: [expect.stringContaining(`from 1 to ${MOST_MEGABYTES}`)]
		});
	});

	it('gets through the framework, whose own limit lies above it', () => {
		const served = /BODY_SIZE_LIMIT = '(\d+)M'/.exec(readFileSync('src/run/serve.mjs', 'utf8'))!;
		expect(Number(served[1])).toBeGreaterThan(MOST_MEGABYTES);
		expect(Number(served[1])).toBeLessThan(MOST_MEGABYTES + 8);
	});

	it('is told by the same number on the page, which never names a size that would do', async () => {
		const file = { name: 'plant.json', size: MOST_BYTES + 1 } as File;
		expect(await readTextFile(file)).toEqual({
			problem: `"plant.json" holds 65 MB; a workbook has at most 64 MB. Choose the workbook's JSON file.`
		});
		expect(sizeWords(megabytes(3))).toBe('3 MB');
	});
});

describe('the answers of the interface', () => {
	const bare = [
		// One's own data as they lie in the store, the description itself, and a stream.
		...['/api/v1/me/data', '/api/v1/openapi.json', '/api/v1/workbooks/{workbook}/events'],
		// Lines and a PDF, which no JSON Schema describes.
		'/api/v1/audit/export',
		'/api/v1/workbooks/{workbook}/revisions/{revision}/papers/{paper}'
	];
	const bodies = ROUTES.flatMap(({ method, path, answers }) =>
		Object.entries(answers)
			.filter(([status]) => status === '200' || status === '201')
			.map(([status, answer]) => [`${method} ${path}`, status, answer, path] as const)
	).filter(([, , , path]) => !bare.includes(path));

	it.each(bodies)('%s, %s: have a schema', (_route, _status, { schema }) => {
		expect(schema).toBeDefined();
	});

	it('are printed in the description, the workbook by its name', () => {
		const { paths } = openApi(ROUTES) as {
			paths: Record<string, Record<string, { responses: Record<string, object> }>>;
		};
		const content = (path: string) =>
			(paths[path]!['get']!.responses['200'] as { content: object }).content;
		expect(content('/api/v1/workbooks/{workbook}')).toEqual({
			'application/json': { schema: { $ref: '#/components/schemas/Workbook' } }
		});
		expect(content('/api/v1/workbooks/{workbook}/people')).toMatchObject({
			'application/json': {
				schema: { properties: { people: { items: { required: ['id', 'email', 'name', 'role'] } } } }
			}
		});
	});
});
