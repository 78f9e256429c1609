/** The shape of a line of a change list, as answers hand it out; what it means stands in `workbook/compare/change.ts`. */
import type { Change, EntryList, PartName } from '$lib/workbook/compare/change';
import { ENTRY_WORDS, PART_WORDS } from '$lib/workbook/compare/change-words';
import { QUANTITY_FIELDS } from '$lib/workbook/quantity-words';
import { z } from '$lib/workbook/zod';

const scalar = z.union([z.number(), z.string(), z.boolean(), z.null()]);
const text = z.string();
const count = z.int();
const scenario = z.exactOptional(text);
const lists = z.enum(Object.keys(ENTRY_WORDS) as EntryList[]);
const inner = z.enum(['sets', 'relations']);
const parts = z.enum(Object.keys(PART_WORDS) as PartName[]);
const listed = { list: lists, of: z.exactOptional(text) };
const line = <const Kind extends string, Shape extends object>(kind: Kind, shape: Shape) =>
	z.strictObject({ kind: z.literal(kind), ...shape });

export const changeSchema = z.discriminatedUnion('kind', [
	line('value', {
		label: text,
		at: z.array(text),
		scenario,
		was: scalar,
		now: scalar,
		unit: z.exactOptional(text),
		shown: z.exactOptional(z.enum(['date', 'year'])),
		step: z.exactOptional(
			z.strictObject({ from: z.string(), isShare: z.exactOptional(z.literal(true)) })
		),
		inherits: z.exactOptional(z.literal(true))
	}),
	line('values', { labels: z.array(text), count, scenario }),
	line('quantity_added', { label: text, sheet: text }),
	line('quantity_moved', { label: text, sheet: text }),
	line('quantity_removed', { label: text }),
	line('quantity_renamed', { from: text, to: text }),
	line('quantity_changed', { label: text, fields: z.array(z.enum(QUANTITY_FIELDS)) }),
	line('added', { ...listed, name: text }),
	line('removed', { ...listed, name: text }),
	line('changed', { ...listed, name: text }),
	line('renamed', { ...listed, from: text, to: text }),
	line('reordered', listed),
	line('list_changed', listed),
	line('many_changed', { list: inner, of: text, count }),
	line('title', { was: text, now: text }),
	line('part', { part: parts }),
	line('plan', { scenario: text, kept: z.nullable(text) }),
	line('begun', { title: text }),
	line('more', { count }),
	line('told', { text })
]) satisfies z.core.$ZodType<Change>;
