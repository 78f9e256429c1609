/**
 * Gathering written out: what an aggregate gathers without saying so is put into the formula when it is kept, so
 * that a set added later is an error and not another number. A formula that says it all stays as its author
 * wrote it.
 */
import { parseFormula } from '$lib/formula/parse';
import { printFormula } from '$lib/formula/print';
import type { Quantity } from '$lib/workbook/schema';
import { WHERE } from './planner/part';

/** One formula of a quantity: null the one, "where", or the case's member. */
export interface PrintedPart {
	readonly part: string | null;
	readonly text: string;
}

export function withGathering(quantity: Quantity, printed: readonly PrintedPart[]): Quantity {
	const written = new Map(printed.map(({ part, text }) => [part, text]));
	const complete = (part: string | null, text: string): string => {
		const canonical = written.get(part);
		const read = parseFormula(text);
		return canonical === undefined || !read.ok || printFormula(read.expression) === canonical
			? text
			: canonical;
	};
	const { formula, where } = quantity;
	return {
		...quantity,
		...(typeof formula === 'string' && { formula: complete(null, formula) }),
		...(typeof formula === 'object' && {
			formula: {
				...formula,
				cases: Object.fromEntries(
					Object.entries(formula.cases).map(([member, text]) => [member, complete(member, text)])
				)
			}
		}),
		...(where !== undefined && { where: complete(WHERE, where) })
	};
}
