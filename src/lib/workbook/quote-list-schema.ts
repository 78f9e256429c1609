/**
 * Quotes that are kept, each a thing of its own: what was asked for and on which terms, in entries that hold for it
 * alone, and once it was sent the figures of that day, which no edit changes.
 *
 * What a quote names may be gone since: it outlives the quantities and members that it speaks of.
 */
import { label, memberIdSchema, nameSchema, note } from './basic-schema';
import { frozenQuantitySchema, frozenSetSchema } from './frozen-schema';
import { scalarSchema, valuesSchema } from './value-schema';
import { z } from './zod';

/** One entry of the order or of its terms, in place of what the plant or the customer has. */
export const quoteEntrySchema = z.strictObject({
	quantity: nameSchema,
	/** Its members; left out: it has none. */
	at: z.optional(z.array(memberIdSchema).check(z.minLength(1), z.maxLength(5))),
	value: scalarSchema
});
export type QuoteEntry = z.infer<typeof quoteEntrySchema>;

/** What the figures of an item stood on, on its day. */
export const groundsSchema = z.strictObject({
	date: z.iso.date(),
	/** The title of the scenario that it stood on. */
	of: label,
	/** The revision on the server. */
	revision: z.optional(z.int().check(z.gte(1))),
	sets: z.optional(z.array(frozenSetSchema).check(z.maxLength(200))),
	/** Every figure of the quote's page. */
	figures: z.array(frozenQuantitySchema).check(z.minLength(1), z.maxLength(400)),
	/** The inputs that they were computed from, by quantity, in its unit: to tell later what moved. */
	inputs: z.optional(z.record(nameSchema, valuesSchema))
});
export type Grounds = z.infer<typeof groundsSchema>;

/** So much of an item in a month: "2028-03". */
export const quoteCallSchema = z.strictObject({
	month: z.string().check(z.regex(/^\d{4}-(0[1-9]|1[0-2])$/)),
	amount: z.number().check(z.gt(0), z.lte(1e12))
});
export type QuoteCall = z.infer<typeof quoteCallSchema>;

export const quoteItemSchema = z.strictObject({
	id: nameSchema,
	/** What the customer calls it. */
	text: z.optional(label),
	entries: z.array(quoteEntrySchema).check(z.maxLength(60)),
	/** When it is called off; left out: all of it in the month of the order. */
	calls: z.optional(z.array(quoteCallSchema).check(z.minLength(1), z.maxLength(60))),
	/** A price to be held against it, as the customer or a competitor names it. */
	test_price: z.optional(z.number().check(z.gt(0), z.lte(1e9))),
	grounds: z.optional(groundsSchema)
});
export type QuoteItem = z.infer<typeof quoteItemSchema>;

/** One figure of an answer that is kept; null: there was none. */
const figure = z.nullable(z.number());
export const ANSWER_FIGURES = [
	'revenue',
	'net',
	'contribution',
	'result',
	'hours',
	'floor',
	'target',
	'price',
	'invoice'
] as const;
const figures = z.record(z.enum(ANSWER_FIGURES), figure);

/** What a month takes of a line, and what is free there without it and with it. */
const planHoursSchema = z.strictObject({
	place: label,
	month: label,
	free: z.number(),
	free_with: figure,
	taken: figure
});
/** What gives way, of what pays by itself. */
const planGivesSchema = z.strictObject({
	place: label,
	amount: z.number(),
	unit: label,
	money: z.number()
});

/** What stood on the page of a quote beside the figures of its items: items as they are called off, prices tested, the plan made again. */
export const quoteAnswersSchema = z.strictObject({
	items: z
		.array(
			z.strictObject({
				id: nameSchema,
				whole: figures,
				calls: z.optional(
					z
						.array(z.strictObject({ month: label, amount: z.number(), figures }))
						.check(z.maxLength(60))
				),
				tested: z.optional(figures)
			})
		)
		.check(z.maxLength(60)),
	plan: z.optional(
		z.strictObject({
			money: label,
			/** What the plan loses; null: it has no room for all of it. */
			loses: figure,
			/** What the quote brings less what it costs besides what the plan pays. */
			brings: figure,
			/** The largest share of it that would fit, where not all does. */
			fits: z.optional(z.number()),
			hours: z.array(planHoursSchema).check(z.maxLength(400)),
			gives: z.array(planGivesSchema).check(z.maxLength(200)),
			made: z.array(planGivesSchema).check(z.maxLength(400))
		})
	)
});
export type QuoteAnswers = z.infer<typeof quoteAnswersSchema>;
export type AnswerFigures = z.infer<typeof figures>;

export const QUOTE_STATES = ['asked', 'sent', 'won', 'lost'] as const;
export type QuoteState = (typeof QUOTE_STATES)[number];

export const keptQuoteSchema = z.strictObject({
	/** Never shown, and never given twice: two people's new quotes do not meet in it. */
	id: nameSchema,
	/** As the customer reads it. Versions of one quote share it. */
	number: label.check(z.minLength(1)),
	version: z.int().check(z.gte(1), z.lte(999)),
	state: z.enum(QUOTE_STATES),
	/** Why it was lost. */
	reason: z.optional(label),
	date: z.iso.date(),
	valid_until: z.optional(z.iso.date()),
	/** Name and address of who is quoted to, as they stand on the offer. */
	to: z.optional(note),
	/** What the offer says besides. */
	terms: z.optional(note),
	/** For the house alone. */
	note: z.optional(note),
	by: z.optional(label),
	/** Put away: in no list but that of what was put away. */
	filed: z.optional(z.boolean()),
	items: z.array(quoteItemSchema).check(z.minLength(1), z.maxLength(60)),
	/** As they stood when it was sent. */
	answers: z.optional(quoteAnswersSchema)
});
export type KeptQuote = z.infer<typeof keptQuoteSchema>;

export const MOST_QUOTES = 5000;
export const quotesSchema = z.array(keptQuoteSchema).check(z.maxLength(MOST_QUOTES));

/** What stands at the head and the foot of every offer. */
export const letterheadSchema = z.strictObject({
	name: z.optional(label),
	address: z.optional(note),
	contact: z.optional(note),
	/** Before the items, and after them. */
	opening: z.optional(note),
	closing: z.optional(note),
	/** Registered office, bank, tax number. */
	foot: z.optional(note)
});
export type Letterhead = z.infer<typeof letterheadSchema>;
