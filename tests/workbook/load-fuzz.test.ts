import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseJson } from '$lib/workbook/json';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import { plant } from './plant';

// Much is computed here, and a busy machine is no fault.

const text = saveWorkbook(plant);

/** Either it opens and saves again, or one line says where and what to do. Nothing is thrown. */
function staysSound(source: string) {
	const loaded = loadWorkbook(source, 'fuzz.json');
	if (loaded.ok) {
		const again = loadWorkbook(saveWorkbook(loaded.workbook), 'again.json');
		expect(again.ok && again.workbook).toEqual(loaded.workbook);
		return;
	}
	const { line, message, remedy } = loaded.problem;
	expect(line).toMatch(/^"fuzz\.json"/);
	expect(line).not.toMatch(/[\r\n]|undefined|\[object|Invalid|NaN(?! is)|!$/);
	expect(message).not.toBe('');
	expect(remedy).toMatch(/\.$/);
}

describe('the loader', () => {
	it('answers random text', () => {
		fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), staysSound));
	});

	it('answers random JSON', () => {
		fc.assert(fc.property(fc.json({ maxDepth: 6 }), staysSound));
	});

	it('answers a workbook with a piece cut out, doubled or overwritten', () => {
		const piece = fc.constantFrom(
			'',
			'{',
			'}',
			'[',
			']',
			',',
			'"',
			'1e999',
			'null',
			'-',
			'\\',
			'\u0000',
			'"__proto__":1,'
		);
		fc.assert(
			fc.property(
				fc.nat(text.length),
				fc.nat(40),
				piece,
				fc.boolean(),
				(at, length, piece, twice) => {
					const cut = text.slice(at, at + length);
					staysSound(
						text.slice(0, at) + piece + (twice ? cut + cut : '') + text.slice(at + length)
					);
				}
			),
			{ numRuns: 300 }
		);
	});

	it('answers a workbook in which any one value or name is another', () => {
		const strange = fc.constantFrom<unknown>(
			null,
			0,
			-1,
			1e308,
			true,
			'',
			'base',
			'over',
			'__proto__',
			'constructor',
			'*',
			'm^999999',
			'a'.repeat(70),
			[],
			{},
			[[]],
			{ a: { b: 1 } }
		);
		fc.assert(
			fc.property(fc.nat(100_000), strange, fc.boolean(), (target, value, isName) => {
				let count = 0;
				const walk = (here: unknown): unknown => {
					if (count++ === target % 420 && !isName) return value;
					if (Array.isArray(here)) return here.map(walk);
					if (typeof here !== 'object' || here === null) return here;
					return Object.fromEntries(
						Object.entries(here).map(([name, entry]) => [
							isName && count === target % 420 ? JSON.stringify(value) : name,
							walk(entry)
						])
					);
				};
				staysSound(JSON.stringify(walk(plant)));
			}),
			{ numRuns: 400 }
		);
	});
});

describe('our reader of JSON', () => {
	it('reads what the language itself reads, wherever that loses nothing', () => {
		fc.assert(
			fc.property(fc.json({ maxDepth: 5, noUnicodeString: false }), (source) => {
				const read = parseJson(source);
				if (!read.ok) return expect(['repeated-key', 'not-a-number']).toContain(read.problem.code);
				expect(JSON.stringify(read.json)).toBe(JSON.stringify(JSON.parse(source)));
			})
		);
	});

	it('refuses what the language itself refuses', () => {
		const bits = fc.constantFrom(
			'{',
			'}',
			'[',
			']',
			',',
			':',
			'"a"',
			'1',
			'-',
			'0',
			'.5',
			'e3',
			'true',
			' ',
			'"\\u00e4"',
			'"\\x"',
			'nul'
		);
		fc.assert(
			fc.property(fc.array(bits, { maxLength: 8 }), (list) => {
				const source = list.join('');
				// A number beyond what a double holds is refused here, and taken for infinite there.
				fc.pre(!/e3\d\d/.test(source));
				let valid = true;
				try {
					JSON.parse(source);
				} catch {
					valid = false;
				}
				const read = parseJson(source);
				expect(read.ok || read.problem.code === 'repeated-key').toBe(valid);
			}),
			{ numRuns: 2000 }
		);
	});
});
