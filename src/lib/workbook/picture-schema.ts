/**
 * The pictures that a workbook offers; each names the quantities it draws. That these exist is checked
 * by `consistency/front.ts`.
 */
import { label, memberIdSchema, nameSchema } from './basic-schema';
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
		giveaway: nameSchema.optional(),
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
		per_unit: nameSchema.optional(),
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
		life: nameSchema
	})
]);
export type Picture = z.infer<typeof pictureSchema>;
