/**
 * The one description of a workbook file. The JSON Schema for text editors is printed from it.
 *
 * It holds shapes only. What a shape cannot say (that a quantity's sets exist, that a scenario's
 * parent is there) is checked by `consistency.ts`; formulas are proven by the engine.
 */
import { label, LIMITS, memberIdSchema, nameSchema, note, otherNames } from './basic-schema';
import { calibrationsSchema } from './calibration-schema';
import { frontSchema, startSchema } from './front-schema';
import { frozenListSchema } from './frozen-schema';
import { pictureSchema } from './picture-schema';
import { programmePlansSchema, programmesSchema } from './programme-schema';
import { letterheadSchema, quotesSchema } from './quote-list-schema';
import { reviewedSchema } from './review-schema';
import { ownSchema, stepsSchema } from './step-schema';
import { studiesSchema } from './study-schema';
import { keptTablesSchema } from './table-schema';
import { changeSchema, valuesSchema } from './value-schema';
import { z } from './zod';

export { LIMITS, memberIdSchema, nameSchema } from './basic-schema';
export type { Calibration } from './calibration-schema';
export type { Frozen, FrozenQuantity } from './frozen-schema';
export { frontSchema, startSchema, type Fact, type Finding, type Start } from './front-schema';
export { pictureSchema, type Picture } from './picture-schema';
export type {
	Grounds,
	KeptQuote,
	Letterhead,
	QuoteAnswers,
	QuoteCall,
	QuoteEntry,
	QuoteItem,
	QuoteState
} from './quote-list-schema';
export type { Programme, ProgrammePlan } from './programme-schema';
export type { Tick } from './review-schema';
export type { Step } from './step-schema';
export type { DateWay, KeptLog, LogSum } from './log-schema';
export type { KeptColumn, KeptTable } from './table-schema';
export {
	changeSchema,
	scalarSchema,
	valuesSchema,
	type Change,
	type Scalar,
	type Values
} from './value-schema';

export const FORMAT = 'metrewright';
export const VERSION = 16;

const formulaText = z.string().check(z.minLength(1), z.maxLength(LIMITS.formula));

export const unitDefinitionSchema = z.strictObject({
	symbol: z.string().check(z.minLength(1), z.maxLength(24)),
	label: z.optional(label),
	equals: z.optional(z.string().check(z.maxLength(80)))
});

export const memberSchema = z.strictObject({
	id: memberIdSchema,
	label: z.optional(label),
	/** What NUMBER(set) gives: the calendar year of a year, in the set's `number_unit`. */
	number: z.optional(z.number()),
	note: z.optional(note),
	/** The member of the shipped workbook whose values it began with: they are typical ones until replaced. */
	like: z.optional(memberIdSchema)
});
export type Member = z.infer<typeof memberSchema>;

export const setSchema = z.strictObject({
	name: nameSchema,
	label,
	plural: z.optional(label),
	members: z.array(memberSchema).check(z.maxLength(LIMITS.members)),
	/** The neighbour of the last is the first: hours of the week, months of a standing year. */
	cyclic: z.optional(z.boolean()),
	/** The unit of the members' numbers. */
	number_unit: z.optional(z.string().check(z.maxLength(80))),
	/** What all members together last: "1 year" for twelve months. SPAN(set) gives it. */
	spans: z.optional(z.string().check(z.maxLength(80))),
	/** Its members are months, one after the other: "2027-04". */
	time: z.optional(z.literal('month')),
	/** A yes/no quantity per this set alone: members for which it says no are absent in that scenario. */
	present: z.optional(nameSchema),
	/** Number inputs per this set that a copy of a member begins without, at 0, unless whoever copies takes them along: its demand. */
	not_copied: z.optional(z.array(nameSchema).check(z.minLength(1), z.maxLength(20))),
	/** Numbers and choices that one more member calls for, entered once or per this set alone, asked where it is put into one scenario alone: its outlay, its speed, the month it runs from. */
	comes_with: z.optional(z.array(nameSchema).check(z.minLength(1), z.maxLength(20))),
	/** Its members are the plant's own: a workbook that is begun from this one has none of them. */
	own: z.optional(ownSchema),
	note: z.optional(note)
});
export type SetDefinition = z.infer<typeof setSchema>;

