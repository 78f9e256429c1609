/**
 * Programmes: what the workbook decides by itself. One names the inputs that may be chosen, the yes/no quantities that
 * must hold and the quantity that shall be largest or smallest; everything else stays a formula of the workbook.
 *
 * Plans are what was found for them, kept with the workbook so that it evaluates without a solver. A plan is made
 * from the rest, like any other result: two people's are never merged.
 */
import { label, LIMITS, nameSchema, note } from './basic-schema';
import { valuesSchema } from './value-schema';
import { z } from './zod';

const names = (most: number) => z.array(nameSchema).max(most);

export const programmeSchema = z.strictObject({
	name: nameSchema,
	title: label,
	note: note.optional(),
	/** Sets for each of whose members it is solved apart: "plan_year". */
	each: names(3).optional(),
	/** The objective: a quantity per the sets of `each`. One of the two. */
	maximise: nameSchema.optional(),
	minimise: nameSchema.optional(),
	/** Inputs that are chosen where nobody entered a value; their ranges are bounds. */
	decisions: names(20).min(1),
	/** Yes/no quantities that must hold: comparisons of two sides, or several joined by AND. */
	constraints: names(60),
	/** By the quantity that is filled with it: the constraint of whose next unit it is the worth. */
	shadow_prices: z.record(nameSchema, nameSchema).optional(),
	/** Kept, and not solved. */
	off: z.boolean().optional()
});
export type Programme = z.infer<typeof programmeSchema>;

export const programmesSchema = z.array(programmeSchema).max(12);

/** A plan: what a programme decided for a scenario. */
export const programmePlanSchema = z.strictObject({
	programme: nameSchema,
	scenario: nameSchema,
	/** Of the derived programme that it is the best answer to. */
	digest: z.string().max(LIMITS.name),
	/** The objective, over all members of `each`. */
	objective: z.number(),
	/** The day since which it is kept as it stands, whatever changes; left out: it follows. */
	kept: z.iso.date().optional(),
	/** By quantity, in its own unit, sparse: a decision that is not written is 0. */
	values: z.array(z.strictObject({ quantity: nameSchema, value: valuesSchema }))
});
export type ProgrammePlan = z.infer<typeof programmePlanSchema>;

export const programmePlansSchema = z.array(programmePlanSchema).max(12 * LIMITS.scenarios);
