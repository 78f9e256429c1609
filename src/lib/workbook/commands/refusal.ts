/** Refuses a part of a workbook that a file could not hold, in the words of the loader. */
import { placeOf } from '../place';
import { shapeProblems } from '../shape';
import type { z } from '../zod';
import { refused, type CommandProblem } from './command';

/** Null where the part fits its schema. */
export function shapeRefusal(
	schema: z.core.$ZodType,
	part: unknown,
	whose: string
): { ok: false; problem: CommandProblem } | null {
	const problem = shapeProblems(schema, part)[0];
	if (!problem) return null;
	const place = problem.path.length > 0 ? `, ${placeOf(part, problem.path)}` : '';
	return refused('wrong-shape', `${whose}${place}: ${problem.message}. ${problem.remedy}`);
}
