/**
 * Why a value is missing, in a sentence, and where that arose. `root-cause.ts` finds the node that failed; here it
 * is looked at once more in the formula as written, so that names and fixed values can be told.
 */
import { printFormula } from '$lib/formula/print';
import type { Expression, Reference } from '$lib/formula/tree';
import { scenarioTitle } from '$lib/workbook/lookup';
import { inputAt } from '$lib/workbook/scenario';
import type { Workbook } from '$lib/workbook/schema';
import { blamed, findFault, probeIn, scenarioOf, type Answers, type Fault } from './root-cause';
import { trace, type Trace } from './planner/trace';
import { dateFault } from './date-words';
import { numberOf } from './entry';
import type { Probe } from './interpreter/probe';
import { cellAt, membersOf, placeOf } from './layout';
import { onSameLoop } from './loop-cells';
import { labelOf, nameOf, ownerOf, valueText, withUnit } from './naming';
import { nothingLeft, whyNoAnswer } from './no-answer';
import { isAggregate, Op, parameterCount } from './operations';
import { LOOP, type PlanProblem } from './plan';
import type { Origin } from './results';
import {
	ABSENT,
	BAD_ARGUMENT,
	BAD_FORMULA,
	CIRCULAR,
	HITS_NOTHING,
	NO_ANSWER,
	NOT_ENTERED,
	OFF_END,
	OK,
	OUT_OF_RANGE,
	TOO_LARGE,
	type State
} from './state';
import { numberText } from './number-words';
import * as words from './wording';
import { passedOn, zerosOf } from './zeros';

/** Null where the cell has a value. */
export function originOf(
	answers: Answers,
	workbook: Workbook,
	scenario: string,
	cell: number
): Origin | null {
	if (answers.column(scenario).states[cell] === OK) return null;
	const fault = findFault(answers, scenario, cell);
	return new Reason(answers, workbook, { scenario, cell }).of(fault);
}

interface Asked {
	readonly scenario: string;
	readonly cell: number;
}

/** A formula with the values in it, and where it is the formula as written, its pieces. */
interface Looked {
	readonly own: Probe;
	readonly node: number;
	readonly written: Trace | null;
}

class Reason {
	constructor(
		readonly answers: Answers,
		readonly workbook: Workbook,
		readonly asked: Asked
	) {}

	of(fault: Fault): Origin {
		const { plan } = this.answers;
		if (!fault.formula) return this.#origin(fault, fault.named, this.#ofCell(fault));
		const { probe: own, node } = fault.formula;
		const op = own.nodes.op[node]!;
		const looked =
			op === Op.InRange || op === Op.Guard || fault.cell !== fault.named
				? { own, node, written: null }
				: this.#asWritten(fault, { own, node, written: null });
		const at =
			looked.own.nodes.op[looked.node] === Op.Cell ? looked.own.reading(looked.node) : null;
		const there = at && scenarioOf(this.answers, fault.scenario, at.which);
		if (at && there && plan.roots[at.cell] === -1) {
			// A fixed input, which the plan had folded away, or one that nobody sees.
			const input = { scenario: there, cell: at.cell, named: at.cell, formula: null };
			return this.#origin(input, at.cell, this.#ofCell(input));
		}
		return this.#origin(fault, fault.named, this.#ofNode(fault, looked));
	}

