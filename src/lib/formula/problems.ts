/**
 * The wording of everything that the reader of formulas refuses. Each sentence says what stands there
 * and what to write instead; decide on `code`, never on the message.
 */
import type { FormulaProblem, Span } from './tree';

export type SyntaxCode =
	| 'too-long'
	| 'too-many-parts'
	| 'too-deep'
	| 'empty-formula'
	| 'unknown-character'
	| 'bad-number'
	| 'decimal-comma'
	| 'comma-separator'
	| 'text'
	| 'unclosed-quote'
	| 'no-cells'
	| 'wrong-operator'
	| 'unclosed-bracket'
	| 'unopened-bracket'
	| 'mismatched-bracket'
	| 'stray-separator'
	| 'missing-operand'
	| 'missing-operator'
	| 'unit-brackets'
	| 'two-readings'
	| 'chained-comparison'
	| 'reserved-word'
	| 'misplaced-word'
	| 'unknown-function'
	| 'argument-count'
	| 'missing-argument'
	| 'bad-binding'
	| 'bad-index'
	| 'bad-member';

export function problem(
	code: SyntaxCode,
	span: Span,
	message: string,
	suggestion?: string
): FormulaProblem {
	return suggestion === undefined ? { code, message, span } : { code, message, span, suggestion };
}

/** As much of the author's words as a sentence can carry. */
export function clip(words: string, longest = 40): string {
	const oneLine = words.trim().replace(/\s+/gu, ' ');
	const letters = Array.from(oneLine);
	return letters.length <= longest ? oneLine : `${letters.slice(0, longest - 1).join('')}…`;
}

/** A character as a reader can recognise it: itself, or its code point if it has no shape. */
export function show(character: string): string {
	if (!/[\p{C}\p{Z}\p{M}]/u.test(character)) return character;
	const code = character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
	return `U+${code}`;
}

/** "character 12", counted from 1 as a person counts. */
export const place = (offset: number) => `character ${offset + 1}`;
