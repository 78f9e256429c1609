/**
 * Lines of the review list that somebody has ticked off: who, why, and what the line spoke of, so that it comes back
 * when that changes.
 */
import { label, LIMITS, note } from './basic-schema';
import { z } from './zod';

export const tickSchema = z.strictObject({
	/** Of the line: its kind, and the quantity, members and scenario that it is about. */
	id: z.string().check(z.minLength(1), z.maxLength(8 * LIMITS.label)),
	/** A mark of what the line spoke of. */
	of: z.string().check(z.minLength(1), z.maxLength(LIMITS.name)),
	by: label,
	reason: note
});
export type Tick = z.infer<typeof tickSchema>;

export const reviewedSchema = z.array(tickSchema).check(z.maxLength(20_000));
