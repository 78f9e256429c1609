/** What every part of the schema is made of: names, labels, notes and how long they may be. */
import { z } from './zod';

/** Longest name, formula and text that a file may hold: far above any real one, low enough to stay quick. */
export const LIMITS = {
	name: 64,
	label: 200,
	note: 4000,
	formula: 8000,
	members: 20000,
	quantities: 5000,
	scenarios: 60
} as const;

/** A letter, then letters, digits or underscores. Reserved words are refused by `consistency.ts`. */
export const nameSchema = z
	.string()
	.check(z.maxLength(LIMITS.name), z.regex(/^\p{L}[\p{L}\p{N}_]*$/u));
/** Any text without quotes, line breaks or leading and trailing space: '5x24', 'PX15B'. */
const MEMBER_ID = /^(?! )[^'"\p{Cc}]+(?<! )$/u;
export const memberIdSchema = z
	.string()
	.check(z.minLength(1), z.maxLength(LIMITS.name), z.regex(MEMBER_ID));
/** The same, said at once. */
export const isMemberId = (id: string): boolean => id.length <= LIMITS.name && MEMBER_ID.test(id);
/** What else people call a thing. No commas, by which its editor tells them apart. */
export const otherNames = z
	.array(z.string().check(z.minLength(1), z.maxLength(80), z.regex(/^(?! )[^,\p{Cc}]+(?<! )$/u)))
	.check(z.minLength(1), z.maxLength(20));
export const label = z.string().check(z.maxLength(LIMITS.label));
export const note = z.string().check(z.maxLength(LIMITS.note));
