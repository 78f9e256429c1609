/**
 * The parser's place in a list of tokens: look, take, and remember the first problem.
 *
 * A reading function that meets a mistake records it here and returns null; its callers return null in
 * turn, so the first problem is the one reported. What a mistake means is worded in `unexpected.ts`.
 */
import { place, problem, type SyntaxCode } from './problems';
import type { Mark, Token } from './token';
import { FORMULA_LIMITS, tokenize } from './tokens';
import type { Expression, FormulaProblem, Span } from './tree';

/** Reads an expression; brackets, indices and arguments come back to it. */
export type ReadExpression = (reader: TokenReader) => Expression | null;

/** What to say of the token in hand; `inside` names the function whose arguments are being read. */
export type Explain = (reader: TokenReader, inside?: string) => FormulaProblem;

export class TokenReader {
	readonly text: string;
	readonly #tokens: readonly Token[];
	readonly #expression: ReadExpression;
	readonly #heights = new Map<Expression, number>();
	#at = 0;
	#first = 0;
	#depth = 0;
	#problem: FormulaProblem | null = null;

	readonly #explain: Explain;

	constructor(text: string, expression: ReadExpression, explain: Explain) {
		this.#explain = explain;
		this.text = text;
		this.#tokens = tokenize(text);
		this.#expression = expression;
	}

	get token(): Token {
		return this.#tokens[this.#at]!;
	}

	get next(): Token {
		return this.#tokens[Math.min(this.#at + 1, this.#tokens.length - 1)]!;
	}

	get previous(): Token | undefined {
		return this.#tokens[this.#at - 1];
	}

	get problem(): FormulaProblem | null {
		return this.#problem;
	}

	/** Whether no token of the formula proper has been taken. */
	get isStart(): boolean {
		return this.#at === this.#first;
	}

	/** A formula may be entered with = before it. */
	skipLeadingEquals(): void {
		if (this.takeMark('=')) this.#first = this.#at;
	}

	/** Where the token in hand begins. */
	get start(): number {
		return this.token.span.start;
	}

	/** The token in hand, stepping past it; the last one stays. */
	take(): Token {
		const taken = this.token;
		if (this.#at < this.#tokens.length - 1) this.#at++;
		return taken;
	}

	isMark(...marks: readonly Mark[]): boolean {
		return this.token.kind === 'mark' && marks.includes(this.token.text);
	}

	isWord(...words: readonly string[]): boolean {
		return this.token.kind === 'name' && words.includes(this.token.text);
	}

	/** Whether the mark stood there; if so it is taken. */
	takeMark(mark: Mark): boolean {
		const there = this.isMark(mark);
		if (there) this.take();
		return there;
	}

	/** From a start to the end of the last token taken. */
	spanFrom(start: number): Span {
		return { start, end: this.previous?.span.end ?? start };
	}

	/** The author's words between a start and the last token taken. */
	wordsFrom(start: number): string {
		return this.text.slice(start, this.spanFrom(start).end);
	}

	expression(): Expression | null {
		return this.#expression(this);
	}

	/** Records a problem, unless there is one already. */
	fail(code: SyntaxCode, span: Span, message: string, suggestion?: string): null {
		this.#problem ??= problem(code, span, message, suggestion);
		return null;
	}

	/** The token in hand does not belong here. */
	unexpected(inside?: string): null {
		this.#problem ??= this.token.kind === 'bad' ? this.token.problem : this.#explain(this, inside);
		return null;
	}

	/** Steps one level down; false, with a problem, if that is too deep. */
	enter(span: Span): boolean {
		this.#depth++;
		if (this.#depth <= FORMULA_LIMITS.nesting) return true;
		this.#tooDeep(span, `more than ${FORMULA_LIMITS.nesting} levels of brackets or signs`);
		return false;
	}

	leave(): void {
		this.#depth--;
	}

	/** Takes the bracket that closes `open`; false, with a problem, if another token stands there. */
	close(open: Token, mark: ')' | ']', inside?: string): boolean {
		if (this.takeMark(mark)) return true;
		const opened = mark === ')' ? '(' : '[';
		if (this.token.kind === 'end') {
			const message = `The ${opened} at ${place(open.span.start)} is not closed: add ${mark}.`;
			this.fail('unclosed-bracket', open.span, message);
		} else if (this.isMark(')', ']')) {
			const message = `The ${opened} at ${place(open.span.start)} is closed by ${this.token.text}: write ${mark}.`;
			this.fail('mismatched-bracket', this.token.span, message, mark);
		} else this.unexpected(inside);
		return false;
	}

	/** Hands a finished node back, unless the tree under it is too high for those who walk it. */
	built<Node extends Expression>(node: Node, parts: readonly (Expression | null)[]): Node | null {
		let height = 0;
		for (const part of parts)
			if (part !== null) height = Math.max(height, this.#heights.get(part) ?? 0);
		if (height >= FORMULA_LIMITS.height)
			return this.#tooDeep(node.span, `more than ${FORMULA_LIMITS.height} operations in a row`);
		this.#heights.set(node, height + 1);
		return node;
	}

	#tooDeep(span: Span, found: string): null {
		const message = `This formula has ${found}. Give some of its parts quantities of their own, or gather with SUM(x over set).`;
		return this.fail('too-deep', span, message);
	}
}
