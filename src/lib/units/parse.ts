/**
 * From a unit's text to its symbols: unit = factor { "*" factor } { "/" factor }, a factor being a symbol, %, 1 or a
 * unit in brackets, with a whole exponent. a/b/c is a/(b*c); a/b*c is refused, as people read it both ways.
 *
 * Which symbols there are is for the caller to say. A mistake is a problem with its place, never a throw.
 */
import { LARGEST_EXPONENT, ONE, raised, unitOf, withinLimits } from './algebra';
import { raisedNumber, tokens, type Token } from './tokens';
import type { UnitPart, UnitProblem, UnitResult, UnitSymbol } from './unit';
import * as wording from './wording';

/** What a symbol means, or why it means nothing. */
export type LookUp = (
	symbol: string
) => UnitSymbol | { readonly message: string; readonly nearest?: string | undefined };

export function parseUnit(text: string, lookUp: LookUp): UnitResult {
	if (text.length > wording.LONGEST_TEXT)
		return refuse('too-long', wording.tooLong(text.length), 0, text.length);
	if (text.trim() === '') return { ok: true, unit: ONE };
	try {
		const parts = new Parser(text, lookUp).whole();
		return { ok: true, unit: unitOf(parts, text.trim()) };
	} catch (stopped) {
		if (stopped instanceof Stopped) return { ok: false, problem: stopped.problem };
		throw stopped;
	}
}

/** Unwinds the descent; never leaves this module. */
class Stopped extends Error {
	constructor(readonly problem: UnitProblem) {
		super(problem.message);
	}
}

function refuse(code: UnitProblem['code'], message: string, start: number, end: number) {
	return { ok: false, problem: { code, message, start, end } } as const;
}

interface Group {
	readonly parts: readonly UnitPart[];
	readonly start: number;
	readonly end: number;
}

class Parser {
	readonly #text: string;
	readonly #lookUp: LookUp;
	readonly #tokens: readonly Token[];
	#at = 0;

	constructor(text: string, lookUp: LookUp) {
		this.#text = text;
		this.#lookUp = lookUp;
		this.#tokens = tokens(text);
	}

	whole(): readonly UnitPart[] {
		const unit = this.#unit(0);
		const next = this.#next;
		if (next.kind === ')') this.#stop('bad-unit', wording.bracketUnopened(), next);
		if (next.kind !== 'end') this.#refuseNeighbour(next);
		return this.#checked(unit).parts;
	}

	#unit(depth: number): Group {
		const above = [this.#factor(depth, '')];
		const below: Group[] = [];
		for (;;) {
			const operator = this.#next;
			if (operator.kind !== '*' && operator.kind !== '/') break;
			this.#at++;
			const factor = this.#factor(depth, operator.text);
			if (operator.kind === '/') below.push(factor);
			else if (below.length === 0) above.push(factor);
			else this.#refuseTwoReadings(above, below, factor);
		}
		const parts = [
			...above.flatMap((factor) => factor.parts),
			...below.flatMap((factor) => raised(factor.parts, -1))
		];
		const last = below.at(-1) ?? above.at(-1);
		return { parts, start: above[0]?.start ?? 0, end: last?.end ?? 0 };
	}

