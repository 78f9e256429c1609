/**
 * A paper that can be made of a workbook: which parts it has, in order, and what each shows. What a part needs of its
 * quantities is checked by `picture-parts.ts`; the paper is made in `papers/`.
 */
import { label, nameSchema, note } from './basic-schema';
import { z } from './zod';

/**
 * `case`: the headline figures of cases, by the picture of payback. `changes`: what a scenario changes. `figures`: a row a figure
 * and member, a column a scenario. `table`: a row a member of a set, a column a figure. `assumptions`: figures with source and
 * date. `studies`: what kept studies of these results found. `patterns`: shift patterns, by their picture. `text`: words.
 */
export const PAPER_PARTS = [
	'case',
	'changes',
	'figures',
	'table',
	'assumptions',
	'studies',
	'patterns',
	'text'
] as const;
export type PaperPart = (typeof PAPER_PARTS)[number];

export const paperPictureSchema = z.strictObject({
	kind: z.literal('paper'),
	/** What it is called on the command line. */
	name: nameSchema,
	title: label,
	/** What it is for, where papers are chosen. */
	note: z.optional(label),
	/** What is to be decided, where nobody says. */
	question: z.optional(note),
	sections: z
		.array(
			z.strictObject({
				kind: z.enum(PAPER_PARTS),
				title: label,
				note: z.optional(note),
				/** Of a table: the set whose members are its rows. */
				set: z.optional(nameSchema),
				quantities: z.optional(z.array(nameSchema).check(z.minLength(1), z.maxLength(40))),
				text: z.optional(z.array(note).check(z.minLength(1), z.maxLength(40)))
			})
		)
		.check(z.minLength(1), z.maxLength(30))
});
export type PaperPicture = z.infer<typeof paperPictureSchema>;
export type PaperSection = PaperPicture['sections'][number];