	#origin(fault: Fault, named: number, reason: string): Origin {
		const { layout } = this.answers.plan;
		const isElsewhere = fault.scenario !== this.asked.scenario;
		const title = scenarioTitle(this.workbook, fault.scenario);
		if (this.answers.isCopy(fault.scenario)) return { from: null, reason };
		return {
			from: named === this.asked.cell && !isElsewhere ? null : placeOf(layout, named),
			reason: isElsewhere ? `${reason} This is so in the scenario ${title}.` : reason
		};
	}

	/** The fault of an input, or of a cell on a loop. */
	#ofCell({ scenario, cell, named }: Fault): string {
		const { plan } = this.answers;
		const state = this.answers.column(scenario).states[cell]!;
		const name = nameOf(plan, named);
		if (this.answers.isCopy(scenario)) {
			const because = state === ABSENT ? '' : words.reasonText(state);
			return words.notInCopy(name, scenarioTitle(this.workbook, scenario), because);
		}
		if (state === NOT_ENTERED) return words.notEntered(labelOf(plan, named));
		if (state === ABSENT) return words.absent(name, this.#whyAbsent(scenario, cell));
		if (state === CIRCULAR || state === BAD_FORMULA) return this.#problem(named, state);
		if (state !== OUT_OF_RANGE) return words.reasonText(state);
		const { quantity } = ownerOf(plan, cell);
		const entered = inputAt(this.workbook, scenario, quantity.name, membersOf(plan.layout, cell));
		const value = withUnit(numberOf(entered.value, undefined) ?? NaN, quantity.unit);
		return words.outOfRange({ name, value, isInput: true }, quantity.range ?? {}, unitOf(quantity));
	}

	/** The plan's own problem of the quantity: it names the loop, or the words that cannot be read. */
	#problem(cell: number, state: State): string {
		const { plan } = this.answers;
		const { name } = ownerOf(plan, cell).quantity;
		const problems = plan.problems.filter(({ quantity }) => quantity === name);
		const own =
			problems.find(({ code }) => (code === LOOP) === (state === CIRCULAR)) ??
			(state === CIRCULAR
				? this.#loopOf(
						cell,
						plan.problems.filter(({ code }) => code === LOOP)
					)
				: null);
		return own?.message ?? (state === CIRCULAR ? words.circular(name) : words.reasonText(state));
	}

	/** A loop is reported once, at one of its quantities. */
	#loopOf(cell: number, loops: readonly PlanProblem[]): PlanProblem | undefined {
		const { plan } = this.answers;
		const names = new Set(onSameLoop(plan, cell).map((one) => ownerOf(plan, one).quantity.name));
		return loops.find(({ quantity }) => names.has(quantity));
	}

	/** The node at fault in the formula as written; what was found in the plan where that says no more. */
	#asWritten(fault: Fault, found: Looked): Looked {
		const { plan } = this.answers;
		const written = trace(plan, fault.cell);
		if (!written) return found;
		const own = probeIn(this.answers, fault.scenario, written.nodes, written.root);
		// A condition that says no, or fails, stands around the formula and not in it.
		if (own.value(own.root).state !== found.own.value(found.own.root).state) return found;
		return { own, node: blamed(own, own.root), written };
	}

	#ofNode(fault: Fault, looked: Looked): string {
		const { own, node } = looked;
		const op = own.nodes.op[node]!;
		const operands = own.operands(node);
		const subject = nameOf(this.answers.plan, fault.named);
		const { state } = own.value(node);
		if (state === TOO_LARGE) return words.tooLarge(subject);
		if (isAggregate(op))
			return state === NO_ANSWER
				? words.noAnswer(subject, whyNoAnswer(own, node))
				: ofAggregate(subject, own, node);
		const [a = 0, b = 0] = operands;
		const what = (operand: number) => this.#what(fault, looked, operand);
		switch (op) {
			case Op.Divide: {
				const zeros = zerosOf(own, b).map(({ cell }) => this.#named(cell, 0));
				return words.dividesByZero(subject, zeros, textAt(looked, b) ?? 'the divisor');
			}
			case Op.Sqrt:
				return words.notReal(subject, 'the square root of', what(a), 'a number of 0 or more');
			case Op.Ln:
				return words.notReal(subject, 'the logarithm of', what(a), 'a number above 0');
			case Op.Power:
				return own.value(a).value === 0
					? words.notReal(subject, 'a negative power of', what(a), 'a number other than 0')
					: words.notReal(subject, 'a broken power of', what(a), 'a number of 0 or more');
			case Op.Mod:
				return words.badArgument(subject, `takes the remainder of a division by ${what(b)}`);
			case Op.Ceiling:
			case Op.Floor:
				return words.badArgument(
					subject,
					`rounds ${what(a)} to a multiple of ${what(b)}; a step must be above 0 where the number is`
				);
			case Op.Round:
			case Op.RoundUp:
			case Op.RoundDown:
				return words.badArgument(subject, `rounds to ${what(b)} digits; give a whole number`);
			case Op.Spread:
				return words.badArgument(
					subject,
					`takes ${what(a)} as a standard deviation; give one above 0`
				);
			case Op.NormalQuantile:
				return words.badArgument(
					subject,
					`asks below which value a share of ${what(a)} lies; give a share above 0 and below 1`
				);
			case Op.Pick:
				return words.pairMissing(subject, what(a), lookedUp(looked) ?? 'a value');
			case Op.Guard:
				return this.#ofGuard(fault, looked, a, b);
			case Op.InRange: {
				const { quantity } = ownerOf(this.answers.plan, fault.named);
				const { value } = own.value(a);
				return words.outOfRange(
					{ name: subject, value: withUnit(value, quantity.unit), isInput: false },
					quantity.range ?? {},
					unitOf(quantity)
				);
			}
			case Op.Nothing:
				return this.#ofNothing(fault, looked, state);
			default:
				return state === CIRCULAR ? this.#ofReference(fault) : this.#ofDate(subject, looked, what);
		}
	}

	#ofDate(subject: string, looked: Looked, what: (operand: number) => string): string {
		const { own, node } = looked;
		const [a = 0, b = a] = own.operands(node);
		const call = expressionsAt(looked, node).find((expression) => expression.kind === 'call');
		const named = call?.args[0]?.value;
		const set = {
			name: named?.kind === 'reference' ? named.name : 'the set',
			size: numberText(own.value(b).value)
		};
		const fault = dateFault(own.nodes.op[node]!, what(a), what(b), set);
		return fault === null
			? words.reasonText(own.value(node).state)
			: words.badArgument(subject, fault);
	}

	#ofGuard(fault: Fault, { own, node }: Looked, condition: number, value: number): string {
		const { plan } = this.answers;
		const subject = nameOf(plan, fault.named);
		const reading = passedOn(own, value);
		const says = passedOn(own, condition);
		const because =
			says && says.cell < plan.layout.cells
				? `${nameOf(plan, says.cell)} is no`
				: 'its condition (where) says no';
		if (fault.cell === fault.named && guardsWhole(own, node)) return words.absent(subject, because);
		const name = reading ? nameOf(plan, reading.cell) : 'a value';
		return words.useOfAbsent(subject, name, because);
	}

	#ofNothing(fault: Fault, looked: Looked, state: State): string {
		const { plan } = this.answers;
		const subject = nameOf(plan, fault.named);
		if (state === BAD_FORMULA) return this.#problem(fault.named, state);
		if (state === NO_ANSWER) {
			const call = expressionsAt(looked, looked.node).find(({ kind }) => kind === 'call');
			if (call?.kind === 'call') return words.noAnswer(subject, nothingLeft(call.name));
		}
		if (state === ABSENT && !looked.written)
			return words.absent(subject, this.#whyLeftOut(fault.scenario, fault.named));
		const reference = referencesAt(looked).find(
			(reference) => state !== OFF_END || reference.indices.some(({ kind }) => kind === 'neighbour')
		);
		if (!reference) return words.reasonText(state);
		if (state === HITS_NOTHING || state === ABSENT) {
			const relations = plan.layout.byName.get(reference.name)?.quantity.in ?? [];
			return reference.indices.length === 0 && relations.length > 0
				? words.notRelated(subject, reference.name, relations)
				: words.pairMissing(subject, printFormula(reference), reference.name);
		}
		const index = reference.indices.find(({ kind }) => kind === 'neighbour');
		if (state !== OFF_END || index?.kind !== 'neighbour') return words.reasonText(state);
		const axis = ownerOf(plan, fault.named).axes.findIndex(({ name }) => name === index.axis);
		const member = membersOf(plan.layout, fault.named)[axis] ?? index.axis;
		return words.offEnd(subject, printFormula(reference), member, index.offset < 0);
	}

	#ofReference({ scenario }: Fault): string {
		return words.circularScenarios(scenarioTitle(this.workbook, scenario));
	}

	/** Why a formula's cell is left out: a member that is not there, or the quantity's own condition. */
	#whyLeftOut(scenario: string, cell: number): string {
		const { layout } = this.answers.plan;
		const { values, states } = this.answers.column(scenario);
		const { quantity, axes } = ownerOf(this.answers.plan, cell);
		for (const [at, { set }] of axes.entries()) {
			const present = layout.byName.get(layout.sets.get(set)?.present ?? '');
			if (!present || present.quantity.name === quantity.name) continue;
			const ordinal = layout.ordinals.get(set)?.get(membersOf(layout, cell)[at] ?? '') ?? -1;
			const says = cellAt(present, [ordinal]);
			if (says >= 0 && states[says] === OK && values[says] === 0)
				return `${nameOf(this.answers.plan, says)} is no`;
		}
		return 'its condition (where) says no';
	}

	#whyAbsent(scenario: string, cell: number): string {
		const { plan, conditions, column } = this.answers;
		const { values } = column(scenario);
		const no = conditions.get(cell)?.find((condition) => values[condition] === 0);
		return no !== undefined && no < plan.layout.cells
			? `${nameOf(plan, no)} is no`
			: 'its condition (where) says no';
	}

	#named(cell: number, value: number): words.Named {
		const { plan } = this.answers;
		return {
			name: nameOf(plan, cell),
			value: valueText(plan, cell, value),
			isInput: plan.roots[cell] === -1
		};
	}

	/** An operand with its value: "variance of L1 (-4)". */
	#what(fault: Fault, looked: Looked, operand: number): string {
		const { plan } = this.answers;
		const { value } = looked.own.value(operand);
		const reading = passedOn(looked.own, operand);
		if (reading) {
			const other = scenarioOf(this.answers, fault.scenario, reading.which);
			const there = other ? this.answers.column(other).values[reading.cell]! : value;
			return `${nameOf(plan, reading.cell)} (${valueText(plan, reading.cell, there)})`;
		}
		const text = textAt(looked, operand);
		return text === null || /^-?[\d.]+$/.test(text)
			? numberText(value)
			: `${text} (${numberText(value)})`;
	}
}

