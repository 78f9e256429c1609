/**
 * The pictures that a workbook offers; each names the quantities it draws. That these exist is checked
 * by `consistency/front.ts`.
 */
import { label, memberIdSchema, nameSchema } from './basic-schema';
import { paperPictureSchema } from './paper-schema';
import { quotePictureSchema } from './quote-schema';
import { z } from './zod';

export const pictureSchema = z.discriminatedUnion('kind', [
	z.strictObject({
		kind: z.literal('cross_section'),
		title: label,
		/** Set of products and set of layers, inner first. */
		subject: nameSchema,
		layer: nameSchema,
		outside_diameter: nameSchema,
		/** Per subject and layer. */
		thickness: nameSchema,
		mass: nameSchema,
		cost: nameSchema,
		material: nameSchema,
		/** Per subject: the chain minimum + eccentricity + spread = set-point. */
		wall: nameSchema,
		wall_minimum: nameSchema,
		eccentricity: nameSchema,
		spread: nameSchema,
		giveaway: z.optional(nameSchema),
		/** Role of colour by material member: resin, adhesive or barrier. */
		roles: z.record(memberIdSchema, z.enum(['resin', 'adhesive', 'barrier']))
	}),
	z.strictObject({
		kind: z.literal('build_up'),
		title: label,
		subject: nameSchema,
		/** The set of parts and the quantity per subject and part that is stacked. */
		part: nameSchema,
		quantity: nameSchema,
		/** The total that the parts add up to, and the same for a sales unit. */
		total: nameSchema,
		per_unit: z.optional(nameSchema),
		roles: z.record(
			memberIdSchema,
			z.enum([
				'resin',
				'adhesive',
				'barrier',
				'scrap',
				'energy',
				'packaging',
				'crosslinking',
				'people',
				'plant'
			])
		)
	}),
	z.strictObject({
		kind: z.literal('items'),
		title: label,
		subject: nameSchema,
		/** A choice of subject per member of another set: what lies under it, as coils under a pipe. */
		of: nameSchema,
		/** Per that other set, in the order shown. */
		columns: z.array(nameSchema).check(z.minLength(1), z.maxLength(8))
	}),
	z.strictObject({
		kind: z.literal('ranking'),
		title: label,
		/** Per one set: what its members are ranked by, the largest first. */
		amount: nameSchema,
		/** Per that set and one more, as a month: what they are ranked by in each of its members. */
		by_part: z.optional(nameSchema),
		/** Further figures per the ranked set, in the order shown. */
		columns: z.optional(z.array(nameSchema).check(z.minLength(1), z.maxLength(4)))
	}),
	z.strictObject({
		kind: z.literal('months'),
		title: label,
		/** The set of months, marked as such. */
		period: nameSchema,
		/** Numbers per month, one of which is drawn at a time. */
		results: z.array(nameSchema).check(z.minLength(1), z.maxLength(12)),
		/** Those of them whose months add up to that of a year. */
		added: z.optional(z.array(nameSchema).check(z.minLength(1), z.maxLength(12))),
		/** Per month, yes or no: which are closed. */
		closed: z.optional(nameSchema),
		/** Yes or no: whether open months are planned on the stock that the last closed one left. */
		planned_on_close: z.optional(nameSchema)
	}),
	z.strictObject({
		kind: z.literal('payback'),
		title: label,
		/** The set of years, and per year the running totals, simple and discounted. */
		year: nameSchema,
		cumulative: nameSchema,
		cumulative_discounted: nameSchema,
		payback: nameSchema,
		discounted_payback: nameSchema,
		outlay: nameSchema,
		npv: nameSchema,
		irr: nameSchema,
		annual_value: nameSchema,
		life: nameSchema,
		/** Per option, yes or no: which of them a scenario holds. Then options together are held against each alone. */
		options: z.optional(nameSchema),
		/** Per part of the cash flow: what the net present value is made of. */
		parts: z.optional(nameSchema),
		/** Further figures of each case, in this order. */
		more: z.optional(z.array(nameSchema).check(z.maxLength(6)))
	}),
	z.strictObject({
		kind: z.literal('capacity'),
		title: label,
		/** What every load is of, in words: "if every month makes what it sells". */
		note: z.optional(label),
		/** The set of months. */
		month: nameSchema,
		/** Kinds of resource, each with its loads in percent of the hours on offer. */
		loads: z
			.array(
				z.strictObject({
					/** Per month and one other set: stages, lines. */
					load: nameSchema,
					/** Per that other set. */
					load_of_year: z.optional(nameSchema),
					/** Per that other set, and per month or not: then the months are added. */
					hours_short: z.optional(nameSchema)
				})
			)
			.check(z.minLength(1), z.maxLength(6))
	}),
	z.strictObject({
		kind: z.literal('ways_out'),
		title: label,
		note: z.optional(label),
		/** Per scenario, against its reference: hours freed, what is earned more, and what such an hour costs. */
		hours_freed: nameSchema,
		earned: nameSchema,
		/** The same at the demand of a later year: a way may pay only with growth. */
		earned_later: z.optional(nameSchema),
		price_of_hour: z.optional(nameSchema)
	}),
	z.strictObject({
		kind: z.literal('patterns'),
		title: label,
		note: z.optional(label),
		/** The set of shift patterns, and the member that the others are compared with at first. */
		pattern: nameSchema,
		against: z.optional(memberIdSchema),
		/** The hours of the week, and a yes/no per pattern and hour: drawn small above each pattern. */
		hour: z.optional(nameSchema),
		worked: z.optional(nameSchema),
		/** What the finding speaks of: good metres and the cost of one, per pattern. */
		metres: nameSchema,
		cost: nameSchema,
		/** Per pattern, in the order shown. */
		rows: z.array(nameSchema).check(z.minLength(1), z.maxLength(30)),
		/** Of the whole plant: compared between scenarios. */
		by_scenario: z.optional(z.array(nameSchema).check(z.maxLength(30)))
	}),
	z.strictObject({
		kind: z.literal('week'),
		title: label,
		note: z.optional(label),
		/** The sets of shift patterns, of seven weekdays and of the 168 hours from the first of them on. */
		pattern: nameSchema,
		weekday: nameSchema,
		hour: nameSchema,
		/** A choice of pattern: the one shown first. */
		shown_first: z.optional(nameSchema),
		/** A yes/no per pattern and hour, an input: what is painted. */
		worked: nameSchema,
		/** Per hour: the premium in percent, and what a unit of energy costs. */
		premium: z.optional(nameSchema),
		price: z.optional(nameSchema),
		/** Per hour: what an hour that is worked costs, part by part, all in one unit over time. */
		costs: z.array(nameSchema).check(z.maxLength(6)),
		/** Per hour: a yes/no that makes it darker, and a choice of crew; hours of all but the first are dotted. */
		night: z.optional(nameSchema),
		crew: z.optional(nameSchema),
		/** Per pattern: figures below the week, and yes/no quantities that caution. */
		facts: z.array(nameSchema).check(z.maxLength(4)),
		cautions: z.array(nameSchema).check(z.maxLength(12))
	}),
	z.strictObject({
		kind: z.literal('calendar'),
		title: label,
		note: z.optional(label),
		/** The year, an input; the sets of twelve months, days of the month, and weekdays, the weekend last. */
		of_year: nameSchema,
		month: nameSchema,
		day: nameSchema,
		weekday: nameSchema,
		/** Per month and day: date, weekday, week, and whether it is a holiday or in a shut-down. */
		date: nameSchema,
		weekday_of: nameSchema,
		week: z.optional(nameSchema),
		is_holiday: nameSchema,
		is_shut_down: nameSchema,
		/** Per month and weekday. */
		working_days: nameSchema,
		/** The set of holidays, and per holiday: its rule, month, day, days after Easter, and the date they give. */
		holiday: nameSchema,
		/** A choice of two: on a date, or counted from Easter. */
		rule: nameSchema,
		holiday_month: nameSchema,
		holiday_day: nameSchema,
		days_after: nameSchema,
		holiday_date: nameSchema,
		/** The set of shut-downs, and per shut-down: first and last month and day, and their dates. */
		shut_down: nameSchema,
		from_month: nameSchema,
		from_day: nameSchema,
		to_month: nameSchema,
		to_day: nameSchema,
		first_date: nameSchema,
		last_date: nameSchema
	}),
	z.strictObject({
		kind: z.literal('bridge'),
		title: label,
		note: z.optional(label),
		/** What is explained, and the parts that add up to it; those taken off carry a minus. */
		total: nameSchema,
		added: z.array(nameSchema).check(z.maxLength(30)),
		taken_off: z.array(nameSchema).check(z.maxLength(30))
	}),
	z.strictObject({
		kind: z.literal('waterfall'),
		title: label,
		note: z.optional(label),
		/** The set of dated months, and what says yes of those that are closed. */
		month: nameSchema,
		closed: nameSchema,
		/** Inputs that a month is closed with, each per month and whatever else. */
		entered: z.array(nameSchema).check(z.minLength(1), z.maxLength(60)),
		/** From the one result to the other, per month, by steps per one set and month. Above zero is favourable. */
		from: nameSchema,
		steps: nameSchema,
		to: nameSchema,
		/** The same of the year to date. */
		to_date: z.optional(z.strictObject({ from: nameSchema, steps: nameSchema, to: nameSchema })),
		/** By which figures a step is explained: as they came, and as they were to be. */
		behind: z.optional(
			z
				.array(
					z.strictObject({
						/** The step, a member of its set. */
						explains: memberIdSchema,
						came: nameSchema,
						meant: nameSchema,
						/** What a difference of it counts by, to tell which came to most. */
						weight: z.optional(nameSchema)
					})
				)
				.check(z.maxLength(60))
		)
	}),
	z.strictObject({
		kind: z.literal('audit'),
		title: label,
		note: z.optional(label),
		/** The set of decided cases, and that of the months that are booked. */
		case: nameSchema,
		month: nameSchema,
		/** Per case, the month of the decision, and the last month booked: choices of a month. */
		decided: nameSchema,
		last: nameSchema,
		/** Per case: the net present value as promised, by cause, and as it now looks; what of it has come, and the rest. */
		from: nameSchema,
		steps: nameSchema,
		to: nameSchema,
		to_date: nameSchema,
		rest: nameSchema,
		payback_promised: nameSchema,
		payback: nameSchema,
		/** What a case promises, by a rule for each case, and what it takes it from in the copy of the day it was decided. */
		takes: z
			.array(z.strictObject({ promise: nameSchema, reads: nameSchema }))
			.check(z.minLength(1), z.maxLength(20))
	}),
	quotePictureSchema,
	paperPictureSchema
]);
export type Picture = z.infer<typeof pictureSchema>;
