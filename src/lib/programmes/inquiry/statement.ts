/** A programme as it is solved, put into sums: how large it is, and one row of each requirement in full. */
import type { Derived, Part } from '../part';
import { columnCount, rowCount } from '../linear';
import { unitOfRow } from '../words';
import type { Plan } from '$lib/engine/plan';
import type { Sample, Statement, Sum } from './questions';
import { entriesOf } from './settled';

/** So many terms of a sum are told. */
const MOST_TERMS = 4;

export function statementOf(plan: Plan, { parts }: Derived): Statement {
	const total = (of: (part: Part) => number) => parts.reduce((sum, part) => sum + of(part), 0);
	const [first] = parts;
	return {
		decisions: total(({ programme }) => columnCount(programme)),
		requirements: total(({ programme }) => rowCount(programme)),
		factors: total(({ programme }) => programme.values.length),
		whole: total(({ programme }) => programme.whole.reduce((sum, one) => sum + one, 0)),
		apart: parts.length,
		objective: first ? objectiveOf(first) : { cell: -1, constant: 0, terms: [], more: 0 },
		samples: first ? samplesOf(plan, first) : []
	};
}

function objectiveOf({ programme, cells, objectiveCell }: Part): Sum {
	const terms = [...cells].flatMap((cell, column) => {
		const factor = programme.cost[column]!;
		return factor === 0 ? [] : [{ cell, factor }];
	});
	return { cell: objectiveCell, constant: programme.offset, ...shortened(terms) };
}

const shortened = (terms: Sum['terms']) => ({
	terms: terms.slice(0, MOST_TERMS),
	more: Math.max(0, terms.length - MOST_TERMS)
});

/** The longest row of each quantity, as those at an edge say less. */
function samplesOf(plan: Plan, part: Part): Sample[] {
	const longest = new Map<string, number>();
	part.rows.forEach(({ cell, left }, row) => {
		const key = `${plan.layout.quantityOfCell[cell] ?? cell} ${left < 0 ? 'range' : part.programme.rowUpper[row] === Infinity}`;
		const known = longest.get(key);
		const length = entriesOf(part, row).length;
		if (length > (known === undefined ? 0 : entriesOf(part, known).length)) longest.set(key, row);
	});
	return [...longest.values()].map((row) => sampleOf(plan, part, row));
}

function sampleOf(plan: Plan, part: Part, row: number): Sample {
	const { rowLower, rowUpper } = part.programme;
	const [low, high] = [rowLower[row]!, rowUpper[row]!];
	const { cell } = part.rows[row]!;
	const terms = entriesOf(part, row).map(({ column, factor }) => ({
		cell: part.cells[column]!,
		factor
	}));
	return {
		cell,
		constant: 0,
		...shortened(terms),
		way: low === high ? 'equal' : high === Infinity ? 'least' : 'most',
		bound: high === Infinity ? low : high,
		unit: unitOfRow(plan, cell) ?? ''
	};
}
