/**
 * The units that a workbook adds: new bases, and multiples of other units. They may stand in any order; one
 * that is defined twice, in a circle or wrongly is reported and left out.
 */
import { exactScale, partsOf } from './algebra';
import { parseAmount } from './amount';
import { baseDimension } from './dimension';
import { logTen, reduced, times } from './fraction';
import { ALIASES, KNOWN, type KnownSymbol } from './known';
import { nearestSymbol } from './near';
import type { LookUp } from './parse';
import { SYMBOL } from './tokens';
import type { UnitDefinition, UnitProblem, UnitSymbol } from './unit';
import * as wording from './wording';

export interface DefinedSymbols {
	/** Built-in symbols first, then the workbook's own. */
	readonly known: ReadonlyMap<string, KnownSymbol>;
	/** The workbook's own symbols whose definition has a fault. */
	readonly broken: ReadonlySet<string>;
	readonly problems: UnitProblem[];
}

/** Problems that somebody reads: a suggestion for each of thousands would take minutes to find. */
const TOLD = 50;
/** Digits of a unit's scale: more than any written number has, few enough to compute with to the ninth power. */
const MOST_DIGITS = 150;

export function definedSymbols(definitions: readonly UnitDefinition[]): DefinedSymbols {
	return new Definer(definitions).all();
}

class Definer {
	readonly #definitions = new Map<string, UnitDefinition>();
	readonly #known = new Map(KNOWN.map((known) => [known.symbol, known]));
	readonly #broken = new Set<string>();
	readonly #problems: UnitProblem[] = [];
	/** Symbols being worked out, outermost first. */
	readonly #open: string[] = [];

	constructor(definitions: readonly UnitDefinition[]) {
		for (const definition of definitions) this.#collect(definition);
	}

	all(): DefinedSymbols {
		for (const symbol of this.#definitions.keys()) this.#find(symbol);
		return { known: this.#inOrder(), broken: this.#broken, problems: this.#problems };
	}

	#collect(definition: UnitDefinition): void {
		const symbol = definition.symbol.normalize('NFC');
		if (!SYMBOL.test(symbol)) this.#report('bad-unit', wording.badSymbol(symbol), symbol);
		else if (this.#known.has(symbol) || ALIASES.has(symbol))
			this.#report('duplicate-unit', wording.builtIn(symbol), symbol);
		else if (this.#definitions.has(symbol))
			this.#report('duplicate-unit', wording.definedTwice(symbol), symbol);
		else this.#definitions.set(symbol, definition);
	}

	/** The definition's symbol, worked out on first need. */
	#find(symbol: string): KnownSymbol | null {
		const known = this.#known.get(symbol);
		if (known) return known;
		const definition = this.#definitions.get(symbol);
		if (!definition || this.#broken.has(symbol)) return null;
		this.#open.push(symbol);
		const meaning = this.#meaning(symbol, definition);
		this.#open.pop();
		if (!meaning) {
			this.#broken.add(symbol);
			return null;
		}
		const found = { ...meaning, label: definition.label ?? symbol };
		this.#known.set(symbol, found);
		return found;
	}

	#meaning(symbol: string, { equals }: UnitDefinition): UnitSymbol | null {
		if (equals === undefined)
			return { symbol, dimension: baseDimension(symbol), numerator: 1n, denominator: 1n };
		const amount = parseAmount(equals, this.#lookUp);
		if (!amount.ok) {
			const message = wording.inDefinition(symbol, amount.problem.message);
			this.#problems.push({ ...amount.problem, message, symbol });
			return null;
		}
		const scale = reduced(times(amount.number, exactScale(partsOf(amount.unit))));
		if (Math.max(logTen(scale.numerator), logTen(scale.denominator)) > MOST_DIGITS) {
			this.#report('bad-unit', wording.multipleOutOfReach(symbol), symbol, equals.length);
			return null;
		}
		return { symbol, dimension: amount.unit.dimension, ...scale };
	}

	readonly #lookUp: LookUp = (symbol) => {
		const place = this.#open.indexOf(symbol);
		if (place >= 0) return { message: wording.definedInCircle(this.#open.slice(place)) };
		const found = this.#find(symbol) ?? this.#known.get(ALIASES.get(symbol) ?? '');
		if (found) return found;
		if (this.#broken.has(symbol)) return { message: wording.brokenUnit(symbol) };
		const isTold = this.#problems.length < TOLD;
		const nearest = isTold
			? nearestSymbol(symbol, [...this.#known.keys(), ...this.#definitions.keys()])
			: undefined;
		return { message: wording.unknownUnit(symbol, nearest), nearest };
	};

	#report(code: UnitProblem['code'], message: string, symbol: string, end = 0): void {
		this.#problems.push({ code, message, start: 0, end, symbol });
	}

	/** Those worked out early because another needs them go back to where the workbook lists them. */
	#inOrder(): ReadonlyMap<string, KnownSymbol> {
		const order = [...KNOWN.map((known) => known.symbol), ...this.#definitions.keys()];
		return new Map(
			order.flatMap((symbol) => {
				const known = this.#known.get(symbol);
				return known ? [[symbol, known] as const] : [];
			})
		);
	}
}
