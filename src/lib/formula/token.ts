/** What a token is: a piece of a formula's text as `tokens.ts` cuts it. */
import type { FormulaProblem, Span } from './tree';

export type Mark =
	| '+'
	| '-'
	| '*'
	| '/'
	| '^'
	| '%'
	| '='
	| '<>'
	| '<'
	| '<='
	| '>'
	| '>='
	| '('
	| ')'
	| '['
	| ']'
	| ';'
	| ','
	| '.';

export interface NumberToken {
	readonly kind: 'number';
	readonly text: string;
	readonly value: number;
	readonly unit: string | null;
	readonly unitSpan: Span | null;
	readonly span: Span;
}

export type Token =
	| NumberToken
	| { readonly kind: 'name'; readonly text: string; readonly span: Span }
	| { readonly kind: 'quoted'; readonly text: string; readonly span: Span }
	| { readonly kind: 'mark'; readonly text: Mark; readonly span: Span }
	| {
			readonly kind: 'bad';
			readonly text: string;
			readonly problem: FormulaProblem;
			readonly span: Span;
	  }
	| { readonly kind: 'end'; readonly text: string; readonly span: Span };