export const relationSchema = z.strictObject({
	name: nameSchema,
	label: z.optional(label),
	sets: z.array(nameSchema).check(z.minLength(2), z.maxLength(4)),
	pairs: z.array(z.array(memberIdSchema).check(z.minLength(2), z.maxLength(4))),
	note: z.optional(note)
});
export type Relation = z.infer<typeof relationSchema>;

export const rangeSchema = z.strictObject({
	min: z.optional(z.number()),
	max: z.optional(z.number()),
	/** Strictly greater, strictly less. */
	above: z.optional(z.number()),
	below: z.optional(z.number())
});
export type Range = z.infer<typeof rangeSchema>;

/** Where numbers usually lie: softer than the range, which refuses. */
export const usualSchema = z.strictObject({
	min: z.optional(z.number()),
	max: z.optional(z.number())
});

/** How sure an input is, in the quantity's unit; read by risk studies. */
export const spreadSchema = z.strictObject({
	min: z.number(),
	likely: z.number(),
	max: z.number()
});

export const cautionSchema = z.strictObject({
	message: note,
	/** Quantities that mislead whoever reads them without it: it is said beside each, wherever they are shown. */
	beside: z.optional(z.array(nameSchema).check(z.minLength(1), z.maxLength(60))),
	/** Inputs by which it is mended: it leads to their cells in the scenario that it is said of. */
	mended_by: z.optional(z.array(nameSchema).check(z.minLength(1), z.maxLength(6)))
});

/** The inputs by which a path in time is entered. */
export const pathSchema = z.strictObject({
	/** Sets a level from a month on. */
	set_by: nameSchema,
	/** Changes it by a share from a month on. */
	moved_by: nameSchema
});

export const quantitySchema = z.strictObject({
	name: nameSchema,
	label,
	/** What else people call it: found by these words too. */
	other_names: z.optional(otherNames),
	/** "number" when left out. A yes/no and a choice have no unit. */
	type: z.optional(
		z.union([z.literal('number'), z.literal('yes_no'), z.strictObject({ member_of: nameSchema })])
	),
	/** Left out: a plain number, the same as "1". */
	unit: z.optional(z.string().check(z.maxLength(80))),
	/** Sets, or named axes "from: product" where a set is used twice. */
	per: z.optional(
		z.array(z.string().check(z.maxLength(2 * LIMITS.name + 2))).check(z.maxLength(5))
	),
	/** Relations that say which of the pairs exist. */
	in: z.optional(z.array(nameSchema).check(z.maxLength(4))),
	/** How its number is read: a date that is kept as days since 1899-12-30; a year, without thousands. */
	shown: z.optional(z.enum(['date', 'year'])),
	/** An input fixed with the structure: no scenario changes it, and the plan folds it. */
	fixed: z.optional(z.boolean()),
	/** The entered values, in the quantity's own unit; of dates, files hold "2027-05-06" (`file-dates.ts`). */
	value: z.optional(valuesSchema),
	/** One formula for all members, or one by member of one of its axes; "input" as a case takes the entered value. */
	formula: z.optional(
		z.union([
			formulaText,
			z.strictObject({ by: nameSchema, cases: z.record(z.string(), formulaText) })
		])
	),
	/** A formula that repeats the month before, but where a step is entered: which inputs hold the steps. */
	path: z.optional(pathSchema),
	/** A yes/no formula: where it says no, the value is absent. */
	where: z.optional(formulaText),
	range: z.optional(rangeSchema),
	/** Where its numbers usually lie: one outside is taken, and cautioned about. */
	usual: z.optional(usualSchema),
	/** Chosen in whole steps of its unit where a programme decides it. */
	whole: z.optional(z.boolean()),
	/** The quantity must be yes; or, if it is a number, zero within the tolerance (in its own unit). */
	check: z.optional(
		z.strictObject({ message: note, tolerance: z.optional(z.number().check(z.nonnegative())) })
	),
	/** A caution beside the value wherever this yes/no quantity says yes. */
	caution: z.optional(cautionSchema),
	note: z.optional(note),
	source: z.optional(note),
	/** ISO 8601 day on which the value was found: "2026-11-24". */
	date: z.optional(z.iso.date()),
	spread: z.optional(spreadSchema),
	/** Significant digits on screen; 4 when left out. */
	digits: z.optional(z.int().check(z.gte(1), z.lte(15))),
	/** Those who may see only what is open see its values, and nothing else of it. */
	open: z.optional(z.boolean())
});
export type Quantity = z.infer<typeof quantitySchema>;

