/**
 * Reads JSON text, and where it is broken says at which line and column and what to do about it.
 *
 * Stricter than `JSON.parse` where that would lose something without a word: a name given twice in one
 * object, a number too large to hold. Every name is an own property, "__proto__" as well. What the
 * document means is for `load.ts`.
 */
import { shown } from './shown';
import { put } from './values';

export type Json = null | boolean | number | string | Json[] | { [name: string]: Json };

/** Deeper than any workbook (a value per five sets stands 11 deep), shallow enough to walk without care. */
export const MAX_DEPTH = 60;

export interface JsonProblem {
	readonly code: 'not-json' | 'not-a-number' | 'repeated-key' | 'too-deep';
	/** Both from 1. */
	readonly line: number;
	readonly column: number;
	readonly message: string;
	readonly remedy: string;
}

export type JsonResult =
	| { readonly ok: true; readonly json: Json }
	| { readonly ok: false; readonly problem: JsonProblem };

export function parseJson(text: string): JsonResult {
	const reader = new JsonReader(text);
	try {
		return { ok: true, json: reader.document() };
	} catch (stop) {
		if (stop instanceof Stop) return { ok: false, problem: placed(text, stop) };
		throw stop;
	}
}

/** Unwinds the reader from any depth; never leaves this module. */
class Stop {
	constructor(
		readonly code: JsonProblem['code'],
		readonly at: number,
		readonly message: string,
		readonly remedy: string
	) {}
}

function placed(text: string, { code, at, message, remedy }: Stop): JsonProblem {
	const before = text.slice(0, at);
	const line = before.split('\n').length;
	return { code, line, column: at - before.lastIndexOf('\n'), message, remedy };
}

