/**
 * What a unit is: a dimension (exponents of base dimensions) and a scale (how many base units one
 * of it is). Parsing belongs to `parse.ts`, arithmetic to `algebra.ts`, conversion to `convert.ts`.
 */

/**
 * Exponents by base symbol, without zeros, keys in code-point order; no prototype, so that a
 * symbol such as "constructor" is only a symbol. Metre per second is { m: 1, s: -1 }.
 */
export type Dimension = Readonly<Record<string, number>>;

export interface Unit {
	/** As a person wrote it: "EUR/kg". The plain number one is "1". */
	readonly text: string;
	readonly dimension: Dimension;
	/** One of this unit in base units (m, kg, s, K, each currency and each count its own base). */
	readonly scale: number;
	/**
	 * The symbols that make it up, each once, in the order of printing. They carry the scale as a fraction, so that
	 * factors come out exact. A unit made by hand may leave them out; it then counts as one symbol.
	 */
	readonly parts?: readonly UnitPart[] | undefined;
}

/** A symbol with what one of it is: numerator / denominator base units, exactly. */
export interface UnitSymbol {
	readonly symbol: string;
	readonly dimension: Dimension;
	readonly numerator: bigint;
	readonly denominator: bigint;
}

/** A symbol and its exponent in a unit; never 0. */
export interface UnitPart extends UnitSymbol {
	readonly exponent: number;
}

/** A unit that a workbook adds: a thing counted or a currency (a base), or a multiple of another unit. */
export interface UnitDefinition {
	readonly symbol: string;
	readonly label?: string | undefined;
	/** For a multiple: "1000 EUR" says that one kEUR is a thousand EUR. Left out: a base of its own. */
	readonly equals?: string | undefined;
}

export interface UnitProblem {
	readonly code: 'unknown-unit' | 'bad-unit' | 'exponent-too-large' | 'duplicate-unit' | 'too-long';
	/** A sentence for the screen that says what is wrong and what to do. */
	readonly message: string;
	/** Where in the unit's text, from 0, end exclusive. */
	readonly start: number;
	readonly end: number;
	/** The nearest known symbol, if one is near. */
	readonly nearest?: string | undefined;
	/** The workbook's own unit whose definition is at fault; the place is then in its `equals`. */
	readonly symbol?: string | undefined;
}

export type UnitResult =
	| { readonly ok: true; readonly unit: Unit }
	| { readonly ok: false; readonly problem: UnitProblem };
