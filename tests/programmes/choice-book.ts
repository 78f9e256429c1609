/** A programme as a textbook prints it, written as a workbook: choices, what each takes of what is limited, and the limits. */
import { VERSION, type Quantity, type Workbook } from '$lib/workbook/schema';

export interface Printed {
	readonly maximise: boolean;
	readonly gain: readonly number[];
	/** By limit, by choice. */
	readonly takes: readonly (readonly number[])[];
	readonly limit: readonly number[];
	/** Between what is used of each limit and the limit; at most where left out. */
	readonly compared?: readonly ('<=' | '>=' | '=')[];
	/** What is used of a limit. */
	readonly used?: string;
}

export const USED = 'SUM(takes * x over choice)';

export function choiceBook(printed: Printed): Workbook {
	const { maximise, gain, takes, limit, compared = [], used = USED } = printed;
	const ids = (letter: string, count: number) =>
		Array.from({ length: count }, (_, i) => ({ id: `${letter}${i + 1}` }));
	const by = <T>(letter: string, values: readonly T[]) =>
		Object.fromEntries(values.map((value, i) => [`${letter}${i + 1}`, value]));
	const quantity = (name: string, rest: Partial<Quantity>): Quantity => ({
		name,
		label: name,
		...rest
	});
	const yesNo = (sign: string) => ({
		type: 'yes_no' as const,
		per: ['limit'],
		formula: `used ${sign} bound`,
		where: `sign = ${['<=', '>=', '='].indexOf(sign)}`
	});
	return {
		format: 'metrewright',
		version: VERSION,
		title: 'Printed',
		sets: [
			{ name: 'choice', label: 'Choice', members: ids('c', gain.length) },
			{ name: 'limit', label: 'Limit', members: ids('l', limit.length) }
		],
		sheets: [
			{
				title: 'All',
				quantities: [
					quantity('gain', { per: ['choice'], value: by('c', gain) }),
					quantity('takes', {
						per: ['limit', 'choice'],
						value: by(
							'l',
							takes.map((row) => by('c', row))
						)
					}),
					quantity('bound', { per: ['limit'], value: by('l', limit) }),
					quantity('sign', {
						per: ['limit'],
						value: by(
							'l',
							limit.map((_, i) => ['<=', '>=', '='].indexOf(compared[i] ?? '<='))
						)
					}),
					quantity('x', { per: ['choice'], range: { min: 0 } }),
					quantity('worth', { per: ['limit'] }),
					quantity('used', { per: ['limit'], formula: used }),
					quantity('at_most', yesNo('<=')),
					quantity('at_least', yesNo('>=')),
					quantity('equals', yesNo('=')),
					quantity('total', { formula: 'SUM(gain * x over choice)' })
				]
			}
		],
		scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }],
		programmes: [
			{
				name: 'printed',
				title: 'Printed',
				...(maximise ? { maximise: 'total' } : { minimise: 'total' }),
				decisions: ['x'],
				constraints: ['at_most', 'at_least', 'equals'],
				shadow_prices: { worth: compared.includes('>=') ? 'at_least' : 'at_most' }
			}
		]
	};
}
