/**
 * The tree of one formula, as read: names are not yet resolved, nothing is aligned, no unit is proven.
 * Every node says where it stands in the text. Brackets leave no node; the printer writes those that are needed.
 */

export interface Span {
	/** First character, from 0. */
	readonly start: number;
	/** One past the last character. */
	readonly end: number;
}

export type BinaryOperator = '+' | '-' | '*' | '/' | '^' | '=' | '<>' | '<' | '<=' | '>' | '>=';

export type Expression = NumberLiteral | Reference | Call | Negation | Percent | Binary;

export interface NumberLiteral {
	readonly kind: 'number';
	readonly value: number;
	/** The digits as written, so that printing gives them back. */
	readonly text: string;
	/** The text between the brackets of `0.5[h]`, or null for a plain number. */
	readonly unit: string | null;
	readonly span: Span;
	readonly unitSpan: Span | null;
}

/** A quantity, a set's own index, or a member: which one only resolution can tell. */
export interface Reference {
	readonly kind: 'reference';
	/** The set in `stage.line`, or null. */
	readonly qualifier: string | null;
	readonly name: string;
	/** Whether the name stood in quotes: '5x24'. */
	readonly quoted: boolean;
	/** What stands in square brackets; empty when there are none. */
	readonly indices: readonly Index[];
	/** The `else` inside the brackets: what holds off the end. */
	readonly otherwise: Expression | null;
	readonly span: Span;
	readonly nameSpan: Span;
}

export type Index =
	| { readonly kind: 'scenario'; readonly which: 'base' | 'reference'; readonly span: Span }
	/** `month - 1`: the neighbour along an axis. Whole, not zero; up to 1000 either way. */
	| {
			readonly kind: 'neighbour';
			readonly axis: string;
			readonly offset: number;
			readonly span: Span;
	  }
	/** A member, an index name, or any expression whose value is a member. */
	| { readonly kind: 'member'; readonly value: Expression; readonly span: Span };

export interface Call {
	readonly kind: 'call';
	/** Upper case. */
	readonly name: string;
	readonly args: readonly Argument[];
	readonly span: Span;
	readonly nameSpan: Span;
}

export interface Argument {
	readonly value: Expression;
	readonly over: readonly Binding[];
	readonly where: Expression | null;
	/** `AGGREGATE(x over s else y)`: what holds when nothing is left to gather. */
	readonly otherwise: Expression | null;
	readonly span: Span;
}

/** `over layer` has index null; `over l in layer` has index "l". */
export interface Binding {
	readonly index: string | null;
	readonly axis: string;
	readonly span: Span;
}

export interface Negation {
	readonly kind: 'negation';
	readonly of: Expression;
	readonly span: Span;
}

export interface Percent {
	readonly kind: 'percent';
	readonly of: Expression;
	readonly span: Span;
}

export interface Binary {
	readonly kind: 'binary';
	readonly operator: BinaryOperator;
	readonly left: Expression;
	readonly right: Expression;
	readonly span: Span;
}

/** Something that the author of a formula can mend. */
export interface FormulaProblem {
	readonly code: string;
	/** A sentence for the screen: what is wrong, with the words at fault, and what to write instead. */
	readonly message: string;
	readonly span: Span;
	/** Text that may replace the span, where one remedy is plain. */
	readonly suggestion?: string | undefined;
}

export type ParseResult =
	| { readonly ok: true; readonly expression: Expression }
	| { readonly ok: false; readonly problem: FormulaProblem };
