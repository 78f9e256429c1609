/** What studies of several kinds are made of: cells, ranges, distributions, targets, and the last run. */
import { label, memberIdSchema, nameSchema, note } from './basic-schema';
import { z } from './zod';

export const STUDY_LIMITS = {
	studies: 200,
	inputs: 500,
	groups: 60,
	cases: 8,
	draws: 1_000_000,
	data: 100_000,
	steps: 61,
	options: 20,
	alternatives: 60,
	samples: 1_000_000,
	headline: 12
} as const;

/** The members of one cell, axis by axis. */
const members = z.array(memberIdSchema).check(z.maxLength(5));
/** Which cells of an input move together: null for every member along that axis; all of them when left out. */
const someMembers = z.array(z.nullable(memberIdSchema)).check(z.maxLength(5));

/** An input, or some of its cells. */
export const cellsOf = { quantity: nameSchema, members: z.optional(someMembers) };
/** The one value that a study asks about. */
export const resultOf = { quantity: nameSchema, members: z.optional(members) };

/** Put in place of the entered value, multiplied with it, or added to it. */
export const modeSchema = z.enum(['set', 'scale', 'add']);
export type Mode = z.infer<typeof modeSchema>;

export const headlineSchema = z.strictObject({
	label,
	/** Null: the result had no answer. */
	value: z.nullable(z.number()),
	unit: z.optional(z.string().check(z.maxLength(80)))
});
/** The last run: a mark of the inputs, formulas and settings that it stood on, and what it found. */
export const ranSchema = z.strictObject({
	stood_on: z.string().check(z.maxLength(64)),
	headline: z.array(headlineSchema).check(z.maxLength(STUDY_LIMITS.headline))
});
export type Ran = z.infer<typeof ranSchema>;

/** Where random numbers begin. */
export const seed = z.int().check(z.gte(0), z.lte(4294967295));

/** An input over a range in equal steps. */
export const rangedInputSchema = z.strictObject({
	...cellsOf,
	label: z.optional(label),
	mode: modeSchema,
	from: z.number(),
	to: z.number()
});
export type RangedInput = z.infer<typeof rangedInputSchema>;

export const distributionSchema = z.discriminatedUnion('kind', [
	z.strictObject({
		kind: z.literal('triangular'),
		min: z.number(),
		likely: z.number(),
		max: z.number()
	}),
	/** The beta shape with weight 4 on the likely value. */
	z.strictObject({ kind: z.literal('pert'), min: z.number(), likely: z.number(), max: z.number() }),
	z.strictObject({ kind: z.literal('normal'), mean: z.number(), sd: z.number() }),
	/** `sd_log` is the standard deviation of the natural logarithm. */
	z.strictObject({ kind: z.literal('lognormal'), median: z.number(), sd_log: z.number() }),
	z.strictObject({ kind: z.literal('uniform'), min: z.number(), max: z.number() }),
	z.strictObject({
		kind: z.literal('discrete'),
		values: z
			.array(z.strictObject({ value: z.number(), weight: z.number() }))
			.check(z.minLength(1), z.maxLength(1000))
	}),
	/** Measured values, each as likely as the others. */
	z.strictObject({
		kind: z.literal('data'),
		values: z.array(z.number()).check(z.minLength(1), z.maxLength(STUDY_LIMITS.data))
	})
]);
export type Distribution = z.infer<typeof distributionSchema>;

export const targetSchema = z.union([
	z.strictObject({ at_least: z.number() }),
	z.strictObject({ at_most: z.number() })
]);
export type Target = z.infer<typeof targetSchema>;

/** What every study has: who it is, and the result it asks about. */
export const head = {
	name: nameSchema,
	title: label,
	note: z.optional(note),
	/** Whether programmes are planned anew for whatever the study puts in; left out: they are, but not in draws of risk. */
	plans: z.optional(z.enum(['follow', 'keep']))
};
