/** Tiny workbooks for the tests of the plan, and what the tests ask of a plan. */
import { buildPlan } from '$lib/engine/planner/plan';
import { Model } from '$lib/engine/model';
import { ERROR_CODES, NOTHING_KINDS } from '$lib/engine/state';
import { cellAt } from '$lib/engine/layout';
import { isUnary, Op, parameterCount } from '$lib/engine/operations';
import type { Plan, PlanProblem } from '$lib/engine/plan';
import {
	VERSION,
	type Quantity,
	type Relation,
	type SetDefinition,
	type Workbook
} from '$lib/workbook/schema';

export type Part = Omit<Quantity, 'label'> & { label?: string };

export interface Shop {
	sets?: Record<string, readonly string[] | Omit<SetDefinition, 'name' | 'label'>>;
	relations?: Record<string, { sets: string[]; pairs: string[][] }>;
	units?: Workbook['units'];
	quantities: Record<string, Omit<Part, 'name'>>;
}

/** A workbook with one sheet and one scenario. */
export function workbookOf({ sets = {}, relations = {}, units = [], quantities }: Shop): Workbook {
	return {
		format: 'metrewright',
		version: VERSION,
		title: 'Shop',
		units,
		sets: Object.entries(sets).map(([name, given]) => {
			const rest = isIds(given) ? { members: given.map((id) => ({ id })) } : given;
			return { name, label: name, ...rest };
		}),
		relations: Object.entries(relations).map(([name, rest]): Relation => ({ name, ...rest })),
		sheets: [
			{
				title: 'Sheet',
				quantities: Object.entries(quantities).map(([name, rest]) => ({
					label: name,
					...rest,
					name
				}))
			}
		],
		scenarios: [{ id: 'base', title: 'Base', parent: null, changes: [] }]
	};
}

function isIds(given: readonly string[] | object): given is readonly string[] {
	return Array.isArray(given);
}

export const planOf = (shop: Shop): Plan => buildPlan(workbookOf(shop));

/** The cell of a quantity for these members, by id. */
export function cellOf(plan: Plan, name: string, ...members: string[]): number {
	const quantity = plan.layout.byName.get(name);
	if (!quantity) throw new Error(`no quantity ${name}`);
	const ordinals = members.map(
		(id, axis) => plan.layout.ordinals.get(quantity.axes[axis]?.set ?? '')?.get(id) ?? -1
	);
	return cellAt(quantity, ordinals);
}

/** Names of the operations, by number. */
const NAMES = new Map(Object.entries(Op).map(([name, op]) => [op as number, name]));

/** The formula of a cell as lowered, in words: "Multiply(price[A], 0.001)". */
export function lowered(plan: Plan, cell: number): string {
	const root = plan.roots[cell] ?? -1;
	return root < 0 ? 'input' : write(plan, root);
}

/** A cell's name with members: "price[A]"; a lifted cell stands in braces with what it computes. */
function cellWords(plan: Plan, cell: number): string {
	if (cell >= plan.layout.cells) return `{${lowered(plan, cell)}}`;
	const quantity = plan.layout.quantities[plan.layout.quantityOfCell[cell] ?? -1];
	if (!quantity) return '?';
	const start = (cell - quantity.base) * quantity.axes.length;
	const ids = quantity.axes.map((axis, at) => {
		const ordinal = quantity.members[start + at] ?? -1;
		return plan.layout.sets.get(axis.set)?.members[ordinal]?.id ?? '?';
	});
	return quantity.quantity.name + (ids.length > 0 ? `[${ids.join(';')}]` : '');
}

function write(plan: Plan, node: number): string {
	const { op, a, b, lists, constants } = plan.nodes;
	if (node < 0) return '-';
	const code = op[node] ?? 0;
	const left = a[node] ?? 0;
	const right = b[node] ?? 0;
	const list = (start: number, count: number) =>
		Array.from(lists.subarray(start, start + count), (one) => write(plan, one)).join(', ');
	const name = NAMES.get(code) ?? '?';
	if (code === Op.Constant) return String(constants[left]);
	if (code === Op.Cell) return cellWords(plan, left) + ['', '@reference', '@base'][right];
	if (code === Op.Nothing) return `Nothing(${left})`;
	if (code === Op.If) return `If(${list(left, 3)})`;
	if (code === Op.And || code === Op.Or) return `${name}(${list(left, right)})`;
	if (code === Op.Pick) return `Pick(${write(plan, left)}: ${list(right + 1, lists[right] ?? 0)})`;
	if (code === Op.InRange) return `InRange(${write(plan, left)})`;
	if (code >= Op.Sum) {
		const terms: string[] = [];
		for (let at = left; at < left + 3 * right; at += 3) {
			const [value, filter, place] = [lists[at] ?? 0, lists[at + 1] ?? -1, lists[at + 2] ?? -1];
			terms.push(
				write(plan, value) +
					(filter >= 0 ? ` if ${write(plan, filter)}` : '') +
					(place >= 0 ? ` at ${write(plan, place)}` : '')
			);
		}
		const parameters = parameterCount(code);
		const rest = parameters > 0 ? `; ${list(left + 3 * right, parameters)}` : '';
		return `${name}(${terms.join(', ')}${rest})`;
	}
	return isUnary(code)
		? `${name}(${write(plan, left)})`
		: `${name}(${write(plan, left)}, ${write(plan, right)})`;
}

/** The formula of one quantity, lowered for its first or the named cell. */
export const formula = (plan: Plan, name: string, ...members: string[]): string =>
	lowered(plan, cellOf(plan, name, ...members));

/** The one problem of a plan; the test fails when there are more or none. */
export function problemOf(plan: Plan): PlanProblem {
	const [problem] = plan.problems;
	if (!problem || plan.problems.length > 1)
		throw new Error(`expected one problem, found ${JSON.stringify(plan.problems, null, 1)}`);
	return problem;
}

/** The words of a formula that a problem points at. */
export const at = (text: string, { span }: PlanProblem): string => text.slice(span.start, span.end);

/** What the base scenario computes: a number, or a state in words ("absent", "divides-by-zero"). */
export function computed(shop: Shop, name: string, ...members: string[]): number | string {
	return computedIn(Model.open(workbookOf(shop)), 'base', name, ...members);
}

export function computedIn(
	model: Model,
	scenario: string,
	name: string,
	...members: string[]
): number | string {
	const { values, states } = model.results(scenario);
	const cell = cellOf(model.plan, name, ...members);
	const state = states[cell] ?? 0;
	return state === 0 ? (values[cell] ?? NaN) : (NOTHING_KINDS[state] ?? ERROR_CODES[state] ?? '?');
}
