/** What a quantity says of its source where some of its values come from one place and the others stay. */
import { LIMITS } from './schema';

const BEFORE = '; other values: ';

/** `said` first, then what was said before of values that stay; `isStale`: what is not to be said any more. */
export const sourceWith = (
	said: string,
	before: string,
	isStale: (words: string) => boolean
): string =>
	[said, ...before.split(BEFORE).filter((words) => words && !isStale(words))]
		.join(BEFORE)
		.slice(0, LIMITS.note);
