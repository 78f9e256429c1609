/** Whether the server lives and is ready, and what it offers. */
import { z } from '$lib/server/zod';
import { ask } from '../../store/open';
import { openApi } from '../openapi';
import { problem } from '../problem';
import { json, route, type Route } from '../route';

const group = 'operation';

/** `all`: the whole table, which the description is printed from. */
export const operationRoutes = (all: () => readonly Route[]) => [
	route({
		method: 'GET',
		path: '/api/health',
		needs: 'anyone',
		group,
		summary: 'Whether the process answers',
		answers: { 200: { description: 'It does', schema: z.object({ status: z.literal('up') }) } },
		handle: async () => json({ status: 'up' })
	}),
	route({
		method: 'GET',
		path: '/api/ready',
		needs: 'anyone',
		group,
		summary:
			'Whether requests should be sent here: the store answers and the server is not stopping',
		answers: {
			200: { description: 'They should', schema: z.object({ status: z.literal('ready') }) },
			503: { description: 'Not now' }
		},
		handle: async ({ services }) => {
			if (!services.isOpen()) return problem('busy', 'The server is stopping.');
			await ask(services.store.db);
			return json({ status: 'ready' });
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/openapi.json',
		needs: 'anyone',
		group,
		summary: 'This description',
		answers: { 200: { description: 'OpenAPI 3.1', type: 'application/json' } },
		handle: async () => json(openApi(all()))
	})
];
