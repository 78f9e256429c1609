/**
 * Figures that are found from what was measured: which line or mean is laid through which points, and which entered
 * quantity each of its figures would replace. Points are kept with their source, so that they can be looked at again.
 */
import { label, LIMITS, memberIdSchema, nameSchema, note } from './basic-schema';
import { z } from './zod';

const unit = z.string().check(z.maxLength(80));

const axisSchema = z.strictObject({ label, unit: z.optional(unit) });

export const fitFormSchema = z.enum(['line', 'proportion', 'ratio', 'mean', 'deviation', 'shares']);
export type FitForm = z.infer<typeof fitFormSchema>;

/** A figure of the fit, and whose place it could take. */
export const fittedSchema = z.strictObject({
	parameter: z.enum(['intercept', 'slope', 'ratio', 'mean', 'deviation', 'share']),
	/** Left out: it is only shown. Of one that follows a formula too. */
	quantity: z.optional(nameSchema),
	/** Members of the quantity's other axes. */
	at: z.optional(
		z.array(z.strictObject({ of: nameSchema, id: memberIdSchema })).check(z.maxLength(5))
	),
	/** It is divided by this: "730 h" makes energy of a month a power. */
	per: z.optional(unit)
});
export type Fitted = z.infer<typeof fittedSchema>;

export const pointSchema = z.strictObject({
	/** Of which member the fit is, where there is one for each. */
	at: z.optional(memberIdSchema),
	/** The member whose share it is. */
	of: z.optional(memberIdSchema),
	/** What belongs together: the year of a month. */
	group: z.optional(label),
	x: z.optional(z.number()),
	y: z.number()
});
export type Point = z.infer<typeof pointSchema>;

export const MOST_POINTS = 5000;

export const calibrationSchema = z.strictObject({
	name: nameSchema,
	title: label.check(z.minLength(1)),
	/** Where the points come from, and how they are got. */
	note: z.optional(note),
	form: fitFormSchema,
	/** The set for each of whose members there is a fit of its own. */
	each: z.optional(nameSchema),
	/** The set over which shares add up to 1. */
	over: z.optional(nameSchema),
	/** Of a line, a proportion and a ratio. */
	x: z.optional(axisSchema),
	y: axisSchema,
	/** What x is today: the points should reach it. */
	today: z.optional(nameSchema),
	gives: z.array(fittedSchema).check(z.minLength(1), z.maxLength(4)),
	data: z.optional(
		z
			.array(
				z.strictObject({
					source: note,
					points: z.array(pointSchema).check(z.minLength(1), z.maxLength(MOST_POINTS))
				})
			)
			.check(z.maxLength(100))
	)
});
export type Calibration = z.infer<typeof calibrationSchema>;

export const calibrationsSchema = z.array(calibrationSchema).check(z.maxLength(LIMITS.scenarios));
