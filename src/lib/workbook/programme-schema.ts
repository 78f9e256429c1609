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

const names = (most: number) => z.array(nameSchema).check(z.maxLength(most));

export const programmeSchema = z.strictObject({
	name: nameSchema,
	title: label,
	note: z.optional(note),
	/** Sets for each of whose members it is solved apart: "plan_year". */
	each: z.optional(names(3)),
	/** The objective: a quantity per the sets of `each`. One of the two. */
	maximise: z.optional(nameSchema),
	minimise: z.optional(nameSchema),
	/** Inputs that are chosen where nobody entered a value; their ranges are bounds. */
	decisions: names(20).check(z.minLength(1)),
	/** Yes/no quantities that must hold: comparisons of two sides, or several joined by AND. */
	constraints: names(60),
	/** By the quantity that is filled with it: the constraint of whose next unit it is the worth. */
	shadow_prices: z.optional(z.record(nameSchema, nameSchema)),
	/** Kept, and not solved. */
	off: z.optional(z.boolean())
});
export type Programme = z.infer<typeof programmeSchema>;

export const programmesSchema = z.array(programmeSchema).check(z.maxLength(12));

/** A plan: what a programme decided for a scenario. */
export const programmePlanSchema = z.strictObject({
	programme: nameSchema,
	scenario: nameSchema,
	/** Of the derived programme that it is the best answer to. */
	digest: z.string().check(z.maxLength(LIMITS.name)),
	/** The objective, over all members of `each`. */
	objective: z.number(),
	/** The day since which it is kept as it stands, whatever changes; left out: it follows. */
	kept: z.optional(z.iso.date()),
	/** By quantity, in its own unit, sparse: a decision that is not written is 0. */
	values: z.array(z.strictObject({ quantity: nameSchema, value: valuesSchema }))
});
export type ProgrammePlan = z.infer<typeof programmePlanSchema>;

export const programmePlansSchema = z
	.array(programmePlanSchema)
	.check(z.maxLength(12 * LIMITS.scenarios));
