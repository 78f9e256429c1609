/** The picture of a quote: which quantities hold its prices, its ladders, its steps and its hours. */
import { label, memberIdSchema, nameSchema, note } from './basic-schema';
import { z } from './zod';

/** A figure under the words that the customer reads. */
const offered = z.strictObject({ title: label, quantity: nameSchema });

/**
 * What an offer says to the customer. It is a list of what goes out, and not of what stays: whatever is not named here
 * is on no offer.
 */
const offerSchema = z.strictObject({
	/** The choice of the customer. */
	customer: nameSchema,
	/** Choices that say what is offered: the first that holds one. */
	goods: z.array(nameSchema).check(z.minLength(1), z.maxLength(4)),
	/** What was asked for, where the first count may be another: metres in whole coils. */
	asked: z.optional(nameSchema),
	counts: z.array(offered).check(z.maxLength(8)),
	prices: z.array(offered).check(z.minLength(1), z.maxLength(6)),
	total: offered,
	/** Of the customer, or of the order; choices in words for the customer, by member. */
	terms: z.optional(
		z
			.array(
				z.strictObject({
					...offered.shape,
					words: z.optional(z.record(memberIdSchema, label))
				})
			)
			.check(z.maxLength(8))
	),
	/** Said where a yes/no figure says yes. */
	cautions: z.optional(z.array(z.strictObject({ when: nameSchema, note })).check(z.maxLength(12))),
	/** The index clause in words; its shares stand below. */
	note: z.optional(note)
});

/** What an order of several items asks for: which entries hold for all of them, and what the whole comes to. */
const tenderSchema = z.strictObject({
	/** Of the order and its terms, what is the same for every item. */
	shared: z.array(nameSchema).check(z.maxLength(20)),
	/** A price by hand in place of the list's, and the choice of where it is meant with the member that says: on the invoice. */
	set_price: nameSchema,
	price_basis: z.optional(z.strictObject({ quantity: nameSchema, member: memberIdSchema })),
	/** What an order brings: on the invoice, net of all that leaves with it, over its floor, and over its full cost. */
	revenue: nameSchema,
	net: nameSchema,
	contribution: nameSchema,
	result: nameSchema,
	/** The smallest order that covers its floor. */
	least: z.optional(nameSchema),
	/** The metres of a coil. */
	coil: z.optional(nameSchema),
	/** How discounts are combined, in words by member. */
	discounts: z.optional(
		z.strictObject({ quantity: nameSchema, words: z.record(memberIdSchema, note) })
	),
	/** Per dated month: the month that it is for the order, and the part of the plan that it lies in. */
	dated: z.optional(z.strictObject({ month: nameSchema, part: z.optional(nameSchema) })),
	/** Where the plan is asked for the metres, what tells its hours, and what the order costs besides what the plan pays. */
	plan: z.optional(
		z.strictObject({ taken: nameSchema, hours: nameSchema, beyond: nameSchema, lost: nameSchema })
	)
});
export type TenderPicture = z.infer<typeof tenderSchema>;

/** What a list of prices is made of: prices at the margin that is wanted, per size of an order. */
const priceListSchema = z.strictObject({
	/** Choices that say whose price it is: items, and pipes by length of coil. */
	item: z.optional(nameSchema),
	pipe: nameSchema,
	length: nameSchema,
	margin: nameSchema,
	/** Per size of an order. */
	net_net: nameSchema,
	on_invoice: nameSchema,
	on_list: nameSchema,
	/** The price of today's list. */
	today: z.optional(nameSchema),
	/** What prices move by, in the order in which it is told; what is left is told as such. */
	causes: z
		.array(z.strictObject({ title: label, quantities: z.array(nameSchema).check(z.maxLength(60)) }))
		.check(z.maxLength(20))
});
export type PriceListPicture = z.infer<typeof priceListSchema>;

export const quotePictureSchema = z.strictObject({
	kind: z.literal('quote'),
	title: label,
	/** The scenario that quotes stand on; the base where it is left out, so that none stands on a plant that is not there. */
	scenario: z.optional(memberIdSchema),
	/**
	 * Inputs that the page offers to change: of the order, and the terms that hold for it. One that is per
	 * something is offered for the member that a choice on the same sheet holds.
	 */
	order: z.array(nameSchema).check(z.minLength(1), z.maxLength(12)),
	terms: z.optional(z.array(nameSchema).check(z.maxLength(12))),
	/** The size of the order, what takes it, and how long that runs. */
	size: nameSchema,
	taken_by: z.optional(nameSchema),
	hours: z.optional(nameSchema),
	/** What is left of the price, and what it is held against. */
	price: nameSchema,
	floor: nameSchema,
	target: nameSchema,
	list: nameSchema,
	invoice: nameSchema,
	margin: nameSchema,
	target_margin: z.optional(nameSchema),
	/** Per size of an order. */
	by_size: z.strictObject({ floor: nameSchema, target: nameSchema, offered: nameSchema }),
	/** Per length of a coil. */
	by_length: z.optional(z.strictObject({ floor: nameSchema, target: nameSchema })),
	/** Per step of the price: its amount, the price after it, whether it is a total. */
	waterfall: z.strictObject({ amount: nameSchema, level: nameSchema, is_total: nameSchema }),
	/** Per month: the value of an hour and what the order's hours cost; and the choice of the month. */
	hour_value: z.optional(
		z.strictObject({
			value: nameSchema,
			cost: nameSchema,
			chosen: nameSchema,
			/** Per month: hours that are free on what takes the order. */
			free: z.optional(nameSchema)
		})
	),
	/** Per extra: whether it is wanted, and its price. */
	extras: z.optional(z.strictObject({ wanted: nameSchema, price: nameSchema })),
	/** What making costs with its hours, what buying would, and whether buying costs less. */
	make_or_buy: z.optional(
		z.strictObject({ make: nameSchema, buy: nameSchema, buy_is_less: nameSchema })
	),
	/** Prices as the customer reads them, all per the same set: by metre, coil, pallet. */
	on_invoice: z.optional(z.array(nameSchema).check(z.minLength(1), z.maxLength(6))),
	validity: z.optional(nameSchema),
	offer: z.optional(offerSchema),
	tender: z.optional(tenderSchema),
	price_list: z.optional(priceListSchema),
	/** Per part of the clause its share and index; the moves that count, and the price that follows. */
	clause: z.optional(
		z.strictObject({
			share: nameSchema,
			index: nameSchema,
			least: nameSchema,
			most: nameSchema,
			price: nameSchema
		})
	)
});
export type QuotePicture = z.infer<typeof quotePictureSchema>;
