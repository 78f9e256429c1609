/**
 * The JSON Schema of a workbook file, for text editors, printed from the one Zod schema.
 */
import { VERSION, workbookSchema } from './schema';
import { z } from './zod';

/** Names the format and its version; nothing is fetched from there. */
export const SCHEMA_ID = `urn:metrewright:workbook:${VERSION}`;

export function workbookJsonSchema(): Record<string, unknown> {
	const { $schema, ...rest } = z.toJSONSchema(workbookSchema, { target: 'draft-2020-12' });
	return {
		$schema,
		$id: SCHEMA_ID,
		title: 'Metrewright workbook',
		description:
			'Sets, relations, quantities with inputs or formulas, and scenarios. Names must exist and units must parse as well; opening the file checks that.',
		...rest
	};
}
