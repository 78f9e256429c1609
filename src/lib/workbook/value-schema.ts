/** Entered values as a file holds them, and what a scenario or a study changes of them. */
import { isMemberId, LIMITS, memberIdSchema, nameSchema, note } from './basic-schema';
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
export const valuesSchema: z.ZodMiniType<Values> = sparingly(
	z.lazy(() => z.union([scalarSchema, z.record(memberIdSchema, valuesSchema)])),
	isTreeOfValues
);

/**
 * The same schema, walked only where something does not fit. Trees of values are most of a workbook and of every plan
 * that is put into it, and to look whether one fits takes a thirtieth of what it takes to say why not.
 */
export function sparingly<T extends z.ZodMiniType>(
	schema: T,
	fits: (value: unknown) => boolean
): T {
	const walk = schema._zod.run;
	schema._zod.run = (payload, context) => (fits(payload.value) ? payload : walk(payload, context));
	return schema;
}

export function isScalar(value: unknown): value is Scalar {
	if (typeof value === 'number') return Number.isFinite(value);
	if (typeof value === 'string') return value.length <= LIMITS.name;
	return typeof value === 'boolean' || value === null;
}

function isTreeOfValues(value: unknown): value is Values {
	if (typeof value !== 'object' || value === null) return isScalar(value);
	const kind: unknown = Object.getPrototypeOf(value);
	if (kind !== Object.prototype && kind !== null) return false;
	return Object.entries(value).every(([id, inner]) => isMemberId(id) && isTreeOfValues(inner));
}

export const changeSchema = z.strictObject({
	quantity: nameSchema,
	/** As `value` of a quantity, but sparse: what is left out follows the parent; null clears the value. */
	value: valuesSchema,
	note: z.optional(note)
});
export type Change = z.infer<typeof changeSchema>;
