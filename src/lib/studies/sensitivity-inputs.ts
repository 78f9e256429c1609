/** What a sensitivity study swings: the inputs that it names, or every number that its result stands on. */
import { nameOf } from '$lib/engine/naming';
import { membersOf, quantityOf } from '$lib/engine/layout';
import type { Plan } from '$lib/engine/plan';
import { OK } from '$lib/engine/state';
import type { Workbook } from '$lib/workbook/schema';
import type { StudyOf, Swing } from '$lib/workbook/study-schema';
import { cellsAt } from './columns/places';
import { scenariosOf } from './columns/scenarios';
import { answer, type Answer } from './problem';

export type SensitivityStudy = StudyOf<'sensitivity'>;

export interface LabelledSwing extends Swing {
	readonly label: string;
}

/** Beyond this many cells that a result stands on, a quantity's cells are swung together. */
const MOST_CELLS = 1000;

export function swingsOf(
	plan: Plan,
	workbook: Workbook,
	study: SensitivityStudy
): Answer<readonly LabelledSwing[]> {
	const named = (study.inputs ?? []).map((swing) => ({
		...swing,
		label: swing.label ?? nameFor(swing)
	}));
	if (!study.all) return answer(named);
	const asked = cellsAt(plan, study);
	if (!asked.ok) return asked;
	const { percent } = study.all;
	const range = { mode: 'scale', low: 1 - percent / 100, high: 1 + percent / 100 } as const;
	const column = scenariosOf(plan, workbook, [study.scenario]).find(
		({ id }) => id === study.scenario
	)?.column;
	const cells = inputsBehind(plan, asked.value).filter((cell) => {
		const quantity = quantityOf(plan.layout, cell)?.quantity;
		const isNumber = quantity?.type === undefined || quantity.type === 'number';
		// A percentage of zero moves nothing.
		const moves = column?.states[cell] === OK && column.values[cell] !== 0;
		return isNumber && quantity?.fixed !== true && moves;
	});
	if (cells.length <= MOST_CELLS)
		return answer([
			...named,
			...cells.map((cell) => ({
				quantity: quantityOf(plan.layout, cell)!.quantity.name,
				members: membersOf(plan.layout, cell),
				label: nameOf(plan, cell),
				...range
			}))
		]);
	const names = new Set(cells.map((cell) => quantityOf(plan.layout, cell)!.quantity.name));
	return answer([
		...named,
		...[...names].map((quantity) => ({ quantity, label: quantity, ...range }))
	]);
}

function nameFor({ quantity, members }: Swing): string {
	const named = (members ?? []).filter((id) => id !== null);
	return named.length === 0 ? quantity : `${quantity} of ${named.join(', ')}`;
}

/** The input cells that some cells are computed from, however far, ascending. */
function inputsBehind(plan: Plan, from: readonly number[]): number[] {
	const { starts, targets } = plan.precedents;
	const seen = new Set<number>(from);
	for (const cell of seen)
		for (let i = starts[cell]!; i < starts[cell + 1]!; i++) seen.add(targets[i]!);
	return [...seen].filter((cell) => plan.roots[cell] === -1).sort((a, b) => a - b);
}
