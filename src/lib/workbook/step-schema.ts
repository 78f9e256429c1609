/**
 * The first hour of a plant's own workbook, step by step, as the workbook that it is begun from asks for it. A step outlives
 * what it names: a quantity, set or relation that is gone is passed over.
 */
import { label, memberIdSchema, nameSchema, note } from './basic-schema';
import { z } from './zod';

export const stepSchema = z.strictObject({
	title: label,
	/** What to have at hand. */
	about: z.optional(note),
	/** The set whose members are listed: rows of a table, its quantities the columns. */
	set: z.optional(nameSchema),
	/** Inputs that are asked for; those per the set at each of its members. */
	quantities: z.optional(z.array(nameSchema).check(z.minLength(1), z.maxLength(20))),
	/** The relation of two sets whose pairs are ticked. */
	relation: z.optional(nameSchema),
	/** Figures that follow, to be looked at beside what was entered. */
	compare: z.optional(z.array(nameSchema).check(z.minLength(1), z.maxLength(20)))
});
export type Step = z.infer<typeof stepSchema>;
export const stepsSchema = z.array(stepSchema).check(z.maxLength(20));

/** What of a set a workbook that is begun from this one takes over. */
export const ownSchema = z.strictObject({
	/** The member of the shipped workbook that stands for all until the plant's own are named. */
	like: memberIdSchema,
	/** What it is called there. */
	first: memberIdSchema,
	/** Numbers per this set by which the shipped member that is nearest to a new one is found. */
	near: z.optional(z.array(nameSchema).check(z.minLength(1), z.maxLength(6)))
});
