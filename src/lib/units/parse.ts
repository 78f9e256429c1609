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
	if (text.length > wording.LONGEST_TEXT) {
		const message = wording.tooLong(text.length);
		return { ok: false, problem: { code: 'too-long', message, start: 0, end: text.length } };
	}
	return text.trim() === '' ? { ok: true, unit: ONE } : new Parser(text, lookUp).result();
}

interface Place {
	readonly start: number;
	readonly end: number;
}

/** Part of the text with the symbols in it. */
interface Group extends Place {
	readonly parts: readonly UnitPart[];
}

/** Each step gives what it read, or null once a problem is noted; the first problem counts. */
class Parser {
	readonly #text: string;
	readonly #lookUp: LookUp;
	readonly #tokens: readonly Token[];
	#at = 0;
	#problem: UnitProblem | null = null;

	constructor(text: string, lookUp: LookUp) {
		this.#text = text;
		this.#lookUp = lookUp;
		this.#tokens = tokens(text);
	}

	result(): UnitResult {
		const read = this.#unit(0);
		const whole = read && (this.#next.kind === 'end' ? this.#limited(read) : this.#stray());
		if (whole) return { ok: true, unit: unitOf(whole.parts, this.#text.trim()) };
		if (this.#problem) return { ok: false, problem: this.#problem };
		throw new Error('A step of the unit parser gave up without noting a problem.');
	}

	#unit(depth: number): Group | null {
		const first = this.#factor(depth, '');
		if (!first) return null;
		const above = [first];
		const below: Group[] = [];
		let end = first.end;
		while (this.#next.kind === '*' || this.#next.kind === '/') {
			const operator = this.#take();
			const factor = this.#factor(depth, operator.text);
			if (!factor) return null;
			if (operator.kind === '/') below.push(factor);
			else if (below.length === 0) above.push(factor);
			else return this.#twoReadings(above, below, factor);
			end = factor.end;
		}
		const parts = [
			...above.flatMap((factor) => factor.parts),
			...below.flatMap((factor) => raised(factor.parts, -1))
		];
		return { parts, start: first.start, end };
	}

	#factor(depth: number, after: string): Group | null {
		const base = this.#next.kind === '(' ? this.#brackets(depth + 1) : this.#symbol(after);
		if (!base || (this.#next.kind !== '^' && this.#next.kind !== 'raised')) return base;
		const exponent = this.#exponent();
		if (exponent === null) return null;
		const { start } = base;
		const group = { parts: raised(base.parts, exponent), start, end: this.#before.end };
		// What is beyond the limits by itself may be within them with what stands beside it: kPa^6/N^2.
		return group.parts.every((part) => Math.abs(part.exponent) <= LARGEST_EXPONENT)
			? group
			: this.#tooLarge(group);
	}

	#symbol(after: string): Group | null {
		const token = this.#next;
		const { start, end } = token;
		if (token.kind === 'number' && token.text === '1') {
			this.#take();
			return { parts: [], start, end };
		}
		if (token.kind === 'number')
			return this.#refuse('bad-unit', wording.numberInUnit(token.text), token);
		if (token.kind === 'other')
			return this.#refuse('bad-unit', wording.strangeCharacter(token.text), token);
		if (token.kind !== 'symbol')
			return this.#refuse('bad-unit', wording.symbolMissing(after), token);
		const found = this.#lookUp(token.text.normalize('NFC'));
		if ('message' in found)
			return this.#refuse('unknown-unit', found.message, token, found.nearest);
		this.#take();
		const { symbol, dimension, numerator, denominator } = found;
		return { parts: [{ symbol, dimension, numerator, denominator, exponent: 1 }], start, end };
	}

	#brackets(depth: number): Group | null {
		const open = this.#take();
		if (depth > wording.DEEPEST_BRACKETS) return this.#refuse('bad-unit', wording.tooDeep(), open);
		const inner = this.#unit(depth);
		if (!inner) return null;
		if (this.#next.kind === 'end') return this.#refuse('bad-unit', wording.bracketOpen(), open);
		if (this.#next.kind !== ')') return this.#stray();
		return { parts: inner.parts, start: open.start, end: this.#take().end };
	}

	/** The exponent at this place: ^2, ^-1, ², ⁻¹. */
	#exponent(): number | null {
		const mark = this.#take();
		const exponent = mark.kind === 'raised' ? raisedNumber(mark.text) : this.#whole(mark);
		if (exponent === null) return null;
		if (Math.abs(exponent) > LARGEST_EXPONENT) {
			const place = {
				start: mark.kind === 'raised' ? mark.start : mark.end,
				end: this.#before.end
			};
			const written = this.#text.slice(place.start, place.end).trim();
			return this.#refuse('exponent-too-large', wording.exponentTooLarge(written), place);
		}
		if (this.#next.kind === '^' || this.#next.kind === 'raised')
			return this.#refuse('bad-unit', wording.twoExponents(), this.#next);
		return exponent;
	}

	#whole(mark: Token): number | null {
		const negative = this.#next.text === '-' || this.#next.text === '−';
		if (negative) this.#take();
		const number = this.#next;
		if (number.kind !== 'number') return this.#refuse('bad-unit', wording.exponentMissing(), mark);
		if (!/^\d+$/.test(number.text))
			return this.#refuse('bad-unit', wording.exponentNotWhole(number.text), number);
		this.#take();
		return (negative ? -1 : 1) * Number(number.text);
	}

	#limited(group: Group): Group | null {
		return withinLimits(unitOf(group.parts)) ? group : this.#tooLarge(group);
	}

	#tooLarge(group: Group): null {
		return this.#refuse('exponent-too-large', wording.unitTooLarge(), group);
	}

	/** Something stands where *, / or the end belongs. */
	#stray(): null {
		const token = this.#next;
		if (token.kind === ')') return this.#refuse('bad-unit', wording.bracketUnopened(), token);
		if (token.kind === 'other')
			return this.#refuse('bad-unit', wording.strangeCharacter(token.text), token);
		if (token.text.toLowerCase() === 'per')
			return this.#refuse('bad-unit', wording.wordPer(), token);
		const message = wording.operatorMissing(this.#before.text, token.text);
		return this.#refuse('bad-unit', message, token);
	}

	#twoReadings(above: readonly Group[], below: readonly Group[], factor: Group): null {
		const text = (groups: readonly Group[]) =>
			groups.map((group) => this.#text.slice(group.start, group.end)).join('*');
		const over = below.length > 1 ? `(${text(below)})` : text(below);
		const place = { start: above[0]?.start ?? 0, end: factor.end };
		const message = wording.twoReadings(
			this.#text.slice(place.start, place.end),
			`${text(above)}/(${text([...below, factor])})`,
			`${text([...above, factor])}/${over}`
		);
		return this.#refuse('bad-unit', message, place);
	}

	#refuse(code: UnitProblem['code'], message: string, place: Place, nearest?: string): null {
		const { start, end } = place;
		this.#problem ??= { code, message, start, end, nearest };
		return null;
	}

	get #next(): Token {
		return this.#tokens[this.#at] ?? NOTHING;
	}

	get #before(): Token {
		return this.#tokens[this.#at - 1] ?? NOTHING;
	}

	#take(): Token {
		const token = this.#next;
		this.#at++;
		return token;
	}
}

const NOTHING: Token = { kind: 'end', text: '', start: 0, end: 0 };
