/**
 * One formula under proof: whose it is, the variables that run in it, the problems found, and the gathering
 * that the author left out and the printer writes down.
 */
import type { Argument, Binding, Expression, Span } from '$lib/formula/tree';
import type { PlanProblem } from '../plan';
import type { Context, KnownQuantity } from './context';
import { Scope } from './scope';
import { BAD, type Read, type Typed, type Variable } from './types';

/** Proves a part of the formula; `expected`: the set of which a member is expected at the place. */
export type Prove = (
	proof: Proof,
	expression: Expression,
	scope: Scope,
	expected?: string
) => Typed;

/** More axes than this never run in one formula. */
const VARIABLE_LIMIT = 30;

/** Characters of a formula that a sentence quotes. */
const MOST_WORDS = 48;

export class Proof {
	readonly problems: PlanProblem[] = [];
	readonly warnings: PlanProblem[] = [];
	/** What an argument gathers without saying so. */
	readonly gathered = new Map<Argument, readonly Binding[]>();
	/** Set of each variable, by slot. */
	readonly variables: Variable[] = [];
	/** The references met in the arguments around the place in hand, innermost last. */
	readonly reads: Read[][] = [];
	readonly scope: Scope;

	constructor(
		readonly context: Context,
		readonly owner: KnownQuantity,
		readonly part: string | null,
		readonly text: string
	) {
		this.scope = new Scope(null, false);
		for (const axis of owner.layout.axes) this.scope.add(this.variable(axis.name, axis.set));
	}

	get name(): string {
		return this.owner.layout.quantity.name;
	}

	/** The quantity's own axes in words: "per product and line". */
	get perWords(): string {
		const axes = this.owner.layout.axes.map((axis) => axis.name);
		return axes.length === 0 ? 'one value' : `per ${axes.join(' and ')}`;
	}

	variable(name: string, set: string): Variable {
		const size = this.context.sets.get(set)?.ids.length ?? 0;
		const variable = { name, set, size, slot: this.variables.length };
		if (variable.slot === VARIABLE_LIMIT)
			this.report(
				'too-many-axes',
				`This formula gathers over too many sets, one inside the other: give its parts quantities of their own.`,
				{ start: 0, end: this.text.length }
			);
		this.variables.push(variable);
		return variable;
	}

	report(code: string, message: string, span: Span, suggestion?: string): void {
		if (this.problems.some((problem) => problem.span.start === span.start && problem.code === code))
			return;
		this.problems.push({
			quantity: this.name,
			part: this.part,
			code,
			message,
			span,
			...(suggestion === undefined ? {} : { suggestion })
		});
	}

	/** Reports, and gives the value that nothing more is said about. */
	refuse(code: string, message: string, source: Expression, suggestion?: string): Typed {
		this.report(code, message, source.span, suggestion);
		return broken(source);
	}

	warn(code: string, message: string, span: Span): void {
		this.warnings.push({ quantity: this.name, part: this.part, code, message, span });
	}

	/** What an argument gathers without saying so; `map` rebuilds arguments, so the place in the text decides. */
	gatheredAt(argument: Argument): readonly Binding[] | undefined {
		if (argument.over.length > 0) return undefined;
		for (const [one, over] of this.gathered)
			if (one.span.start === argument.span.start && one.span.end === argument.span.end) return over;
		return undefined;
	}

	/** The author's own words for a piece of the formula. */
	words(source: Expression | null): string {
		if (!source) return 'this';
		const text = this.#textOf(source);
		return text.length <= MOST_WORDS ? text : `${text.slice(0, MOST_WORDS - 1)}…`;
	}

	/** Whether those words are all of it, so that a formula can be written with them. */
	isQuotedWhole(source: Expression | null): boolean {
		return source !== null && this.#textOf(source).length <= MOST_WORDS;
	}

	#textOf({ span }: Expression): string {
		return this.text.slice(span.start, span.end).replace(/\s+/g, ' ');
	}
}

export function broken(source: Expression | null): Typed {
	return { kind: 'broken', type: BAD, free: 0, fixed: false, source };
}
