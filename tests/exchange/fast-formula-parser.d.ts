/** What the tests use of it; the package has no types of its own. */
declare module 'fast-formula-parser' {
	export default class FormulaParser {
		static readonly FormulaError: { readonly NA: Error; readonly VALUE: Error };
		constructor(options: {
			functions?: Readonly<Record<string, never>>;
			onCell: (at: { sheet: string; row: number; col: number }) => unknown;
			onRange: (range: {
				sheet: string;
				from: { row: number; col: number };
				to: { row: number; col: number };
			}) => unknown[][];
		});
		parse(formula: string, at: { sheet: string; row: number; col: number }): unknown;
	}
}
