/** Entered values as a file holds them, and what a scenario or a study changes of them. */
import { LIMITS, memberIdSchema, nameSchema, note } from './basic-schema';
import { z } from './zod';

/** A number, yes or no, a member's id; null: nobody entered one. */
export const scalarSchema = z.union([
	z.number(),
	z.boolean(),
	z.string().check(z.maxLength(LIMITS.name)),
	z.null()
]);
export type Scalar = z.infer<typeof scalarSchema>;

/** One scalar, or for a quantity per something an object by member id, nested in the order of `per`. */
export type Values = Scalar | { readonly [member: string]: Values };
export const valuesSchema: z.ZodMiniType<Values> = z.lazy(() =>
	z.union([scalarSchema, z.record(memberIdSchema, valuesSchema)])
);

export const changeSchema = z.strictObject({
	quantity: nameSchema,
	/** As `value` of a quantity, but sparse: what is left out follows the parent; null clears the value. */
	value: valuesSchema,
	note: z.optional(note)
});
export type Change = z.infer<typeof changeSchema>;
