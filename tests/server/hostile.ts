/**
 * Workbooks made to keep a reader busy, each small enough to be sent: names that mean nothing among thousands that are
 * near, units, sets, relations, chains, depth. Most do not open; those that do are as large as they may be.
 */
import { VERSION } from '$lib/workbook/schema';

const many = <T>(count: number, make: (i: number) => T): T[] =>
	Array.from({ length: count }, (_, i) => make(i));
const price = (i: number) => ({
	name: `price_of_resin_${i}`,
	label: 'P',
	unit: 'EUR/kg',
	value: i
});
const base = { id: 'base', title: 'Base', parent: null, changes: [] };

function workbook(parts: Record<string, unknown>): string {
	return JSON.stringify({
		format: 'metrewright',
		version: VERSION,
		title: 'Hostile',
		sets: [],
		sheets: [{ title: 'All', quantities: [] }],
		scenarios: [base],
		...parts
	});
}
const sheet = (quantities: readonly object[]) => ({ sheets: [{ title: 'All', quantities }] });
const ids = (count: number) => many(count, (i) => ({ id: `member_number_${i}` }));

export const HOSTILE: Readonly<Record<string, () => string>> = {
	'changes of thousands of misspelt names': () =>
		workbook({
			...sheet(many(3000, price)),
			scenarios: [
				base,
				{
					id: 'other',
					title: 'Other',
					parent: 'base',
					changes: many(3000, (i) => ({ quantity: `price_of_rezin_${i}`, value: 1 }))
				}
			]
		}),
	'thousands of units that nobody knows': () =>
		workbook({
			units: many(200, (i) => ({
				symbol: `crateof${letters(i)}`,
				equals: `2 kratof${letters(i)}`
			})),
			...sheet(many(3000, (i) => ({ ...price(i), unit: `crateofx${letters(i)}` })))
		}),
	'a chain of units as long as it may be': () =>
		workbook({
			units: many(200, (i) => ({
				symbol: `u${letters(i)}`,
				...(i > 0 && { equals: `1 u${letters(i - 1)}` })
			})).reverse()
		}),
	'units of as many factors as fit': () =>
		workbook(sheet(many(5000, (i) => ({ ...price(i), unit: many(26, () => 'kg').join('*') })))),
	'pairs of members that do not exist': () =>
		workbook({
			sets: [
				{ name: 'from', label: 'From', members: ids(5000) },
				{ name: 'to', label: 'To', members: ids(5000).map(({ id }) => ({ id: `${id}x` })) }
			],
			relations: [
				{
					name: 'pairs',
					label: 'Pairs',
					sets: ['from', 'to'],
					pairs: many(5000, (i) => [`membre_number_${i}`, `membre_number_${i}x`])
				}
			]
		}),
	'relations that do not exist, in thousands of quantities': () =>
		workbook({
			sets: [{ name: 'from', label: 'From', members: ids(2) }],
			relations: many(200, (i) => ({
				name: `relation_${i}`,
				label: 'R',
				sets: ['from', 'from'],
				pairs: []
			})),
			...sheet(many(2000, (i) => ({ ...price(i), in: many(4, (k) => `relation_${i + k}x`) })))
		}),
	'as many scenarios as there may be, each from the one before, each changing thousands': () =>
		workbook({
			...sheet(many(2000, price)),
			scenarios: [
				base,
				...many(59, (i) => ({
					id: `s${i}`,
					title: 'S',
					parent: i === 0 ? 'base' : `s${i - 1}`,
					changes: many(2000, (k) => ({ quantity: `price_of_resin_${k}`, value: i }))
				}))
			]
		}),
	'values for thousands of members that do not exist': () =>
		workbook({
			sets: [{ name: 'from', label: 'From', members: ids(10_000) }],
			...sheet(
				many(3, (i) => ({
					...price(i),
					per: ['from'],
					value: Object.fromEntries(many(10_000, (k) => [`membre_number_${k}`, 1]))
				}))
			)
		}),
	'cases for thousands of members that do not exist': () =>
		workbook({
			sets: [{ name: 'from', label: 'From', members: ids(5000) }],
			...sheet([
				{
					...price(0),
					value: undefined,
					per: ['from'],
					formula: {
						by: 'from',
						cases: Object.fromEntries(many(5000, (k) => [`membre_number_${k}`, '1']))
					}
				}
			])
		}),
	'a hundred thousand places of a wrong shape': () =>
		workbook({ sets: many(50_000, () => 7), units: many(50_000, () => [7]) }),
	'lists within lists, very deep': () =>
		workbook({ about: 0 }).replace('"about":0', `"about":${'['.repeat(500_000)}`),
	'a front that names what does not exist': () =>
		workbook({
			...sheet(many(4000, price)),
			front: {
				facts: many(4, (i) => ({
					title: many(9, (k) => `{price_of_rezin_${k}}`).join(''),
					quantity: `price_of_rezin_${i}`
				}))
			}
		}),
	'formulas as long as they may be, nested as deep': () =>
		workbook(
			sheet(
				many(200, (i) => ({
					...price(i),
					value: undefined,
					formula: `${'('.repeat(3900)}1${')'.repeat(3900)}`
				}))
			)
		),
	'as many sound values as fit': () =>
		workbook({
			sets: [{ name: 'from', label: 'From', members: ids(20_000) }],
			...sheet(
				many(5, (i) => ({
					...price(i),
					per: ['from'],
					value: Object.fromEntries(many(20_000, (k) => [`member_number_${k}`, (k * 7) % 1000]))
				}))
			)
		})
};

/** Letters alone, as symbols of units have no digits. */
function letters(i: number): string {
	return [...String(i)].map((digit) => 'bcdfghjklm'[Number(digit)]).join('');
}
