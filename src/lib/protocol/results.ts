/** What an evaluation answers with: values with their units, by member where there are several. Types alone go to the browser. */
import { z } from '$lib/workbook/zod';

/** A number, a yes/no, a member's id, or why there is none; by member where a quantity has several values. */
const values = z.unknown();

const quantity = z.looseObject({
	unit: z.optional(z.string()),
	per: z.optional(z.array(z.string())),
	/** One of the two. */
	value: z.optional(values),
	values: z.optional(values)
});

/** What the values of a scenario stand on, where a programme decides. */
const planState = z.strictObject({
	programme: z.string(),
	/** "current": it answers what the workbook says; "stale": it does not, and no better one was found; "none": there is none. */
	plan: z.enum(['current', 'kept', 'stale', 'none']),
	/** Why there is no current one. */
	reason: z.optional(z.string())
});
export type PlanState = z.infer<typeof planState>;

export const evaluatedSchema = z.strictObject({
	revision: z.int().check(z.minimum(1)),
	scenarios: z.array(
		z.strictObject({
			id: z.string(),
			quantities: z.record(z.string(), quantity),
			plans: z.optional(z.array(planState))
		})
	)
});
export type Evaluated = z.infer<typeof evaluatedSchema>;

/** Nothing but this: an outsider to the costs sees no note, formula, range, reason or scenario. */
export const openQuantitySchema = z.strictObject({
	name: z.string(),
	label: z.string(),
	unit: z.optional(z.string()),
	per: z.optional(z.array(z.string())),
	value: z.optional(values),
	values: z.optional(values)
});
export type OpenQuantity = z.infer<typeof openQuantitySchema>;

export const openSchema = z.strictObject({
	revision: z.int().check(z.minimum(1)),
	title: z.string(),
	invented: z.optional(z.boolean()),
	/** The values stand on a plan that is not the newest. */
	stale: z.optional(z.boolean()),
	quantities: z.array(openQuantitySchema),
	sets: z.array(
		z.strictObject({
			name: z.string(),
			label: z.string(),
			members: z.array(z.strictObject({ id: z.string(), label: z.optional(z.string()) }))
		})
	)
});
export type OpenValues = z.infer<typeof openSchema>;
