/**
 * A tender as it comes: lines of a sheet, pasted or from a CSV file, with an item, metres, when they are called off and the
 * price that is asked. What is not understood is named by its line, and no line is lost: an item that nobody knows becomes one
 * without goods, under the customer's own words.
 */
import { cellsOf } from '$lib/exchange/csv/rows';
import { monthId, monthNumber } from '$lib/workbook/months';
import type { QuoteCall } from '$lib/workbook/schema';
import { tenderListTexts as texts } from './tender-list-texts';

export interface TenderLine {
	/** From 1, as the sheet counts. */
	readonly line: number;
	readonly text: string;
	/** Null: no good is called so. */
	readonly goods: { readonly choice: string; readonly member: string } | null;
	readonly amount: number | null;
	readonly calls: readonly QuoteCall[] | null;
	readonly price: number | null;
	readonly remarks: readonly string[];
}

export interface TenderList {
	readonly lines: readonly TenderLine[];
	/** Of the whole. */
	readonly problem: string | null;
}

/** A good by what people call it: id, label, other names. */
export interface Named {
	readonly choice: string;
	readonly member: string;
	readonly names: readonly string[];
}

interface Context {
	readonly goods: readonly Named[];
	/** Of a number: "." or ",". */
	readonly decimal: '.' | ',';
	/** ISO 8601 day of the quote: a month without a year is the next one from there. */
	readonly date: string;
	/** Months of the year as they are called: "Oct", "October". */
	readonly months: readonly (readonly string[])[];
}

const plain = (text: string) =>
	text
		.normalize('NFKD')
		.toLocaleLowerCase()
		.replace(/[^\p{L}\p{N}]/gu, '');

/** Tabs where a sheet was copied, else semicolons, else commas: the first that parts the first lines. */
function markOf(lines: readonly string[]): string {
	const looked = lines.slice(0, 10);
	return (
		['\t', ';', ','].find((mark) => looked.some((line) => cellsOf(line, mark).length > 1)) ?? '\t'
	);
}

