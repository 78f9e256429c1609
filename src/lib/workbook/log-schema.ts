/**
 * A table that is a log, one row an event: how its rows are summed by members and dates, and into which quantities. It
 * is kept with what the table's columns mean; columns are named by their place in that list.
 */
import { LIMITS, memberIdSchema, nameSchema } from './basic-schema';
import { z } from './zod';

const column = z.int().check(z.nonnegative());

/** What of a date chooses the member of a set. */
export const dateWaySchema = z.enum([
	'year',
	'year_month',
	'month',
	'iso_week',
	'weekday',
	'day_of_year',
	'day_of_month',
	'hour_of_day',
	'hour_of_week'
]);
export type DateWay = z.infer<typeof dateWaySchema>;

export const logSumSchema = z.strictObject({
	quantity: nameSchema,
	take: z.enum(['sum', 'count', 'average', 'least', 'most', 'deviation', 'share']),
	/** Whose numbers; left out, rows are counted. */
	column: z.optional(column),
	/** What one row is, where rows are counted: "lot". */
	unit: z.optional(z.string().check(z.maxLength(80))),
	/** The sum is divided by that of another column. */
	by_column: z.optional(column),
	/** It is divided by how many of these the log covers. */
	per: z.optional(z.enum(['hour', 'day', 'week', 'month', 'year'])),
	/** The set or axis whose members' shares add up to 1. */
	share_of: z.optional(nameSchema)
});
export type LogSum = z.infer<typeof logSumSchema>;

export const keptLogSchema = z.strictObject({
	scenario: nameSchema,
	/** Sets, or axes, whose member the date of a row chooses. */
	dates: z.optional(
		z.array(z.strictObject({ of: nameSchema, by: dateWaySchema })).check(z.maxLength(20))
	),
	/** Members that hold for every row. */
	always: z.optional(
		z.array(z.strictObject({ of: nameSchema, id: memberIdSchema })).check(z.maxLength(20))
	),
	/** Rows are taken only where this column holds one of these. */
	only: z.optional(
		z.strictObject({
			column,
			values: z
				.array(z.string().check(z.maxLength(LIMITS.label)))
				.check(z.minLength(1), z.maxLength(500))
		})
	),
	/** The period that the log covers: from its first row to its last, or the whole months or years that they lie in. */
	covers: z.optional(z.enum(['rows', 'months', 'years'])),
	/** What becomes of a cell that no row speaks of: it stays (when left out), or is nought. */
	without_rows: z.optional(z.enum(['stay', 'zero'])),
	sums: z.array(logSumSchema).check(z.minLength(1), z.maxLength(50))
});
export type KeptLog = z.infer<typeof keptLogSchema>;
