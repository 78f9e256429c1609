/**
 * What is shown first: the strip of facts, and the starting views of those who look for different things.
 * That the quantities and pictures named here exist is checked by `consistency/front.ts`.
 */
import { label, LIMITS, memberIdSchema, nameSchema } from './basic-schema';
import { z } from './zod';

/** Text in which {name} is replaced by that quantity's value with its unit. */
const template = z.string().max(LIMITS.label);

export const factSchema = z.strictObject({
	quantity: nameSchema,
	title: template,
	/** A line below the figure. */
	below: template.optional(),
	/** Words beside the figure instead of its unit: "years to pay back". */
	beside: template.optional(),
	/** The base (when left out), or the scenario in hand. */
	of: z.enum(['base', 'in_hand']).optional(),
	/** Shown instead of `below` where the quantity has no answer. */
	without: template.optional()
});
export type Fact = z.infer<typeof factSchema>;
const facts = z.array(factSchema).max(4);

/** What the first screen says in its strip. */
export const frontSchema = z.strictObject({
	/** The set one of whose members is the subject: a quantity per this set is shown for that member. */
	subject: nameSchema.optional(),
	first_subject: memberIdSchema.optional(),
	facts
});

/** One thing that a starting view shows. */
export const findingSchema = z.discriminatedUnion('kind', [
	z.strictObject({
		kind: z.literal('figures'),
		title: template,
		/** Several of one set beside each other, single ones below each other. */
		quantities: z.array(nameSchema).min(1).max(16),
		/** The base (when left out) with what the scenario in hand changes, or that scenario alone. */
		of: z.enum(['base', 'in_hand']).optional()
	}),
	/** The first of the workbook's pictures of that kind. */
	z.strictObject({ kind: z.literal('picture'), picture: z.string().max(LIMITS.name) })
]);
export type Finding = z.infer<typeof findingSchema>;

export const startSchema = z.strictObject({
	id: nameSchema,
	/** Who starts here: "Manager". */
	title: label,
	note: label.optional(),
	/** In place of those of the front. */
	facts: facts.optional(),
	findings: z.array(findingSchema).max(16)
});
export type Start = z.infer<typeof startSchema>;