/** Null where it is no number. A comma or point with other than three digits behind, or behind a zero alone, is of decimals. */
export function numberIn(text: string, decimal: '.' | ','): number | null {
	const bare = text.replace(/[\s\u00a0\u202f'’]/g, '').replace(/(?:m|eur\/m|eur|€\/m|€)$/i, '');
	if (!/^[+-]?\d[\d.,]*$/.test(bare)) return null;
	const last = Math.max(bare.lastIndexOf('.'), bare.lastIndexOf(','));
	const marks = bare.match(/[.,]/g) ?? [];
	if (last < 0) return Number(bare);
	const sign = bare[last]!;
	const behind = bare.length - last - 1;
	const isMixed = new Set(marks).size > 1;
	const isGrouped =
		!isMixed && behind === 3 && !/^[+-]?0[.,]/.test(bare) && (marks.length > 1 || sign !== decimal);
	const digits = isGrouped
		? bare.replace(/[.,]/g, '')
		: `${bare.slice(0, last).replace(/[.,]/g, '')}.${bare.slice(last + 1)}`;
	const value = Number(digits);
	return Number.isFinite(value) ? value : null;
}

/**
 * Metres as a customer writes them. Nobody orders to the millimetre, so one mark with three digits behind it parts
 * thousands, whichever it is; `asThousands` says that it could have been read otherwise. "20 km" are metres too.
 */
export function metresIn(
	text: string,
	decimal: '.' | ','
): { readonly value: number; readonly asThousands: boolean } | null {
	const bare = text.trim();
	const km = /^(.*\d)\s*km$/i.exec(bare)?.[1];
	if (km !== undefined) {
		const value = numberIn(km, decimal);
		return value === null ? null : { value: value * 1000, asThousands: false };
	}
	const value = numberIn(bare, decimal);
	if (value === null) return null;
	const parted = /^([1-9]\d{0,2})[.,](\d{3})\s*m?$/i.exec(bare);
	if (!parted) return { value, asThousands: false };
	const whole = Number(`${parted[1]}${parted[2]}`);
	return { value: whole, asThousands: whole !== value };
}

/** "2028-03", "03/2028", "Mar 2028", "March": a month without a year is the next from the day of the quote. */
export function monthIn(
	text: string,
	{ months, date }: Pick<Context, 'months' | 'date'>
): string | null {
	const bare = text.trim();
	const iso = /^(\d{4})[-/.](\d{1,2})$/.exec(bare);
	const turned = /^(\d{1,2})[-/.](\d{4})$/.exec(bare);
	const [year, month] = iso ? [iso[1], iso[2]] : turned ? [turned[2], turned[1]] : [];
	if (year !== undefined) {
		const number = Number(month);
		return number >= 1 && number <= 12 ? monthId(Number(year) * 12 + number - 1) : null;
	}
	const named = /^([\p{L}.]+)\s*(\d{4}|\d{2})?$/u.exec(bare);
	if (!named) return null;
	const word = plain(named[1]!);
	const at = months.findIndex((names) => names.some((name) => plain(name) === word));
	if (at < 0) return null;
	const begun = monthNumber(date.slice(0, 7)) ?? 0;
	if (named[2] === undefined) return monthId(begun + ((((at - begun) % 12) + 12) % 12));
	const own = Number(named[2]);
	return monthId((own < 100 ? Math.floor(begun / 1200) * 100 + own : own) * 12 + at);
}

type Kind = 'item' | 'amount' | 'when' | 'price' | 'per';
const WORDS: readonly (readonly [Kind, RegExp])[] = [
	['price', /price|preis|prix|target|asked|eur|€/i],
	['when', /month|call|deliver|when|monat|abruf|date|plan/i],
	['per', /^(per|basis|je|every)$/i],
	['amount', /met(re|er)s?|quantity|qty|menge|amount|^m$|volume|length|total|m\/(month|year)/i],
	['item', /item|article|artikel|product|pipe|description|part|position|goods|code/i]
];

interface Heads {
	readonly of: ReadonlyMap<Kind, number>;
	/** Columns of a month each. */
	readonly months: readonly (readonly [column: number, month: string])[];
	/** What the heading of the metres says: "m/month". */
	readonly per: Per;
	readonly isHead: boolean;
}

type Per = 'all' | 'month' | 'year';
const perIn = (text: string): Per =>
	/month|monat|mois|\/\s*mo\b/i.test(text)
		? 'month'
		: /year|jahr|annual|p\.?a\.?$|\/\s*a\b/i.test(text)
			? 'year'
			: 'all';

function headsOf(cells: readonly string[], context: Context): Heads {
	const of = new Map<Kind, number>();
	const months: [number, string][] = [];
	let per: Per = 'all';
	cells.forEach((cell, column) => {
		const month = monthIn(cell, context);
		if (month !== null) return void months.push([column, month]);
		const kind = WORDS.find(([kind, word]) => !of.has(kind) && word.test(cell))?.[0];
		const isNumber = numberIn(cell, context.decimal) !== null;
		// "m per month" speaks of metres, and of no month.
		const isAmount = kind === 'when' && /^(m|met(re|er)s?)\b/i.test(cell);
		if (kind === undefined || isNumber) return;
		of.set(isAmount ? 'amount' : kind, column);
		if (isAmount || kind === 'amount') per = perIn(cell);
	});
	const isHead =
		of.has('item') ||
		(of.has('amount') && cells.every((cell) => numberIn(cell, context.decimal) === null));
	if (isHead) return { of, months, per, isHead };
	const order: Kind[] = ['item', 'amount', 'when', 'price'];
	return { of: new Map(order.map((kind, i) => [kind, i])), months: [], per: 'all', isHead };
}

/** So much in all, a month or a year, over these months. */
function spread(amount: number, per: Per, months: readonly string[]): QuoteCall[] {
	const each = per === 'month' ? amount : per === 'year' ? amount / 12 : amount / months.length;
	return months.map((month) => ({ month, amount: each }));
}

/** "2028-03", "Mar–May 2028", "2028-03: 20000, 2028-05: 10000"; null where it is none of these. */
function callsIn(
	text: string,
	amount: number | null,
	per: Per,
	context: Context
): QuoteCall[] | null {
	if (text.includes(':')) {
		const parts = text.split(/[,;+|]\s*(?=[^:]*:)/).map((part) => part.split(':'));
		const calls = parts.map(([month = '', metres = '']) => ({
			month: monthIn(month, context),
			amount: metresIn(metres, context.decimal)?.value ?? null
		}));
		return calls.every(({ month, amount: one }) => month !== null && one !== null && one > 0)
			? calls.map(({ month, amount: one }) => ({ month: month!, amount: one! }))
			: null;
	}
	const parts = text.split(
		/\s*(?:\.\.\.?|–|—|\bto\b|\bbis\b|(?<=\p{L})\s*-\s*(?=\p{L})|\s-\s)\s*/iu
	);
	const year = /\d{4}/.exec(parts.at(-1) ?? '')?.[0];
	const ends = parts.map((part, i) =>
		monthIn(
			i === 0 && parts.length === 2 && year !== undefined && !/\d/.test(part)
				? `${part} ${year}`
				: part,
			context
		)
	);
	if (amount === null || ends.length > 2 || ends.some((end) => end === null)) return null;
	const [from, to] = [monthNumber(ends[0]!)!, monthNumber(ends.at(-1)!)!];
	if (to < from || to - from >= 60) return null;
	return spread(
		amount,
		per,
		Array.from({ length: to - from + 1 }, (_, i) => monthId(from + i))
	);
}

/** A line for each month, "2028-03 20000"; or the first that is none. */
export function callLines(
	text: string,
	context: Pick<Context, 'months' | 'date' | 'decimal'>
): { readonly calls: readonly QuoteCall[] } | { readonly bad: string } {
	const calls: QuoteCall[] = [];
	for (const line of text.split(/\r?\n/).filter((one) => one.trim())) {
		const parts = /^(.*?\S)[\s:;,\t]+([\d][\d.,' \u00a0]*)\s*m?$/.exec(line.trim());
		const month = parts && monthIn(parts[1]!.replace(/[:;,]$/, ''), context);
		const amount = parts && (metresIn(parts[2]!, context.decimal)?.value ?? null);
		if (month === null || amount === null || amount <= 0) return { bad: line };
		calls.push({ month, amount });
	}
	return { calls };
}

export function readTenderList(text: string, context: Context): TenderList {
	const rows = text.replace(/^\ufeff/, '').split(/\r?\n/);
	const filled = rows.flatMap((row, i) => (row.trim() ? [[row, i + 1] as const] : []));
	if (filled.length === 0) return { lines: [], problem: texts.empty };
	const mark = markOf(filled.map(([row]) => row));
	const heads = headsOf(cellsOf(filled[0]![0], mark), context);
	const byName = new Map<string, Named | null>();
	for (const one of context.goods)
		for (const name of one.names) {
			const key = plain(name);
			const before = byName.get(key);
			// Two that are called alike are none.
			if (key)
				byName.set(
					key,
					before === undefined || before?.member === one.member ? (before ?? one) : null
				);
		}
	const lines = filled
		.slice(heads.isHead ? 1 : 0)
		.map(([row, line]) => lineOf(cellsOf(row, mark), line, heads, byName, context));
	return { lines, problem: lines.length === 0 ? texts.headAlone : null };
}

function lineOf(
	cells: readonly string[],
	line: number,
	{ of, months, per: headPer }: Heads,
	byName: ReadonlyMap<string, Named | null>,
	context: Context
): TenderLine {
	const cell = (kind: Kind) => cells[of.get(kind) ?? -1] ?? '';
	const remarks: string[] = [];
	const text = cell('item') || cells.join(' ').trim();
	const found = byName.get(plain(text)) ?? null;
	if (!found) remarks.push(byName.has(plain(text)) ? texts.twoAlike(text) : texts.unknown(text));
	const own = cell('per') || (/[\p{L}/]/u.test(cell('amount')) ? cell('amount') : '');
	const per = own ? perIn(own) : headPer;
	const given = cell('amount').replace(/\s*(?:\/|per\b|je\b).*$/i, '');
	const metres = given ? metresIn(given, context.decimal) : null;
	let amount = metres?.value ?? null;
	if (metres?.asThousands) remarks.push(texts.asThousands(given, metres.value));
	if (given && (amount === null || amount <= 0)) {
		remarks.push(texts.noAmount(cell('amount')));
		amount = null;
	}
	let calls: QuoteCall[] | null = null;
	const dated = months.flatMap(([column, month]) => {
		const written = cells[column] ?? '';
		if (!written) return [];
		const asked = metresIn(written, context.decimal);
		const value = asked?.value ?? null;
		if (asked?.asThousands) remarks.push(texts.asThousands(written, asked.value));
		if (value === null || value < 0) remarks.push(texts.noAmountOf(month, written));
		return value !== null && value > 0 ? [{ month, amount: value }] : [];
	});
	if (dated.length > 0) calls = dated;
	else if (cell('when')) {
		calls = callsIn(cell('when'), amount, per, context);
		if (!calls) remarks.push(texts.noMonth(cell('when')));
	} else if (per !== 'all' && amount !== null) {
		const begun = monthNumber(context.date.slice(0, 7))! + 1;
		const year = Array.from({ length: 12 }, (_, i) => monthId(begun + i));
		calls = spread(amount, per, year);
		remarks.push(texts.overYear(year[0]!, year[11]!));
	}
	if (calls) {
		const sum = calls.reduce((all, call) => all + call.amount, 0);
		if (per === 'all' && amount !== null && Math.abs(sum - amount) > 0.5)
			remarks.push(texts.sumDiffers(amount, sum));
		amount = sum;
	}
	if (amount === null && remarks.length === (found ? 0 : 1)) remarks.push(texts.noAmount(''));
	const price = cell('price') ? numberIn(cell('price'), context.decimal) : null;
	if (cell('price') && (price === null || price <= 0)) remarks.push(texts.noPrice(cell('price')));
	return {
		...{ line, text, amount, calls, remarks },
		goods: found && { choice: found.choice, member: found.member },
		price: price !== null && price > 0 ? price : null
	};
}
