/**
 * The units of one workbook: those that every workbook knows and those that it adds itself.
 */
import { parseAmount, type AmountResult } from './amount';
import { definedSymbols } from './define';
import { ALIASES, type KnownSymbol } from './known';
import { nearestSymbol } from './near';
import { parseUnit, type LookUp } from './parse';
import type { UnitDefinition, UnitProblem, UnitResult } from './unit';
import { brokenUnit, unknownUnit } from './wording';

/** A symbol as a list offers it. */
export interface OfferedSymbol {
	readonly symbol: string;
	readonly label: string;
}

interface Created {
	readonly system: UnitSystem;
	readonly problems: readonly UnitProblem[];
}

const NONE: readonly UnitDefinition[] = [];
const made = new WeakMap<readonly UnitDefinition[], Created>();

export class UnitSystem {
	readonly #known: ReadonlyMap<string, KnownSymbol>;
	readonly #broken: ReadonlySet<string>;
	readonly #parsed = new Map<string, UnitResult>();

	private constructor(known: ReadonlyMap<string, KnownSymbol>, broken: ReadonlySet<string>) {
		this.#known = known;
		this.#broken = broken;
	}

	/**
	 * The system always serves; definitions with a fault are left out of it and reported. The same list gives the same
	 * system, with what it has read already: an edit of another part of the workbook leaves its list as it was.
	 */
	static create(definitions: readonly UnitDefinition[]): Created {
		const list = definitions.length === 0 ? NONE : definitions;
		let created = made.get(list);
		if (!created) {
			const { known, broken, problems } = definedSymbols(list);
			made.set(list, (created = { system: new UnitSystem(known, broken), problems }));
		}
		return created;
	}

	/** '' and '1' are the plain number one. */
	parse(text: string): UnitResult {
		const before = this.#parsed.get(text);
		if (before) return before;
		const result = parseUnit(text, this.#lookUp);
		// What is typed letter by letter would otherwise stay for good.
		if (this.#parsed.size >= REMEMBERED) this.#parsed.clear();
		this.#parsed.set(text, result);
		return result;
	}

	/** A number above 0 with a unit after it: "1 year", "1000 EUR". */
	parseAmount(text: string): AmountResult {
		return parseAmount(text, this.#lookUp);
	}

	/** In the order of offering: the workbook's own last. */
	get symbols(): readonly OfferedSymbol[] {
		return [...this.#known.values()].map(({ symbol, label }) => ({ symbol, label }));
	}

	/** The known symbol that was probably meant. */
	nearest(text: string): string | undefined {
		return nearestSymbol(text, [...this.#known.keys()]);
	}

	readonly #lookUp: LookUp = (symbol) => {
		const found = this.#known.get(symbol) ?? this.#known.get(ALIASES.get(symbol) ?? '');
		if (found) return found;
		if (this.#broken.has(symbol)) return { message: brokenUnit(symbol) };
		const nearest = this.nearest(symbol);
		return { message: unknownUnit(symbol, nearest), nearest };
	};
}

const REMEMBERED = 2000;
