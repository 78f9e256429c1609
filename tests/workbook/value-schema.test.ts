import fc from 'fast-check';
import { expect, it } from 'vitest';
import { memberIdSchema } from '$lib/workbook/basic-schema';
import { scalarSchema, valuesSchema } from '$lib/workbook/value-schema';
import { z } from '$lib/workbook/zod';

/** What a tree of values is, said once more and walked throughout. */
const walked: z.ZodMiniType<unknown> = z.lazy(() =>
	z.union([scalarSchema, z.record(memberIdSchema, walked)])
);

const key = fc.oneof(
	fc.constantFrom('PX15B', '5x24', ' led', "o'clock", '', 'x'.repeat(64), 'x'.repeat(65), 'a\nb'),
	fc.string({ maxLength: 6 }).filter((name) => name !== '__proto__')
);
const leaf = fc.oneof(
	fc.double(),
	fc.boolean(),
	fc.string({ maxLength: 70 }),
	fc.constantFrom(null, undefined, NaN, Infinity, new Date(0), [1], Symbol.iterator)
);
const tree = fc.letrec((tie) => ({
	value: fc.oneof({ maxDepth: 4 }, leaf, fc.dictionary(key, tie('value'), { maxKeys: 4 }))
})).value;

it('takes and refuses what a walk through the whole tree does, and hands on what it was given', () => {
	fc.assert(
		fc.property(tree, (value) => {
			const quick = valuesSchema.safeParse(value);
			const slow = walked.safeParse(value);
			expect(quick.success).toBe(slow.success);
			expect(quick.data).toEqual(slow.data);
			expect(quick.error?.issues).toEqual(slow.error?.issues);
		}),
		{ numRuns: 2000 }
	);
});
