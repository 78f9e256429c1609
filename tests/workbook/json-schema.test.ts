import { describe, expect, it } from 'vitest';
import { SCHEMA_ID, workbookJsonSchema } from '$lib/workbook/json-schema';
import { VERSION } from '$lib/workbook/schema';
import { wordsFor } from '$lib/workbook/schema-words';

interface Shape {
	readonly [keyword: string]: unknown;
	readonly description?: string;
	readonly properties?: Readonly<Record<string, Shape>>;
}

describe('the JSON Schema', () => {
	const schema = workbookJsonSchema();

	it('names itself, its draft and the version of the file', () => {
		expect(schema).toMatchObject({
			$schema: 'https://json-schema.org/draft/2020-12/schema',
			$id: SCHEMA_ID,
			title: 'Metrewright workbook'
		});
		expect(SCHEMA_ID).toContain(String(VERSION));
	});

	it('requires what a workbook needs and forbids what none has', () => {
		expect(schema).toMatchObject({
			type: 'object',
			required: ['format', 'version', 'title', 'sets', 'sheets', 'scenarios'],
			additionalProperties: false,
			properties: { format: { const: 'metrewright' }, version: { const: VERSION } }
		});
	});

	it('describes nested values by reference to themselves, not without end', () => {
		const text = JSON.stringify(schema, (key, value: unknown) =>
			key === 'description' && typeof value === 'string' ? undefined : value
		);
		expect(text).toContain('"$ref"');
		expect(text.length).toBeLessThan(70_000);
	});

	it('is plain JSON', () => {
		expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
	});

	it('says of every field what it is, in a sentence', () => {
		const without: string[] = [];
		let fields = 0;
		const walk = (shape: Shape, way: string) => {
			for (const [name, field] of Object.entries(shape.properties ?? {})) {
				fields++;
				if (!/^\p{Lu}.*[.]$/su.test(field.description ?? '')) without.push(`${way}.${name}`);
				walk(field, `${way}.${name}`);
			}
			for (const [keyword, inner] of Object.entries(shape))
				if (keyword !== 'properties' && typeof inner === 'object' && inner !== null)
					for (const one of Array.isArray(inner) ? inner : [inner])
						if (typeof one === 'object' && one !== null) walk(one as Shape, way);
		};
		walk(schema as Shape, '');
		expect(without).toEqual([]);
		expect(fields).toBeGreaterThan(400);
	});

	it('tells apart fields of one name by where they stand', () => {
		expect(wordsFor(['sheets', 'quantities', 'range', 'max'])).toBe(
			'The greatest value permitted.'
		);
		expect(wordsFor(['studies(risk)', 'inputs', 'distribution(pert)', 'max'])).toBe(
			'The greatest value.'
		);
		expect(wordsFor(['pictures(week)', 'facts'])).toContain('below the week');
		expect(wordsFor(['starts', 'facts'])).toContain('in place of those of the front');
		expect(wordsFor(['sheets', 'quantities', 'title'])).toBeUndefined();
	});
});
