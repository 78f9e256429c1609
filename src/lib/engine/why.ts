/**
 * Everything the page says of one value when asked why: its formula with the numbers put in, what it reads,
 * what reads it, the inputs behind it, and where an error arose.
 */
import { pieces, type Piece } from '$lib/formula/print';
import type { Call, Expression } from '$lib/formula/tree';
import type { Workbook } from '$lib/workbook/schema';
import { probeIn, type Answers } from './root-cause';
import { trace, type Trace } from './planner/trace';
import type { Probe } from './interpreter/probe';
import { placeOf, quantityOf } from './layout';
import { Op } from './operations';
import type { Edges, Plan } from './plan';
import { originOf } from './reason';
import { FEED_LIMIT, type Feed, type FormulaPiece, type Outcome, type Why } from './results';

/** `from`: the cell that was asked about before, from which somebody went on to this one. */
export function explain(
	answers: Answers,
	workbook: Workbook,
	scenario: string,
	cell: number,
	from: number | null = null
): Why {
	const { plan } = answers;
	const reference = answers.referenceOf(scenario) ?? answers.base;
	const at = (id: string, of: number): Outcome => {
		const { values, states } = answers.column(id);
		return { value: values[of]!, state: states[of]! };
	};
	const feed = (of: number): Feed => ({
		...placeOf(plan.layout, of),
		here: at(scenario, of),
		reference: at(reference, of)
	});
	const written = trace(plan, cell);
	const here = written && probeIn(answers, scenario, written.nodes, written.root);
	const there = written && probeIn(answers, reference, written.nodes, written.root);
	const feeds = cellsRead(plan, cell, here);
	const readers = namedFrom(plan, plan.dependents, cell);
	return {
		...placeOf(plan.layout, cell),
		scenario,
		reference,
		here: at(scenario, cell),
		there: at(reference, cell),
		formula: written && here && there ? formulaPieces(plan, written, here, there) : null,
		feeds: feeds.slice(0, FEED_LIMIT).map(feed),
		feedCount: feeds.length,
		fedInto: readers.slice(0, FEED_LIMIT).map(feed),
		fedIntoCount: readers.length,
		inputs: inputsBehind(plan, cell, (input) => !isSame(at(scenario, input), at(reference, input))),
		way: from === null ? [] : wayDown(plan, from, cell).map((of) => placeOf(plan.layout, of)),
		origin: originOf(answers, workbook, scenario, cell)
	};
}

const isSame = (a: Outcome, b: Outcome) =>
	a.state === b.state && (a.state !== 0 || a.value === b.value);

/** Each piece of the formula as printed; a name and the name of an aggregate with what stands there. */
function formulaPieces(plan: Plan, written: Trace, here: Probe, there: Probe): FormulaPiece[] {
	const shown = new Set<Expression>();
	let gathering: Call | null = null;
	return pieces(written.expression).map((piece) => {
		const { text, role } = piece;
		if (gathering) {
			if (role === 'bracket' && text === ')' && piece.node === gathering) gathering = null;
			const name = role === 'name' && piece.node ? nameIn(plan, piece.node) : undefined;
			return { text, role, isGathered: true, quantity: name?.quantity.name };
		}
		if (piece.opens && gathers(written, piece.opens)) gathering = piece.opens;
		const node = valued(written, piece);
		if (!node || shown.has(node)) return { text, role };
		shown.add(node);
		const planned = written.nodeOf.get(node)!;
		const [value, other] = [here.placeOf(planned), there.placeOf(planned)];
		const cell = written.cellOf.get(node);
		const quantity = cell === undefined ? nameIn(plan, node) : quantityOf(plan.layout, cell);
		return {
			text,
			role,
			here: value === undefined ? undefined : here.value(value),
			reference: other === undefined ? undefined : there.value(other),
			unit: written.unitOf.get(node),
			quantity: quantity?.quantity.name
		};
	});
}

const isAggregate = ({ args }: Call) => args.some(({ over }) => over.length > 0);

/** Whether a call is an aggregate, or takes one in: the greatest of a number and of many is the greatest of all. */
const gathers = ({ nodeOf }: Trace, call: Call) =>
	isAggregate(call) ||
	call.args.some(({ value }) => value.kind === 'call' && isAggregate(value) && !nodeOf.has(value));

