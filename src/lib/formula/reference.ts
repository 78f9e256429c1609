/** The functions as a reference lists them, on the command line and on its page alike, from the one table. */
import { FUNCTION_WORDS, type Example } from './function-words';
import { FUNCTIONS } from './functions';

export interface FunctionEntry {
	readonly name: string;
	readonly kind: 'aggregate' | 'scalar';
	/** Fewest and most arguments; null: as many as you like. */
	readonly arguments: { readonly minimum: number; readonly maximum: number | null };
	readonly signature: string;
	readonly help: string;
	/** In OpenFormula too. */
	readonly standard: boolean;
	readonly example: Example;
}

export function functionEntries(): FunctionEntry[] {
	return [...FUNCTIONS.values()].map(({ name, kind, minimum, maximum, signature, standard }) => ({
		name,
		kind,
		arguments: { minimum, maximum: Number.isFinite(maximum) ? maximum : null },
		signature,
		standard,
		...FUNCTION_WORDS[name]
	}));
}

/** An example with what it gives: "ROUND(1.005; 2) gives 1.01". */
export const exampleText = ({ formula, gives }: Example) =>
	gives === undefined ? formula : `${formula} gives ${gives}`;