const SPACE = /[ \t\r\n]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// eslint-disable-next-line no-control-regex -- JSON forbids exactly these in a text
const PLAIN = /[^"\\\u0000-\u001f]*/y;
const WORD = /[-+\p{L}\p{N}_.$]+/uy;
const ESCAPES = new Map(Object.entries({ b: '\b', f: '\f', n: '\n', r: '\r', t: '\t' }));

class JsonReader {
	#at = 0;

	constructor(readonly text: string) {
		// Some editors put a byte order mark before the first character.
		if (text.startsWith('\uFEFF')) this.#at = 1;
	}

	document(): Json {
		const json = this.#value(0);
		this.#match(SPACE);
		if (this.#at < this.text.length)
			this.#stop(
				`${this.#found()} stands after the end of the document`,
				'Remove what follows the last bracket.'
			);
		return json;
	}

	#value(depth: number): Json {
		this.#match(SPACE);
		const first = this.text[this.#at];
		if (depth > MAX_DEPTH)
			throw new Stop(
				'too-deep',
				this.#at,
				`brackets stand inside brackets more than ${MAX_DEPTH} deep`,
				'A workbook needs no more than 11: take out the needless brackets.'
			);
		if (first === '{') return this.#object(depth);
		if (first === '[') return this.#list(depth);
		if (first === '"') return this.#string();
		const number = this.#match(NUMBER);
		if (number !== '' && !/[\p{L}\p{N}_.]/u.test(this.text[this.#at] ?? ''))
			return this.#number(number);
		this.#at -= number.length;
		for (const [word, meaning] of [
			['true', true],
			['false', false],
			['null', null]
		] as const)
			if (this.#word() === word) {
				this.#at += word.length;
				return meaning;
			}
		return this.#notAValue();
	}

	#number(digits: string): number {
		const number = Number(digits);
		if (!Number.isFinite(number))
			throw new Stop(
				'not-a-number',
				this.#at - digits.length,
				`${shown(digits)} is larger than a number can hold`,
				'Write a smaller number, or null where nobody entered one.'
			);
		// Saved text has no minus zero.
		return number === 0 ? 0 : number;
	}

	#list(depth: number): Json[] {
		const list: Json[] = [];
		this.#at++;
		if (this.#next(']')) return list;
		do list.push(this.#value(depth + 1));
		while (this.#another(']'));
		return list;
	}

	#object(depth: number): Json {
		const object: { [name: string]: Json } = {};
		this.#at++;
		if (this.#next('}')) return object;
		do {
			this.#match(SPACE);
			const start = this.#at;
			if (this.text[start] !== '"')
				this.#stop(
					`the name of an entry should stand here in double quotes, not ${this.#found()}`,
					'Write it as "name": value.'
				);
			const name = this.#string();
			if (Object.hasOwn(object, name))
				throw new Stop(
					'repeated-key',
					start,
					`"${shown(name)}" is given twice in one object`,
					'Keep one of the two.'
				);
			if (!this.#next(':'))
				this.#stop(
					`a colon should follow "${shown(name)}", not ${this.#found()}`,
					'Write it as "name": value.'
				);
			put(object, name, this.#value(depth + 1));
		} while (this.#another('}'));
		return object;
	}

	/** Whether a further entry follows; false after the closing bracket. */
	#another(close: string): boolean {
		if (this.#next(close)) return false;
		if (!this.#next(','))
			this.#stop(
				`a comma or ${close} should stand here, not ${this.#found()}`,
				'Put a comma between two entries, and close what was opened.'
			);
		const comma = this.#at - 1;
		if (this.#next(close)) {
			this.#at = comma;
			this.#stop(`a comma stands before ${close}`, 'Remove the comma after the last entry.');
		}
		return true;
	}

	#string(): string {
		const start = this.#at++;
		let string = '';
		for (;;) {
			string += this.#match(PLAIN);
			const mark = this.text[this.#at++];
			if (mark === '"') return string;
			if (mark === '\\') string += this.#escape();
			else {
				this.#at = mark === undefined ? start : this.#at - 1;
				this.#stop(
					mark === undefined
						? 'the text that begins here is never closed'
						: 'a line break or control character stands inside a text',
					mark === undefined ? 'Close it with a double quote.' : 'Write a line break as \\n.'
				);
			}
		}
	}

	#escape(): string {
		const mark = this.text[this.#at++] ?? '';
		if (mark === '"' || mark === '\\' || mark === '/') return mark;
		const plain = ESCAPES.get(mark);
		if (plain !== undefined) return plain;
		const digits = this.text.slice(this.#at, this.#at + 4);
		if (mark === 'u' && /^[\da-f]{4}$/i.test(digits)) {
			this.#at += 4;
			return String.fromCharCode(Number.parseInt(digits, 16));
		}
		this.#at -= mark.length + 1;
		return this.#stop(
			`"\\${shown(mark)}" means nothing in a text`,
			'Write a backslash as two backslashes.'
		);
	}

	#notAValue(): never {
		const word = this.#word();
		if (/^[-+]?(nan|inf|infinity)$/i.test(word))
			throw new Stop(
				'not-a-number',
				this.#at,
				`${word} is not a number that a file can hold`,
				'Write null where nobody entered a value.'
			);
		return this.#stop(
			`a value should stand here, not ${this.#found()}`,
			/^[-+\d.]/.test(word)
				? 'Write numbers like 1.95, 0.5 or 2e6, without plus, leading zeros or grouping.'
				: 'Write a number, a text in double quotes, true, false, null, a list or an object.'
		);
	}

	/** Steps over one mark, if it is the next. */
	#next(mark: string): boolean {
		this.#match(SPACE);
		if (this.text[this.#at] !== mark) return false;
		this.#at++;
		return true;
	}

	#match(pattern: RegExp): string {
		pattern.lastIndex = this.#at;
		const found = pattern.exec(this.text)?.[0] ?? '';
		this.#at += found.length;
		return found;
	}

	#word(): string {
		WORD.lastIndex = this.#at;
		return WORD.exec(this.text)?.[0] ?? '';
	}

	#found(): string {
		if (this.#at >= this.text.length) return 'the end of the file';
		return `"${shown(this.#word() || String.fromCodePoint(this.text.codePointAt(this.#at) ?? 0))}"`;
	}

	#stop(message: string, remedy: string): never {
		throw new Stop('not-json', this.#at, message, remedy);
	}
}