/** The reference or aggregate that a piece opens, where its value is known. */
function valued(written: Trace, { node, role, opens }: Piece): Expression | null {
	const expression = role === 'name' ? node : opens && gathers(written, opens) ? opens : null;
	return expression && written.nodeOf.has(expression) ? expression : null;
}

const nameIn = ({ layout }: Plan, node: Expression) =>
	node.kind === 'reference' ? layout.byName.get(node.name) : undefined;

/** The cells that a formula reads, in the order in which it names them; conditions of its cell last. */
function cellsRead(plan: Plan, cell: number, own: Probe | null): number[] {
	const found = new Set<number>();
	if (own)
		for (const node of inOrder(own))
			if (own.nodes.op[node] === Op.Cell) found.add(own.reading(node).cell);
	for (const read of namedFrom(plan, plan.precedents, cell)) found.add(read);
	return [...found].filter((read) => read < plan.layout.cells);
}

/** The nodes below the root, each before its operands, the leftmost first. */
function inOrder(own: Probe): number[] {
	const order = new Set<number>();
	const stack = [own.root];
	while (stack.length > 0) {
		const node = stack.pop()!;
		if (order.has(node)) continue;
		order.add(node);
		// What guards an entered value is no part of the formula as written.
		const operands =
			own.nodes.op[node] === Op.Guard ? [own.operands(node)[1]!] : own.operands(node);
		for (const operand of [...operands].reverse()) if (operand >= 0) stack.push(operand);
	}
	return [...order];
}

/** The cells with a name next to a cell, seen through those of lifted subterms. */
function namedFrom(plan: Plan, edges: Edges, cell: number): number[] {
	const found = new Set<number>();
	const stack = [cell];
	const passed = new Set<number>();
	while (stack.length > 0) {
		const here = stack.pop()!;
		for (const next of nextTo(edges, here)) {
			if (next < plan.layout.cells) found.add(next);
			else if (!passed.has(next)) {
				passed.add(next);
				stack.push(next);
			}
		}
	}
	return [...found].sort((a, b) => a - b);
}

const nextTo = ({ starts, targets }: Edges, cell: number) =>
	targets.subarray(starts[cell]!, starts[cell + 1]!);

/** The entered values from which a cell is computed, however far, by quantity in sheet order. */
function inputsBehind(
	plan: Plan,
	cell: number,
	isChanged: (input: number) => boolean
): Why['inputs'] {
	const counts = new Map<number, { cells: number[]; changed: number }>();
	const seen = new Uint8Array(plan.cells);
	const stack = [cell];
	seen[cell] = 1;
	while (stack.length > 0) {
		const here = stack.pop()!;
		if (here !== cell && plan.roots[here] === -1) {
			const index = plan.layout.quantityOfCell[here]!;
			const count = counts.get(index) ?? { cells: [], changed: 0 };
			count.cells.push(here);
			if (isChanged(here)) count.changed++;
			counts.set(index, count);
		}
		for (const next of nextTo(plan.precedents, here)) {
			if (seen[next] === 1) continue;
			seen[next] = 1;
			stack.push(next);
		}
	}
	return [...counts]
		.sort(([a], [b]) => a - b)
		.map(([index, count]) => ({
			quantity: plan.layout.quantities[index]!.quantity.name,
			cells: count.cells.sort((a, b) => a - b),
			changed: count.changed
		}));
}

/** The shortest way from a cell to one that it rests on, in cells with a name; empty where it does not rest on it. */
function wayDown(plan: Plan, from: number, to: number): number[] {
	const before = new Map<number, number>([[from, -1]]);
	let front = [from];
	while (front.length > 0 && !before.has(to)) {
		const next: number[] = [];
		for (const here of front)
			for (const read of namedFrom(plan, plan.precedents, here)) {
				if (before.has(read)) continue;
				before.set(read, here);
				next.push(read);
			}
		front = next;
	}
	const way: number[] = [];
	for (let at = before.has(to) ? to : -1; at !== -1; at = before.get(at)!) way.unshift(at);
	return way;
}
