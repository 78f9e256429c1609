/** Why there is no plan, in sentences that name what stands in the way in its own units. */
import { labelOf, withUnit } from '$lib/engine/naming';
import type { Plan } from '$lib/engine/plan';
import { unitOfSides } from '$lib/engine/planner/sides';
import type { Programme } from '$lib/workbook/programme-schema';
import type { Part } from './part';
import type { SolveOutcome } from './solve';
import type { Violation } from './conflict';

const MOST = 8;
/** Of what is lacking: more would not help anyone to find it. */
const DIGITS = 4;

export function whyNoPlan(
	plan: Plan,
	programme: Programme,
	part: Part,
	answer: SolveOutcome
): string[] {
	const where = part.members.length === 0 ? '' : ` for ${part.members.join(', ')}`;
	const subject = `${programme.title}${where}`;
	switch (answer.status) {
		case 'optimal':
			return [];
		case 'infeasible': {
			const { violations } = answer;
			if (violations.length === 0)
				return [
					`${subject} has no plan: a value entered is outside of its range. Let it go, or change the range.`
				];
			const told = [...violations].slice(0, MOST).map((each) => lackOf(plan, part, each));
			const more = violations.length > MOST ? ` and ${violations.length - MOST} more` : '';
			return [
				`${subject} has no plan. The least that would have to give way: ${told.join('; ')}${more}.`
			];
		}
		case 'unbounded': {
			const names = answer.growing.slice(0, 3).map((at) => labelOf(plan, part.cells[at]!));
			const which = names.length === 0 ? 'a decision' : names.join(', ');
			return [
				`${subject} has no end: ${which} can grow without limit. Give it a range, or require what limits it.`
			];
		}
		case 'time-limit':
			return [`${subject} found no plan in ${answer.seconds} s. Decide less, or give it longer.`];
		case 'failed':
			return [
				`The solver gave up on ${subject}: its numbers may differ too much in size. Use larger units.`
			];
	}
}

/** "Line hours hold, oct, L6, by 41 h" */
function lackOf(plan: Plan, part: Part, { row, by }: Violation): string {
	const { cell } = part.rows[row]!;
	const much = Number(Math.abs(by).toPrecision(DIGITS));
	return `${labelOf(plan, cell)}, by ${withUnit(much, unitOfRow(plan, cell))}`;
}

/** The unit in which the two sides of a comparison are; nothing where neither is a name. */
export function unitOfRow(plan: Plan, cell: number): string | undefined {
	if (cell >= plan.layout.cells) return undefined;
	const { quantity } = plan.layout.quantities[plan.layout.quantityOfCell[cell]!]!;
	if (quantity.type !== 'yes_no') return quantity.unit;
	return unitOfSides(plan, cell)?.text;
}
