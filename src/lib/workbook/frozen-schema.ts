/**
 * Values that no edit changes: a standard, a budget, the grounds of a decision, as they stood on a day. A copy holds
 * inputs and results with their units, and the formulas of that day to be read beside them.
 *
 * What it names may be gone since: it outlives the quantities and members that it was made of.
 */
import { label, LIMITS, memberIdSchema, nameSchema, note } from './basic-schema';
import { valuesSchema } from './value-schema';
import { z } from './zod';

/** One quantity as it stood. */
export const frozenQuantitySchema = z.strictObject({
	name: nameSchema,
	label,
	/** Left out: a plain number. */
	unit: z.optional(z.string().check(z.maxLength(80))),
	/** The set whose members it chose, of a choice. */
	member_of: z.optional(nameSchema),
	/** As of a quantity. */
	per: z.optional(
		z.array(z.string().check(z.maxLength(2 * LIMITS.name + 2))).check(z.maxLength(5))
	),
	/** Its formula on that day, where it had one for all members. */
	formula: z.optional(z.string().check(z.minLength(1), z.maxLength(LIMITS.formula))),
	/** What had no value is left out. */
	value: z.optional(valuesSchema),
	/** Why the others had none ("not-entered", "no-answer", an error); what is in neither was not there. */
	without: z.optional(valuesSchema)
});
export type FrozenQuantity = z.infer<typeof frozenQuantitySchema>;

/** Members as they were called, so that those that are gone can be told. */
export const frozenSetSchema = z.strictObject({
	name: nameSchema,
	members: z
		.array(z.strictObject({ id: memberIdSchema, label: z.optional(label) }))
		.check(z.maxLength(LIMITS.members))
});

/** What a copy says of itself. */
export const frozenHead = {
	/** What formulas call it: `x[standard_2028]`. */
	id: nameSchema,
	title: label.check(z.minLength(1)),
	note: z.optional(note),
	/** The title of the scenario that it was made of. */
	of: label,
	/** ISO 8601 day. */
	date: z.iso.date(),
	/** Who made it. */
	by: z.optional(label),
	/** Of the base as it was: the title of the scenario that was made the base on that day. */
	decided: z.optional(label),
	/** The revision on the server that it was made from. */
	revision: z.optional(z.int().check(z.gte(1))),
	sets: z.optional(z.array(frozenSetSchema).check(z.maxLength(200)))
};

export const frozenSchema = z.strictObject({
	...frozenHead,
	quantities: z.array(frozenQuantitySchema).check(z.minLength(1), z.maxLength(LIMITS.quantities))
});
export type Frozen = z.infer<typeof frozenSchema>;

export const MOST_FROZEN = 60;
export const frozenListSchema = z.array(frozenSchema).check(z.maxLength(MOST_FROZEN));
