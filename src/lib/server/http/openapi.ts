/** The interface described in OpenAPI 3.1, printed from the table of routes, so that the two cannot differ. */
import { workbookJsonSchema } from '$lib/workbook/json-schema';
import { z } from '$lib/server/zod';
import { OWN_HEADER } from './guard';
import { PROBLEMS } from './problem';
import type { Needs, Route } from './route';

const WORKBOOK = { $ref: '#/components/schemas/Workbook' };
const PROBLEM = { $ref: '#/components/schemas/Problem' };

export function openApi(routes: readonly Route[]): object {
	const paths: Record<string, Record<string, object>> = {};
	for (const route of routes)
		(paths[route.path] ??= {})[route.method.toLowerCase()] = operation(route);
	return {
		openapi: '3.1.0',
		info: {
			title: 'Metrewright',
			version: '1',
			description:
				'Workbooks with their revisions and results. A save names the revision that it was made from (If-Match); changes that fit together are merged, others are answered with 412 and both versions.',
			license: { name: 'GPL-3.0-only', identifier: 'GPL-3.0-only' }
		},
		servers: [{ url: '/' }],
		paths,
		components: {
			schemas: {
				Workbook: withoutDialect(workbookJsonSchema()),
				Problem: {
					type: 'object',
					description: 'RFC 9457',
					required: ['type', 'title', 'status', 'code', 'detail'],
					properties: {
						type: { type: 'string' },
						title: { type: 'string' },
						status: { type: 'integer' },
						code: { enum: Object.keys(PROBLEMS) },
						detail: { type: 'string' }
					}
				}
			},
			securitySchemes: {
				session: {
					type: 'apiKey',
					in: 'cookie',
					name: 'metrewright',
					description: 'Set by signing in. Over https its name begins with __Host-.'
				},
				token: {
					type: 'http',
					scheme: 'bearer',
					description: 'An API token: works on workbooks alone, as far as its scope goes.'
				}
			}
		}
	};
}

function operation(route: Route): object {
	const names = [...route.path.matchAll(/\{(\w+)\}/g)].map((match) => match[1]!);
	const parameters = [
		...names.map((name) => parameter(name, 'path', true, { type: 'string' })),
		...Object.entries(route.query?.shape ?? {}).map(([name, schema]) =>
			parameter(name, 'query', false, schemaOf(schema as z.ZodType))
		),
		...(route.precondition ? [parameter('If-Match', 'header', true, { type: 'string' })] : []),
		...(route.method === 'GET' ? [] : [parameter(OWN_HEADER, 'header', true, { type: 'string' })])
	];
	const body = route.body && schemaOf(route.body);
	const answers = Object.entries(route.answers).map(([status, { description, schema, type }]) => {
		const media = type ?? (schema ? 'application/json' : null);
		const content = media && {
			content: { [media]: schema ? { schema: schemaOf(schema) } : {} }
		};
		const isProblem = Number(status) >= 400;
		const problem = { content: { 'application/problem+json': { schema: PROBLEM } } };
		return [status, { description, ...(isProblem ? problem : content) }];
	});
	return {
		operationId: `${route.method.toLowerCase()}${route.path.replace(/[^\w]+(\w)?/g, (_all, letter: string | undefined) => letter?.toUpperCase() ?? '')}`,
		summary: route.summary,
		tags: [route.group],
		'x-needs': route.needs,
		security: securityOf(route.needs),
		...(parameters.length > 0 && { parameters }),
		...(body && {
			requestBody: { required: true, content: { 'application/json': { schema: body } } }
		}),
		responses: {
			...Object.fromEntries(answers),
			default: {
				description: 'What went wrong',
				content: { 'application/problem+json': { schema: PROBLEM } }
			}
		}
	};
}

/** Tokens do nothing that concerns people, nor what only owners may. */
function securityOf(needs: Needs): object[] {
	if (needs === 'anyone') return [];
	const byToken = needs !== 'person' && needs !== 'steward' && needs !== 'owner';
	return [{ session: [] }, ...(byToken ? [{ token: [] }] : [])];
}

const parameter = (name: string, place: string, required: boolean, schema: object) => ({
	name,
	in: place,
	required,
	schema
});

const schemaOf = (schema: z.core.$ZodType | 'workbook'): object =>
	schema === 'workbook'
		? WORKBOOK
		: withoutDialect(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }));

/** A description names its dialect once. */
function withoutDialect(schema: object): object {
	const { $schema: _dialect, ...rest } = schema as { $schema?: unknown };
	return rest;
}
