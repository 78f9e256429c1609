/**
 * Studies as a workbook keeps them: the question and its settings, never the draws. What the last run
 * found is kept as a few headline numbers beside the mark of what it stood on (`ran`), so that a study
 * can say that it is out of date.
 *
 * What kinds share stands in `study-shapes.ts`. Whether a range is one is for `consistency/studies.ts`; that
 * a quantity or a scenario is still there is for `study-gaps.ts`, because a study outlives what it asks about.
 */
import { label, nameSchema, note } from './basic-schema';
import { checkRisk } from './risk-study';
import type { StudyParts } from './study-parts';
import {
	cellsOf,
	distributionSchema,
	head,
	modeSchema,
	rangedInputSchema,
	ranSchema,
	resultOf,
	seed,
	STUDY_LIMITS,
	targetSchema
} from './study-shapes';
import { changeSchema } from './value-schema';
import { z } from './zod';

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

export const mapAxisSchema = z.strictObject({
	...rangedInputSchema.shape,
	/** How many values, both ends included. */
	steps: z.int().check(z.gte(2), z.lte(STUDY_LIMITS.steps))
});
export type MapAxis = z.infer<typeof mapAxisSchema>;

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

/** Of each kind: where its settings name scenarios, inputs, results and changes; `study-parts.ts` says how. */
export const STUDY_PARTS: { readonly [K in StudyKind]: StudyParts<StudyOf<K>> } = {
	bridge: { scenarios: ['from', 'to'], named: ['groups.changes'] },
	sensitivity: { scenarios: ['scenario'], moved: ['inputs', 'cases.moves'], ranges: ['inputs'] },
	map: { scenarios: ['scenario'], moved: ['across', 'down'], ranges: ['across', 'down'] },
	break_even: { scenarios: ['scenario'], moved: ['input'], ranges: ['input'] },
	risk: {
		...{ scenarios: ['scenario', 'compare'], moved: ['inputs'] },
		...{ keepsPlans: true, check: checkRisk }
	},
	optimise: {
		scenarios: ['scenario'],
		changes: ['options.alternatives.changes'],
		results: ['limits']
	}
};

/** In the order in which they are offered. */
export const STUDY_KINDS = Object.keys(STUDY_PARTS) as StudyKind[];
