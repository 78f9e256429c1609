/** Why a formula is not linear in what a programme decides, with the place and the way by which the decision gets there. */
import { nameOf } from '$lib/engine/naming';
import { Op } from '$lib/engine/operations';
import type { Plan } from '$lib/engine/plan';
import type { NotLinear, NotLinearKind } from './forms';

const WHAT: Readonly<Record<NotLinearKind, (decided: string) => string>> = {
	product: (decided) => `multiplies ${decided} with another value that the programme decides`,
	divisor: (decided) => `divides by ${decided}, which the programme decides`,
	power: (decided) => `raises ${decided}, which the programme decides, to a power`,
	condition: (decided) => `tests ${decided}, which the programme decides, in a condition`,
	filter: (decided) => `filters by ${decided}, which the programme decides`,
	choice: (decided) => `looks up by ${decided}, which the programme decides`,
	extreme: (decided) =>
		`takes the least or greatest of values such as ${decided}, which the programme decides`,
	function: (decided) => `puts ${decided}, which the programme decides, into a function`,
	comparison: (decided) =>
		`compares ${decided}, which the programme decides, by another sign than <=, >= or = (several may be joined by AND)`
};

/** "line_cut of L2 divides by planned_hours of L2, which the programme decides (by made of PX15B, L2): …" */
export function whyNotLinear(
	plan: Plan,
	cell: number,
	fault: NotLinear,
	decisions: ReadonlySet<number>
): string {
	const read = cellRead(plan, fault.decided);
	const decided = read === null ? 'what is computed there' : nameOf(plan, read);
	const way = read === null ? [] : wayTo(plan, read, decisions);
	const by = way.length === 0 ? '' : ` (by way of ${way.map((at) => nameOf(plan, at)).join(', ')})`;
	return `${nameOf(plan, cell)} ${WHAT[fault.kind](decided)}${by}: a programme must be linear in what it decides.`;
}

/** The cell that a node reads, through guards and ranges. */
function cellRead({ nodes }: Plan, node: number): number | null {
	for (let here = node; ;) {
		const op = nodes.op[here];
		if (op === Op.Cell) return nodes.a[here]!;
		if (op === Op.Guard) here = nodes.b[here]!;
		else if (op === Op.InRange) here = nodes.a[here]!;
		else return null;
	}
}

/** The cells by which a decision gets to this one, from the nearest on; none where it is a decision itself. */
function wayTo(plan: Plan, from: number, decisions: ReadonlySet<number>): number[] {
	const { starts, targets } = plan.precedents;
	const before = new Map<number, number>([[from, -1]]);
	const queue = [from];
	for (let next = 0; next < queue.length; next++) {
		const cell = queue[next]!;
		if (decisions.has(cell)) {
			const way: number[] = [];
			for (let here = cell; here !== from; here = before.get(here)!) way.unshift(here);
			return way;
		}
		for (let at = starts[cell]!; at < starts[cell + 1]!; at++) {
			if (before.has(targets[at]!)) continue;
			before.set(targets[at]!, cell);
			queue.push(targets[at]!);
		}
	}
	return [];
}
