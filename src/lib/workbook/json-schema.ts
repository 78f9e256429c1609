/**
 * The JSON Schema of a workbook file, for text editors, printed from the one Zod schema, with what is said of each field.
 */
import { workbookFileSchema } from './file-schema';
import { VERSION } from './schema';
import { wordsFor } from './schema-words';
import { z } from './zod';

/** Names the format and its version; nothing is fetched from there. */
export const SCHEMA_ID = `urn:metrewright:workbook:${VERSION}`;

/** As far as it is walked. */
interface Shape {
	readonly [keyword: string]: unknown;
	readonly properties?: Readonly<Record<string, Shape>>;
}

export function workbookJsonSchema(): Record<string, unknown> {
	const { $schema, ...rest } = z.toJSONSchema(workbookFileSchema, { target: 'draft-2020-12' });
	return {
		$schema,
		$id: SCHEMA_ID,
		title: 'Metrewright workbook',
		description:
			'Sets, relations, quantities with inputs or formulas, and scenarios. Names must exist and units must parse as well; opening the file checks that.',
		...described(rest as Shape, [])
	};
}

/** The same shape with what is said of each field below it; `way` leads there. */
function described(shape: Shape, way: readonly string[]): Shape {
	const here = withKind(shape, way);
	const entries = Object.entries(shape).map(([keyword, inner]) => {
		if (keyword === 'properties') return [keyword, fields(shape.properties ?? {}, here)];
		if (keyword === '$defs' || typeof inner !== 'object' || inner === null) return [keyword, inner];
		if (Array.isArray(inner)) return [keyword, inner.map((one) => part(one, here))];
		return [keyword, part(inner, here)];
	});
	return Object.fromEntries(entries) as Shape;
}

const part = (inner: unknown, way: readonly string[]): unknown =>
	typeof inner === 'object' && inner !== null ? described(inner as Shape, way) : inner;

function fields(
	properties: Readonly<Record<string, Shape>>,
	way: readonly string[]
): Record<string, Shape> {
	return Object.fromEntries(
		Object.entries(properties).map(([name, shape]) => {
			const there = [...way, name];
			const description = wordsFor(there);
			const inner = described(shape, there);
			return [name, description === undefined ? inner : { description, ...inner }];
		})
	);
}

/** Where the kind decides what belongs, it is part of the way. */
function withKind({ properties }: Shape, way: readonly string[]): readonly string[] {
	const kind = properties?.['kind']?.['const'];
	const last = way.at(-1);
	return typeof kind === 'string' && last !== undefined
		? [...way.slice(0, -1), `${last}(${kind})`]
		: way;
}
