/**
 * What is shown first: the strip of facts, and the starting views of those who look for different things.
 * That the quantities and pictures named here exist is checked by `consistency/front.ts`.
 */
import { label, LIMITS, memberIdSchema, nameSchema } from './basic-schema';
import { z } from './zod';

/** Text in which {name} is replaced by that quantity's value with its unit. */
const template = z.string().check(z.maxLength(LIMITS.label));

export const factSchema = z.strictObject({
	quantity: nameSchema,
	title: template,
	/** A line below the figure. */
	below: z.optional(template),
	/** Words beside the figure instead of its unit: "years to pay back". */
	beside: z.optional(template),
	/** The base (when left out), the scenario in hand, or the one that quotes stand on. */
	of: z.optional(z.enum(['base', 'in_hand', 'quotes'])),
	/** Shown instead of `below` where the quantity has no answer. */
	without: z.optional(template)
});
export type Fact = z.infer<typeof factSchema>;
const facts = z.array(factSchema).check(z.maxLength(4));

/** What the first screen says in its strip. */
export const frontSchema = z.strictObject({
	/** The set one of whose members is the subject: a quantity per this set is shown for that member. */
	subject: z.optional(nameSchema),
	first_subject: z.optional(memberIdSchema),
	facts
});

/** One thing that a starting view shows. */
export const findingSchema = z.discriminatedUnion('kind', [
	z.strictObject({
		kind: z.literal('figures'),
		title: template,
		/** Several of one set beside each other, single ones below each other. */
		quantities: z.array(nameSchema).check(z.minLength(1), z.maxLength(16)),
		/** The base (when left out) with what the scenario in hand changes; that scenario alone, or the one of quotes. */
		of: z.optional(z.enum(['base', 'in_hand', 'quotes']))
	}),
	/** The first of the workbook's pictures of that kind. */
	z.strictObject({
		kind: z.literal('picture'),
		picture: z.string().check(z.maxLength(LIMITS.name))
	})
]);
export type Finding = z.infer<typeof findingSchema>;

export const startSchema = z.strictObject({
	id: nameSchema,
	/** Who starts here: "Manager". */
	title: label,
	note: z.optional(label),
	/** In place of those of the front. */
	facts: z.optional(facts),
	findings: z.array(findingSchema).check(z.maxLength(16))
});
export type Start = z.infer<typeof startSchema>;
