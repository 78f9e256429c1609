/**
 * Reads a file of ISO/IEC 29500 by itself (unzipped and scanned, without the library that wrote it) and
 * recalculates cells of it with two packages that the app does not use: fast-formula-parser for the language,
 * formulajs for the functions that it lacks.
 */
import * as formulajs from '@formulajs/formulajs';
import FormulaParser from 'fast-formula-parser';
import { strFromU8, unzipSync } from 'fflate';

interface Stored {
	readonly formula: string | null;
	readonly value: number | string | null;
}

export type Sheets = ReadonlyMap<string, ReadonlyMap<string, Stored>>;

const unescaped = (text: string) =>
	text
		.replace(/&lt;/g, '<')
		.replace(/&gt;/g, '>')
		.replace(/&quot;/g, '"')
		.replace(/&apos;/g, "'")
		.replace(/&#(\d+);/g, (_, code: string) => String.fromCodePoint(Number(code)))
		.replace(/&amp;/g, '&');

export function readFile(bytes: Uint8Array): { sheets: Sheets; parts: string[] } {
	const files = unzipSync(bytes);
	const text = (name: string) => strFromU8(files[name] ?? new Uint8Array());
	const shared = [...text('xl/sharedStrings.xml').matchAll(/<si>(.*?)<\/si>/gs)].map(([, inner]) =>
		unescaped([...inner!.matchAll(/<t[^>]*>(.*?)<\/t>/gs)].map(([, t]) => t).join(''))
	);
	const names = [...text('xl/workbook.xml').matchAll(/<sheet [^>]*?name="([^"]*)"/g)].map(
		([, name]) => unescaped(name!)
	);
	const sheets = new Map<string, Map<string, Stored>>();
	names.forEach((name, i) => {
		const cells = new Map<string, Stored>();
		const xml = text(`xl/worksheets/sheet${i + 1}.xml`);
		for (const [, attributes, inner = ''] of xml.matchAll(/<c ([^>]*?)(?:\/>|>(.*?)<\/c>)/gs)) {
			const address = /r="([A-Z]+\d+)"/.exec(attributes!)![1]!;
			const formula = /<f[^>]*>(.*?)<\/f>/s.exec(inner)?.[1];
			const value = /<v>(.*?)<\/v>/s.exec(inner)?.[1];
			const kind = /t="(\w+)"/.exec(attributes!)?.[1] ?? 'n';
			cells.set(address, {
				formula: formula === undefined ? null : unescaped(formula),
				value:
					value === undefined
						? null
						: kind === 's'
							? shared[Number(value)]!
							: kind === 'n'
								? Number(value)
								: unescaped(value)
			});
		}
		sheets.set(name, cells);
	});
	return { sheets, parts: Object.keys(files) };
}

type Grid = { sheet: string; row: number; col: number };

function columnName(column: number): string {
	let name = '';
	for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26))
		name = String.fromCharCode(65 + ((rest - 1) % 26)) + name;
	return name;
}

/** Functions that the parser lacks, over its arguments as plain numbers. */
const numbersOf = (args: readonly { value: unknown }[]): number[] => {
	const numbers: number[] = [];
	for (const { value } of args)
		for (const one of [value].flat(3)) {
			if (one instanceof Error) throw one;
			if (typeof one === 'number') numbers.push(one);
		}
	return numbers;
};
const over = (compute: (numbers: number[]) => unknown) =>
	((...args: { value: unknown }[]) => compute(numbersOf(args))) as never;
interface Context {
	readonly utils: { extractRefValue: (argument: unknown) => { readonly val: unknown } };
}
function chosen(by: unknown, value: unknown): unknown {
	if (by instanceof Error) throw by;
	if (typeof by === 'string' || value === undefined) throw FormulaParser.FormulaError.VALUE;
	return value;
}
const dated = (compute: (date: number, type?: number) => unknown) =>
	((date: { value: unknown }, type?: { value: unknown }) => {
		if (date.value instanceof Error) throw date.value;
		return compute(Number(date.value), type && Number(type.value));
	}) as never;
