/** A study with its fields in the order in which the schema declares them, however deep: see `save.ts`. */
import { studySchema, type Study } from './study-schema';
import { z } from './zod';

export const orderedStudy = (study: Study): Study => ordered(studySchema, study) as Study;

function ordered(schema: unknown, value: unknown): unknown {
	if (typeof value !== 'object' || value === null) return value;
	if (schema instanceof z.ZodMiniOptional) return ordered(schema.def.innerType, value);
	if (schema instanceof z.ZodMiniArray)
		return (value as unknown[]).map((entry) => ordered(schema.def.element, entry));
	if (schema instanceof z.ZodMiniDiscriminatedUnion) {
		const { kind } = value as { readonly kind?: unknown };
		const fits = schema.def.options.find(
			(option) => option instanceof z.ZodMiniObject && kindOf(option) === kind
		);
		return fits ? ordered(fits, value) : value;
	}
	if (!(schema instanceof z.ZodMiniObject)) return value;
	const object = value as Record<string, unknown>;
	return Object.fromEntries(
		Object.entries(schema.shape).flatMap(([field, inner]) =>
			Object.hasOwn(object, field) && object[field] !== undefined
				? [[field, ordered(inner, object[field])] as const]
				: []
		)
	);
}

function kindOf({ shape }: z.ZodMiniObject): unknown {
	const { kind } = shape;
	return kind instanceof z.ZodMiniLiteral ? kind.def.values[0] : undefined;
}