export const sheetSchema = z.strictObject({
	title: label,
	note: z.optional(note),
	/** The quantity whose value stands beside the sheet's title in the contents. */
	headline: z.optional(nameSchema),
	quantities: z.array(quantitySchema)
});
export type Sheet = z.infer<typeof sheetSchema>;

export const scenarioSchema = z.strictObject({
	id: nameSchema,
	title: label,
	note: z.optional(note),
	/** Null for the base alone. */
	parent: z.nullable(nameSchema),
	/** What `x[reference]` reads, a scenario or a frozen copy: the base when left out. */
	against: z.optional(nameSchema),
	/** At most one for each quantity. Empty for the base, whose values stand in the quantities. */
	changes: z.array(changeSchema)
});
export type Scenario = z.infer<typeof scenarioSchema>;

export const workbookSchema = z.strictObject({
	$schema: z.optional(z.string()),
	format: z.literal(FORMAT),
	version: z.literal(VERSION),
	title: z.string().check(z.minLength(1), z.maxLength(LIMITS.label)),
	about: z.optional(note),
	/** Its figures are made up, and every screen says so. */
	invented: z.optional(z.boolean()),
	/** The shipped workbook that it was begun from, by the name of its file. */
	begun_from: z.optional(z.string().check(z.maxLength(LIMITS.name), z.regex(/^[a-z0-9-]+$/))),
	units: z.optional(z.array(unitDefinitionSchema).check(z.maxLength(200))),
	sets: z.array(setSchema).check(z.maxLength(200)),
	relations: z.optional(z.array(relationSchema).check(z.maxLength(200))),
	sheets: z.array(sheetSchema).check(z.maxLength(200)),
	scenarios: z.array(scenarioSchema).check(z.minLength(1), z.maxLength(LIMITS.scenarios)),
	front: z.optional(frontSchema),
	/** One for each reader: what they look for first, in their order. Nothing is hidden from anyone. */
	starts: z.optional(z.array(startSchema).check(z.maxLength(12))),
	pictures: z.optional(z.array(pictureSchema).check(z.maxLength(50))),
	studies: z.optional(studiesSchema),
	programmes: z.optional(programmesSchema),
	plans: z.optional(programmePlansSchema),
	reviewed: z.optional(reviewedSchema),
	/** What the columns of tables mean that came in and come again. */
	tables: z.optional(keptTablesSchema),
	/** What the first hour asks for, where somebody begins a plant of their own. */
	steps: z.optional(stepsSchema),
	/** Figures found from what was measured, with their points. */
	calibrations: z.optional(calibrationsSchema),
	/** Values as they stood on a day, which no edit changes. */
	frozen: z.optional(frozenListSchema),
	/** Quotes, each with its own entries and once sent with its own figures. */
	quotes: z.optional(quotesSchema),
	/** What stands at the head and the foot of offers. */
	letterhead: z.optional(letterheadSchema)
});
export type Workbook = z.infer<typeof workbookSchema>;
