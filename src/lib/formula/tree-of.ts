/** The tree of a formula for those who only look through it, such as renaming: without the words for mistakes. */
import { problem } from './problems';
import { readTree } from './read-tree';
import type { Expression } from './tree';

/** Null where the text cannot be read. */
export function treeOf(text: string): Expression | null {
	const read = readTree(text, ({ token }) => problem('missing-operand', token.span, ''));
	return read.ok ? read.expression : null;
}