	#factor(depth: number, after: string): Group {
		const base = this.#base(depth, after);
		const exponent = this.#exponent();
		if (exponent === null) return base;
		const end = this.#tokens[this.#at - 1]?.end ?? base.end;
		return this.#checked({ parts: raised(base.parts, exponent), start: base.start, end });
	}

	#base(depth: number, after: string): Group {
		const token = this.#next;
		if (token.kind === '(') return this.#group(token, depth + 1);
		if (token.kind === 'number' && token.text === '1') {
			this.#at++;
			return { parts: [], start: token.start, end: token.end };
		}
		if (token.kind !== 'symbol') return this.#refuseBase(token, after);
		const found = this.#lookUp(token.text.normalize('NFC'));
		if ('message' in found) return this.#stop('unknown-unit', found.message, token, found.nearest);
		this.#at++;
		return { parts: [{ ...found, exponent: 1 }], start: token.start, end: token.end };
	}

	#group(open: Token, depth: number): Group {
		if (depth > wording.DEEPEST_BRACKETS) this.#stop('bad-unit', wording.tooDeep(), open);
		this.#at++;
		const inner = this.#unit(depth);
		const close = this.#next;
		if (close.kind === 'end') this.#stop('bad-unit', wording.bracketOpen(), open);
		if (close.kind !== ')') this.#refuseNeighbour(close);
		this.#at++;
		return { parts: inner.parts, start: open.start, end: close.end };
	}

	/** The exponent that follows, or null. */
	#exponent(): number | null {
		const mark = this.#next;
		if (mark.kind !== '^' && mark.kind !== 'raised') return null;
		this.#at++;
		const exponent = mark.kind === 'raised' ? raisedNumber(mark.text) : this.#written(mark);
		if (Math.abs(exponent) > LARGEST_EXPONENT) {
			const end = this.#tokens[this.#at - 1]?.end ?? mark.end;
			const start = mark.kind === '^' ? mark.end : mark.start;
			const written = this.#text.slice(start, end).trim();
			this.#stop('exponent-too-large', wording.exponentTooLarge(written), { start, end });
		}
		const again = this.#next;
		if (again.kind === '^' || again.kind === 'raised')
			this.#stop('bad-unit', wording.twoExponents(), again);
		return exponent;
	}

	#written(mark: Token): number {
		const sign = this.#next;
		const negative = sign.kind === 'other' && (sign.text === '-' || sign.text === '−');
		if (negative) this.#at++;
		const number = this.#next;
		if (number.kind !== 'number') this.#stop('bad-unit', wording.exponentMissing(), mark);
		if (!/^\d+$/.test(number.text))
			this.#stop('bad-unit', wording.exponentNotWhole(number.text), number);
		this.#at++;
		return (negative ? -1 : 1) * Number(number.text);
	}

	#checked(group: Group): Group {
		if (!withinLimits(unitOf(group.parts)))
			this.#stop('exponent-too-large', wording.unitTooLarge(), group);
		return group;
	}

	get #next(): Token {
		const token = this.#tokens[this.#at] ?? this.#tokens.at(-1);
		if (!token) throw new RangeError('Every list of tokens ends with the token "end".');
		return token;
	}

	#refuseBase(token: Token, after: string): never {
		if (token.kind === 'number') this.#stop('bad-unit', wording.numberInUnit(token.text), token);
		if (token.kind === 'other') this.#stop('bad-unit', wording.strangeCharacter(token.text), token);
		this.#stop('bad-unit', wording.symbolMissing(after), token);
	}

	/** Two factors side by side, or a sign where * or / belongs. */
	#refuseNeighbour(token: Token): never {
		const before = this.#tokens[this.#at - 1];
		if (token.kind === 'other') this.#stop('bad-unit', wording.strangeCharacter(token.text), token);
		if (token.text.toLowerCase() === 'per') this.#stop('bad-unit', wording.wordPer(), token);
		this.#stop('bad-unit', wording.operatorMissing(before?.text ?? '', token.text), token);
	}

	#refuseTwoReadings(above: readonly Group[], below: readonly Group[], factor: Group): never {
		const text = (groups: readonly Group[]) =>
			groups.map((group) => this.#text.slice(group.start, group.end)).join('*');
		const over = below.length > 1 ? `(${text(below)})` : text(below);
		const place = { start: above[0]?.start ?? 0, end: factor.end };
		const message = wording.twoReadings(
			this.#text.slice(place.start, place.end),
			`${text(above)}/(${text([...below, factor])})`,
			`${text([...above, factor])}/${over}`
		);
		this.#stop('bad-unit', message, place);
	}

	#stop(
		code: UnitProblem['code'],
		message: string,
		{ start, end }: { readonly start: number; readonly end: number },
		nearest?: string
	): never {
		throw new Stopped({ code, message, start, end, ...(nearest === undefined ? {} : { nearest }) });
	}
}