/** What an aggregate was given that it cannot take; one without a sentence of its own is told of in general. */
function ofAggregate(subject: string, own: Probe, node: number): string {
	const op = own.nodes.op[node]!;
	switch (op) {
		case Op.Percentile: {
			const share = numberText(own.value(own.operands(node).at(-1)!).value);
			return words.badArgument(subject, `takes a percentile at ${share}; give a share from 0 to 1`);
		}
		case Op.Npv:
		case Op.Mirr: {
			if (own.value(node).state !== BAD_ARGUMENT)
				return words.dividesByZero(subject, [], 'one plus the rate');
			const rates = own
				.operands(node)
				.slice(-parameterCount(op))
				.map((rate) => own.value(rate).value);
			const refused = numberText(Math.min(...rates) * 100);
			return words.badArgument(subject, `discounts at ${refused} %; give a rate above -100 %`);
		}
		case Op.Slope:
		case Op.Intercept:
			return words.dividesByZero(subject, [], 'the spread of x, which is the same in all pairs,');
		default:
			return words.badArgument(
				subject,
				'gathers values that its function does not take; look at them one by one'
			);
	}
}

/** Whether a guard stands around the whole formula, rather than around one reading in it. */
function guardsWhole(own: Probe, guard: number): boolean {
	let node = own.root;
	while (node !== guard && own.nodes.op[node] === Op.Guard) node = own.operands(node)[1]!;
	return node === guard;
}

const unitOf = ({ unit }: { readonly unit?: string | undefined }) =>
	unit === undefined || unit === '1' ? '' : unit;

/** The pieces of the formula as written whose value is that of a node. */
function expressionsAt({ own, written }: Looked, node: number): Expression[] {
	if (!written) return [];
	return [...written.nodeOf].flatMap(([expression, planned]) =>
		own.placeOf(planned) === node ? [expression] : []
	);
}

function textAt(looked: Looked, node: number): string | null {
	const [expression] = expressionsAt(looked, node);
	return expression ? printFormula(expression) : null;
}

const referencesAt = (looked: Looked): Reference[] =>
	expressionsAt(looked, looked.node).flatMap((expression) =>
		expression.kind === 'reference' ? [expression] : []
	);

/** The quantity that a lookup at the node in hand reads. */
const lookedUp = (looked: Looked): string | null => referencesAt(looked)[0]?.name ?? null;
