/** The tree of a formula, names not yet resolved; or what is wrong in it, in the words of `unexpected.ts`. */
import { readTree } from './read-tree';
import type { ParseResult } from './tree';
import { explainUnexpected } from './unexpected';

export const parseFormula = (text: string): ParseResult => readTree(text, explainUnexpected);
