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

export const quoteItemSchema = z.strictObject({
	id: nameSchema,
	/** What the customer calls it. */
	text: z.optional(label),
	entries: z.array(quoteEntrySchema).check(z.maxLength(60)),
	grounds: z.optional(groundsSchema)
});
export type QuoteItem = z.infer<typeof quoteItemSchema>;

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
	items: z.array(quoteItemSchema).check(z.minLength(1), z.maxLength(60))
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
