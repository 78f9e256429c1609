/**
 * Studies as a workbook keeps them: the question and its settings, never the draws. What the last run
 * found is kept as a few headline numbers beside the mark of what it stood on (`ran`), so that a study
 * can say that it is out of date.
 *
 * Shapes only. Whether a range is one is for `consistency/studies.ts`; that a quantity or a scenario is
 * still there is for `study-gaps.ts`, because a study outlives what it asks about.
 */
import { label, memberIdSchema, nameSchema, note } from './basic-schema';
import { changeSchema } from './value-schema';
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
const cellsOf = { quantity: nameSchema, members: z.optional(someMembers) };
/** The one value that a study asks about. */
const resultOf = { quantity: nameSchema, members: z.optional(members) };

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

const seed = z.int().check(z.gte(0), z.lte(4294967295));

export const bridgeGroupSchema = z.strictObject({
	label,
	/** The changes that go as one step; all others go by quantity. */
	changes: z.array(z.strictObject(cellsOf)).check(z.minLength(1), z.maxLength(STUDY_LIMITS.inputs))
});
export type BridgeGroup = z.infer<typeof bridgeGroupSchema>;

/** An input swung between two values (set), factors (scale) or amounts (add). */
export const swingSchema = z.strictObject({
	...cellsOf,
	label: z.optional(label),
	mode: modeSchema,
	low: z.number(),
	high: z.number()
});
export type Swing = z.infer<typeof swingSchema>;

/** Several inputs moved at once: a downside or an upside with a name. */
export const studyCaseSchema = z.strictObject({
	label,
	moves: z
		.array(z.strictObject({ ...cellsOf, mode: modeSchema, value: z.number() }))
		.check(z.maxLength(STUDY_LIMITS.inputs))
});
export type StudyCase = z.infer<typeof studyCaseSchema>;

/** An input over a range in equal steps. */
export const rangedInputSchema = z.strictObject({
	...cellsOf,
	label: z.optional(label),
	mode: modeSchema,
	from: z.number(),
	to: z.number()
});
export type RangedInput = z.infer<typeof rangedInputSchema>;
export const mapAxisSchema = z.strictObject({
	...rangedInputSchema.shape,
	/** How many values, both ends included. */
	steps: z.int().check(z.gte(2), z.lte(STUDY_LIMITS.steps))
});
export type MapAxis = z.infer<typeof mapAxisSchema>;

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

/** An input that is not known for sure; its label is what correlations call it. */
export const riskInputSchema = z.strictObject({
	label,
	...cellsOf,
	mode: modeSchema,
	distribution: distributionSchema,
	/** Where the spread comes from; a guess says so. */
	note: z.optional(note)
});
export type RiskInput = z.infer<typeof riskInputSchema>;

/** Rank correlation of two inputs of the study, by their labels. */
export const correlationSchema = z.strictObject({
	between: z.tuple([label, label]),
	rank: z.number().check(z.gte(-1), z.lte(1))
});
export type Correlation = z.infer<typeof correlationSchema>;

export const targetSchema = z.union([
	z.strictObject({ at_least: z.number() }),
	z.strictObject({ at_most: z.number() })
]);
export type Target = z.infer<typeof targetSchema>;

/** A result that a combination must not pass. */
export const limitSchema = z.strictObject({
	...resultOf,
	label: z.optional(label),
	bound: targetSchema
});
export type Limit = z.infer<typeof limitSchema>;

export const optionSchema = z.strictObject({
	label,
	alternatives: z
		.array(
			z.strictObject({
				label,
				changes: z.array(changeSchema).check(z.maxLength(STUDY_LIMITS.inputs))
			})
		)
		.check(z.minLength(1), z.maxLength(STUDY_LIMITS.alternatives))
});
export type StudyOption = z.infer<typeof optionSchema>;

/** What every study has: who it is, and the result it asks about. */
const head = {
	name: nameSchema,
	title: label,
	note: z.optional(note),
	/** Whether programmes are planned anew for whatever the study puts in; left out: they are, but not in draws of risk. */
	plans: z.optional(z.enum(['follow', 'keep']))
};

export const bridgeStudySchema = z.strictObject({
	...head,
	kind: z.literal('bridge'),
	...resultOf,
	from: nameSchema,
	to: nameSchema,
	groups: z.optional(z.array(bridgeGroupSchema).check(z.maxLength(STUDY_LIMITS.groups))),
	/** Orders drawn where there are too many groups to take them all. */
	samples: z.optional(z.int().check(z.gte(2), z.lte(STUDY_LIMITS.samples))),
	seed: z.optional(seed),
	ran: z.optional(ranSchema)
});
export const sensitivityStudySchema = z.strictObject({
	...head,
	kind: z.literal('sensitivity'),
	...resultOf,
	scenario: nameSchema,
	/** Each over its own range … */
	inputs: z.optional(z.array(swingSchema).check(z.maxLength(STUDY_LIMITS.inputs))),
	/** … or every number that the result stands on, by the same percentage. */
	all: z.optional(z.strictObject({ percent: z.number().check(z.positive(), z.lte(100)) })),
	cases: z.optional(z.array(studyCaseSchema).check(z.maxLength(STUDY_LIMITS.cases))),
	ran: z.optional(ranSchema)
});
export const mapStudySchema = z.strictObject({
	...head,
	kind: z.literal('map'),
	...resultOf,
	scenario: nameSchema,
	across: mapAxisSchema,
	down: mapAxisSchema,
	ran: z.optional(ranSchema)
});
export const breakEvenStudySchema = z.strictObject({
	...head,
	kind: z.literal('break_even'),
	...resultOf,
	scenario: nameSchema,
	input: rangedInputSchema,
	target: z.number(),
	ran: z.optional(ranSchema)
});
export const riskStudySchema = z.strictObject({
	...head,
	kind: z.literal('risk'),
	...resultOf,
	scenario: nameSchema,
	/** Another scenario on the same draws. */
	compare: z.optional(nameSchema),
	inputs: z.array(riskInputSchema).check(z.maxLength(STUDY_LIMITS.inputs)),
	correlations: z.optional(z.array(correlationSchema).check(z.maxLength(2000))),
	draws: z.int().check(z.gte(1), z.lte(STUDY_LIMITS.draws)),
	seed,
	target: z.optional(targetSchema),
	ran: z.optional(ranSchema)
});
export const optimiseStudySchema = z.strictObject({
	...head,
	kind: z.literal('optimise'),
	...resultOf,
	scenario: nameSchema,
	direction: z.enum(['highest', 'lowest']),
	options: z.array(optionSchema).check(z.maxLength(STUDY_LIMITS.options)),
	limits: z.optional(z.array(limitSchema).check(z.maxLength(20))),
	ran: z.optional(ranSchema)
});

export const studySchema = z.discriminatedUnion('kind', [
	bridgeStudySchema,
	sensitivityStudySchema,
	mapStudySchema,
	breakEvenStudySchema,
	riskStudySchema,
	optimiseStudySchema
]);
export type Study = z.infer<typeof studySchema>;
export type StudyKind = Study['kind'];
export type StudyOf<K extends StudyKind> = Extract<Study, { kind: K }>;

export const studiesSchema = z.array(studySchema).check(z.maxLength(STUDY_LIMITS.studies));
