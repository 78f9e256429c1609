/**
 * Who makes what in which month: the linear programme of a plan year solved by GLPK (GNU Linear Programming Kit,
 * 5.0, compiled for JavaScript), a solver that the app does not use.
 */
import GLPK from 'glpk.js/node';
import {
	made,
	months,
	programmeOf,
	sold,
	type Market,
	type Programme
} from './allocation-programme';
import type { Made } from './metres';
import { products, sum } from './plant';
import { at, type Works } from './works';

const glpk = await GLPK();

export interface Allocation {
	readonly programme: Programme;
	/** EUR in the year: net-net sales less variable cost less the cost of holding stock. */
	readonly contribution: number;
	/** Of stock, EUR in the year. */
	readonly holding: number;
	/** m in the year. */
	readonly made: readonly Made[];
	readonly unmet: ReadonlyMap<string, number>;
	/** Every decision by its name. */
	readonly decided: Readonly<Record<string, number>>;
	/** EUR/h by line, or 'rewind' or 'crosslink', and month from 0. */
	readonly hourWorth: ReadonlyMap<string, readonly number[]>;
}

/** `year` from 0, today. */
export function allocate(works: Works, year: number, market: Market = {}): Allocation {
	const programme = programmeOf(works, year, market);
	const { result } = glpk.solve(
		{
			name: 'allocation',
			objective: { direction: glpk.GLP_MAX, name: 'contribution', vars: [...programme.profit] },
			subjectTo: programme.rows.map(({ name, terms, kind, most }) => ({
				name,
				vars: [...terms],
				bnds: { type: kind === 'most' ? glpk.GLP_UP : glpk.GLP_FX, ub: most, lb: 0 }
			})),
			bounds: programme.bounds.map(({ name, least, most }) => ({
				name,
				type: most > least ? glpk.GLP_DB : glpk.GLP_FX,
				ub: most,
				lb: least
			}))
		},
		{ msglev: glpk.GLP_MSG_OFF, presol: true }
	);
	if (result.status !== glpk.GLP_OPT) throw new Error(`no plan of year ${year}: ${result.status}`);
	const decided = result.vars;
	const metres = (name: string) => decided[name] ?? NaN;
	const lines = works.setting.lines;
	const unmet = (product: string) =>
		at(programme.wanted, product) - sum(months.map((month) => metres(sold(product, month))));
	const worth = (of: string) =>
		[of, months.map((month) => result.dual?.[`${of} ${month}`] ?? NaN)] as const;
	return {
		programme,
		contribution: result.z,
		holding: holdingIn(programme, decided),
		made: lines.flatMap((line) =>
			line.products.map((product) => ({
				line: line.id,
				product,
				metres: sum(months.map((month) => metres(made(product, line.id, month))))
			}))
		),
		unmet: new Map(products.map(({ id }) => [id, unmet(id)])),
		decided,
		hourWorth: new Map([...lines.map(({ id }) => worth(id)), worth('rewind'), worth('crosslink')])
	};
}

export function valueOf(
	terms: Programme['profit'],
	decided: Readonly<Record<string, number>>
): number {
	return sum(terms.map(({ name, coef }) => coef * (decided[name] ?? NaN)));
}

export const holdingIn = (
	programme: Programme,
	decided: Readonly<Record<string, number>>
): number =>
	-valueOf(
		programme.profit.filter(({ name }) => name.startsWith('stock')),
		decided
	);
