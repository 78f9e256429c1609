/**
 * Tables that came in, by the name that somebody gave them: what each of their columns was taken to mean, so that the
 * next file with the same headings is matched at once. What a column means may be gone by then (`exchange/table/kept.ts`
 * says so); nothing of a table is kept but its headings.
 */
import { label, LIMITS, memberIdSchema, nameSchema } from './basic-schema';
import { keptLogSchema } from './log-schema';
import { z } from './zod';

/** As the file writes it; empty where it writes none. */
const heading = z.string().check(z.maxLength(LIMITS.label));

/** Numbers or choices, with the unit and the signs of the whole column. */
const valueColumnSchema = z.strictObject({
	heading,
	is: z.literal('value'),
	scenario: nameSchema,
	/** Left out: a column of the table names it in each row, or it is one for all rows. */
	quantity: z.optional(nameSchema),
	/** Of which member the column is, where it stands for one. */
	member: z.optional(z.strictObject({ of: nameSchema, id: memberIdSchema })),
	/** As tables write it; left out, it is the quantity's own. */
	unit: z.optional(z.string().check(z.maxLength(80))),
	decimal: z.optional(z.enum(['.', ','])),
	/** Whether 05/06/2027 is a day of June. */
	day_first: z.optional(z.boolean())
});

export const keptColumnSchema = z.discriminatedUnion('is', [
	z.strictObject({ heading, is: z.enum(['nothing', 'quantity', 'members', 'unit']) }),
	/** Which member of a set or an axis a row is about, and what one that is new is called. */
	z.strictObject({ heading, is: z.enum(['member', 'label']), of: nameSchema }),
	valueColumnSchema,
	/** Of a log: the date of each row, with or without a time. */
	z.strictObject({ heading, is: z.literal('date'), day_first: z.optional(z.boolean()) }),
	/** Of a log: numbers that are summed, in this unit. */
	z.strictObject({
		heading,
		is: z.literal('number'),
		unit: z.optional(z.string().check(z.maxLength(80))),
		decimal: z.optional(z.enum(['.', ',']))
	})
]);
export type KeptColumn = z.infer<typeof keptColumnSchema>;

/** Which members of two sets go together; columns are named by their place in the list, from 0. */
export const keptPairsSchema = z.strictObject({
	relation: nameSchema,
	/** Which names the member of the first set, and of the second; left out, the headings of the others do. */
	first: z.optional(z.int().check(z.nonnegative())),
	second: z.optional(z.int().check(z.nonnegative())),
	/** Of marks beside two that name members; left out, every row is a pair. */
	mark: z.optional(z.int().check(z.nonnegative()))
});

export const keptTableSchema = z.strictObject({
	title: label.check(z.minLength(1)),
	/** The quantity of every row, where neither a row nor a column names one. */
	quantity: z.optional(nameSchema),
	/** Sets, or axes, whose member is one for all rows, and asked for with each file. */
	all: z.optional(z.array(nameSchema).check(z.minLength(1), z.maxLength(20))),
	columns: z.array(keptColumnSchema).check(z.minLength(1), z.maxLength(1000)),
	/** The table is a log, and its rows are summed. */
	log: z.optional(keptLogSchema),
	/** The table says which members go together, and its columns hold nothing else. */
	pairs: z.optional(keptPairsSchema)
});
export type KeptTable = z.infer<typeof keptTableSchema>;

export const keptTablesSchema = z.array(keptTableSchema).check(z.maxLength(200));
