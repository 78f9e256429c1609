/**
 * The one description of a workbook file. The JSON Schema for text editors is printed from it.
 *
 * It holds shapes only. What a shape cannot say (that a quantity's sets exist, that a scenario's
 * parent is there) is checked by `consistency.ts`; formulas are proven by the engine.
 */
import { label, LIMITS, memberIdSchema, nameSchema, note } from './basic-schema';
import { frontSchema, startSchema } from './front-schema';
import { pictureSchema } from './picture-schema';
import { programmePlansSchema, programmesSchema } from './programme-schema';
import { studiesSchema } from './study-schema';
import { changeSchema, valuesSchema } from './value-schema';
import { z } from './zod';

export { LIMITS, memberIdSchema, nameSchema } from './basic-schema';
export { frontSchema, startSchema, type Fact, type Finding, type Start } from './front-schema';
export { pictureSchema, type Picture } from './picture-schema';
export type { Programme, ProgrammePlan } from './programme-schema';
export {
	changeSchema,
	scalarSchema,
	valuesSchema,
	type Change,
	type Scalar,
	type Values
} from './value-schema';

export const FORMAT = 'metrewright';
export const VERSION = 3;

const formulaText = z.string().min(1).max(LIMITS.formula);

export const unitDefinitionSchema = z.strictObject({
	symbol: z.string().min(1).max(24),
	label: label.optional(),
	equals: z.string().max(80).optional()
});

export const memberSchema = z.strictObject({
	id: memberIdSchema,
	label: label.optional(),
	/** What NUMBER(set) gives: the calendar year of a year, in the set's `number_unit`. */
	number: z.number().optional(),
	note: note.optional()
});
export type Member = z.infer<typeof memberSchema>;

export const setSchema = z.strictObject({
	name: nameSchema,
	label,
	plural: label.optional(),
	members: z.array(memberSchema).max(LIMITS.members),
	/** The neighbour of the last is the first: hours of the week, months of a standing year. */
	cyclic: z.boolean().optional(),
	/** The unit of the members' numbers. */
	number_unit: z.string().max(80).optional(),
	/** What all members together last: "1 year" for twelve months. SPAN(set) gives it. */
	spans: z.string().max(80).optional(),
	/** A yes/no quantity per this set alone: members for which it says no are absent in that scenario. */
	present: nameSchema.optional(),
	note: note.optional()
});
export type SetDefinition = z.infer<typeof setSchema>;

export const relationSchema = z.strictObject({
	name: nameSchema,
	label: label.optional(),
	sets: z.array(nameSchema).min(2).max(4),
	pairs: z.array(z.array(memberIdSchema).min(2).max(4)),
	note: note.optional()
});
export type Relation = z.infer<typeof relationSchema>;

export const rangeSchema = z.strictObject({
	min: z.number().optional(),
	max: z.number().optional(),
	/** Strictly greater, strictly less. */
	above: z.number().optional(),
	below: z.number().optional()
});
export type Range = z.infer<typeof rangeSchema>;

/** How sure an input is, in the quantity's unit; read by risk studies. */
export const spreadSchema = z.strictObject({
	min: z.number(),
	likely: z.number(),
	max: z.number()
});

export const quantitySchema = z.strictObject({
	name: nameSchema,
	label,
	/** "number" when left out. A yes/no and a choice have no unit. */
	type: z
		.union([z.literal('number'), z.literal('yes_no'), z.strictObject({ member_of: nameSchema })])
		.optional(),
	/** Left out: a plain number, the same as "1". */
	unit: z.string().max(80).optional(),
	/** Sets, or named axes "from: product" where a set is used twice. */
	per: z
		.array(z.string().max(2 * LIMITS.name + 2))
		.max(5)
		.optional(),
	/** Relations that say which of the pairs exist. */
	in: z.array(nameSchema).max(4).optional(),
	/** How its number is read: a date that is kept as days since 1899-12-30; a year, without thousands. */
	shown: z.enum(['date', 'year']).optional(),
	/** An input fixed with the structure: no scenario changes it, and the plan folds it. */
	fixed: z.boolean().optional(),
	/** The entered values, in the quantity's own unit. */
	value: valuesSchema.optional(),
	/** One formula for all members, or one by member of one of its axes; "input" as a case takes the entered value. */
	formula: z
		.union([
			formulaText,
			z.strictObject({ by: nameSchema, cases: z.record(z.string(), formulaText) })
		])
		.optional(),
	/** A yes/no formula: where it says no, the value is absent. */
	where: formulaText.optional(),
	range: rangeSchema.optional(),
	/** Chosen in whole steps of its unit where a programme decides it. */
	whole: z.boolean().optional(),
	/** The quantity must be yes; or, if it is a number, zero within the tolerance (in its own unit). */
	check: z
		.strictObject({ message: note, tolerance: z.number().nonnegative().optional() })
		.optional(),
	/** A caution beside the value wherever this yes/no quantity says yes. */
	caution: z.strictObject({ message: note }).optional(),
	note: note.optional(),
	source: note.optional(),
	/** ISO 8601 day on which the value was found: "2026-11-24". */
	date: z.iso.date().optional(),
	spread: spreadSchema.optional(),
	/** Significant digits on screen; 4 when left out. */
	digits: z.number().int().min(1).max(15).optional(),
	/** Those who may see only what is open see its values, and nothing else of it. */
	open: z.boolean().optional()
});
export type Quantity = z.infer<typeof quantitySchema>;

export const sheetSchema = z.strictObject({
	title: label,
	note: note.optional(),
	/** The quantity whose value stands beside the sheet's title in the contents. */
	headline: nameSchema.optional(),
	quantities: z.array(quantitySchema)
});
export type Sheet = z.infer<typeof sheetSchema>;

export const scenarioSchema = z.strictObject({
	id: nameSchema,
	title: label,
	note: note.optional(),
	/** Null for the base alone. */
	parent: nameSchema.nullable(),
	/** What `x[reference]` reads: the base when left out. */
	against: nameSchema.optional(),
	/** At most one for each quantity. Empty for the base, whose values stand in the quantities. */
	changes: z.array(changeSchema)
});
export type Scenario = z.infer<typeof scenarioSchema>;

export const workbookSchema = z.strictObject({
	$schema: z.string().optional(),
	format: z.literal(FORMAT),
	version: z.literal(VERSION),
	title: z.string().min(1).max(LIMITS.label),
	about: note.optional(),
	/** Its figures are made up, and every screen says so. */
	invented: z.boolean().optional(),
	units: z.array(unitDefinitionSchema).max(200).optional(),
	sets: z.array(setSchema).max(200),
	relations: z.array(relationSchema).max(200).optional(),
	sheets: z.array(sheetSchema).max(200),
	scenarios: z.array(scenarioSchema).min(1).max(LIMITS.scenarios),
	front: frontSchema.optional(),
	/** One for each reader: what they look for first, in their order. Nothing is hidden from anyone. */
	starts: z.array(startSchema).max(12).optional(),
	pictures: z.array(pictureSchema).max(50).optional(),
	studies: studiesSchema.optional(),
	programmes: programmesSchema.optional(),
	plans: programmePlansSchema.optional()
});
export type Workbook = z.infer<typeof workbookSchema>;