const FUNCTIONS = {
	MIN: over((all) => (all.length ? Math.min(...all) : 0)),
	MAX: over((all) => (all.length ? Math.max(...all) : 0)),
	MEDIAN: over((all) => formulajs.MEDIAN(all)),
	STDEV: over((all) => formulajs.STDEV.S(all)),
	NPV: over(([rate, ...flows]) => formulajs.NPV(rate, ...flows)),
	MIRR: ((flows: { value: unknown }, finance: { value: number }, reinvest: { value: number }) =>
		formulajs.MIRR(numbersOf([flows]), finance.value, reinvest.value)) as never,
	SLOPE: ((y: { value: unknown }, x: { value: unknown }) =>
		formulajs.SLOPE(numbersOf([y]), numbersOf([x]))) as never,
	INTERCEPT: ((y: { value: unknown }, x: { value: unknown }) =>
		formulajs.INTERCEPT(numbersOf([y]), numbersOf([x]))) as never,
	// Of the values that these choose among, a bad one that is not chosen does no harm.
	IF: ((context: Context, test: unknown, ...from: unknown[]) => {
		const [asked, ...values] = [test, ...from].map(
			(argument) => context.utils.extractRefValue(argument).val
		);
		return chosen(asked, values[asked ? 0 : 1]);
	}) as never,
	// The parser's own forgets the sheet of what it points to.
	INDEX: ((context: Context, range: unknown, place: unknown) => {
		const [values, n] = [range, place].map((one) => context.utils.extractRefValue(one).val);
		return chosen(n, [values].flat(3)[Number(n) - 1]);
	}) as never,
	CHOOSE: ((_: Context, place: { value: unknown }, ...from: { value: unknown }[]) =>
		chosen(place.value, from[Number(place.value) - 1]?.value)) as never,
	MATCH: ((wanted: { value: unknown }, range: { value: unknown }) => {
		const found = [range.value].flat(3).indexOf(wanted.value);
		if (found < 0) throw FormulaParser.FormulaError.NA;
		return found + 1;
	}) as never,
	// The parser's own ask a bad date for its text.
	WEEKDAY: dated((date, type) => formulajs.WEEKDAY(date, type)),
	ISOWEEKNUM: dated((date) => formulajs.ISOWEEKNUM(date)),
	IRR: ((flows: { value: unknown }, guess?: { value: unknown }) =>
		formulajs.IRR(numbersOf([flows]), Number(guess?.value ?? 0.1))) as never
};

interface Place {
	readonly sheet: string;
	readonly address: string;
}

/** A cell that waits for what it reads. */
interface Pending extends Place {
	reads: readonly Place[] | null;
}

export class Recalculation {
	readonly #known = new Map<string, unknown>();
	/** Cells with arithmetic on whole ranges, which the parser cannot do, and all that read them. */
	readonly beyond = new Set<string>();
	readonly #parser: InstanceType<typeof FormulaParser>;

	constructor(readonly sheets: Sheets) {
		this.#parser = new FormulaParser({
			functions: FUNCTIONS,
			onCell: (at: Grid) => this.#known.get(`${at.sheet}!${columnName(at.col)}${at.row}`),
			onRange: (range: {
				sheet: string;
				from: { row: number; col: number };
				to: { row: number; col: number };
			}) => {
				const rows: unknown[][] = [];
				for (let row = range.from.row; row <= range.to.row; row++) {
					const line: unknown[] = [];
					for (let col = range.from.col; col <= range.to.col; col++)
						line.push(this.#known.get(`${range.sheet}!${columnName(col)}${row}`));
					rows.push(line);
				}
				return rows;
			}
		});
	}

	/** What a cell comes to, from inputs alone: no number kept in the file for a formula is used. */
	value(sheet: string, address: string): unknown {
		// The parser is not to be called from within itself, so that what a cell reads is computed before.
		const stack: Pending[] = [{ sheet, address, reads: null }];
		for (let top = stack.at(-1); top; top = stack.at(-1)) {
			const key = `${top.sheet}!${top.address}`;
			const stored = this.sheets.get(top.sheet)?.get(top.address);
			if (this.#known.has(key)) stack.pop();
			else if (!stored || stored.formula === null) this.#known.set(key, stored?.value ?? null);
			else if (top.reads) {
				this.#known.set(key, this.#parse(stored.formula, top));
				const isBeyond = (read: Place) => this.beyond.has(`${read.sheet}!${read.address}`);
				if (stored.formula.includes('SUMPRODUCT(') || top.reads.some(isBeyond))
					this.beyond.add(key);
			} else {
				top.reads = [...referencesIn(stored.formula, top.sheet)];
				for (const read of top.reads)
					if (!this.#known.has(`${read.sheet}!${read.address}`))
						stack.push({ ...read, reads: null });
			}
		}
		return this.#known.get(`${sheet}!${address}`);
	}

	#parse(formula: string, at: { sheet: string; address: string }): unknown {
		const { column, row } = spotOf(at.address);
		return this.#parser.parse(formula.replaceAll('_xlfn.', ''), {
			sheet: at.sheet,
			row,
			col: column
		});
	}
}

function spotOf(address: string): { column: number; row: number } {
	const [, letters, row] = /^([A-Z]+)(\d+)$/.exec(address)!;
	const column = [...letters!].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
	return { column, row: Number(row) };
}

const REFERENCE = /"(?:[^"]|"")*"|(?:'((?:[^']|'')*)'!)?\b([A-Z]+\d+)(?::([A-Z]+\d+))?\b/g;

function* referencesIn(formula: string, here: string): Generator<Place> {
	for (const [, named, first, last] of formula.matchAll(REFERENCE)) {
		if (first === undefined) continue;
		const sheet = named === undefined ? here : named.replaceAll("''", "'");
		const from = spotOf(first);
		const to = spotOf(last ?? first);
		for (let column = from.column; column <= to.column; column++)
			for (let row = from.row; row <= to.row; row++)
				yield { sheet, address: `${columnName(column)}${row}` };
	}
}
