/** `schema`: the JSON Schema of a workbook file, for text editors. */
import { workbookJsonSchema } from '$lib/workbook/json-schema';
import type { CommandOutput } from './command-output';

export function schemaCommand(args: readonly string[]): CommandOutput {
	if (args.length > 0) return { out: '', err: 'schema takes nothing after it.', code: 2 };
	return { out: `${JSON.stringify(workbookJsonSchema(), null, '\t')}\n`, code: 0 };
}
