import { describe, expect, it } from 'vitest';
import { SCHEMA_ID, workbookJsonSchema } from '$lib/workbook/json-schema';
import { VERSION } from '$lib/workbook/schema';

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
		const text = JSON.stringify(schema);
		expect(text).toContain('"$ref"');
		expect(text.length).toBeLessThan(60_000);
	});

	it('is plain JSON', () => {
		expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
	});
});
