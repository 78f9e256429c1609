/** All quotes as rows, and what they come to: open value, hit rate by margin, hours by month. */
import type { QuotePicture } from '$lib/workbook/quote-schema';
import { isExpired, quoteName } from '$lib/workbook/quotes';
import type { KeptQuote, QuoteState } from '$lib/workbook/schema';
import { heldChoice, heldFigure, heldNumber, type Held } from './held';
import { wholeOf } from './tender';

/** Hours of an item, or of one of its call-offs. */
export interface Run {
	readonly month: string;
	readonly hours: number;
}

export interface QuoteRow {
	readonly id: string;
	readonly number: string;
	readonly version: number;
	readonly name: string;
	readonly state: QuoteState;
	readonly isExpired: boolean;
	readonly isFiled: boolean;
	readonly customer: string;
	readonly goods: string;
	readonly date: string;
	readonly validUntil: string;
	/** Null: not known yet, or it has none. */
	readonly value: number | null;
	readonly money: string;
	/** In percent. */
	readonly margin: number | null;
	readonly hours: number | null;
	readonly month: string;
	/** What it takes by month. */
	readonly runs: readonly Run[];
	readonly found: string;
}

export function rowOf(
	quote: KeptQuote,
	picture: QuotePicture,
	live: readonly Held[] | undefined,
	today: string,
	/** Labels of the months of a year, for call-offs. */
	months: readonly string[] = []
): QuoteRow {
	const all: Held[] = quote.items.map((item, i) => item.grounds ?? live?.[i] ?? { figures: [] });
	const held: Held = all[0] ?? { figures: [] };
	const { offer } = picture;
	const customer = offer && heldChoice(held, offer.customer);
	const goods = offer?.goods.map((name) => heldChoice(held, name)).find((one) => one !== null);
	const total = offer?.total.quantity ?? '';
	/** Of all items; null where one of them has none. */
	const sum = (name: string | undefined) =>
		all.reduce<number | null>((whole, one) => {
			const value = name === undefined ? null : heldNumber(one, name);
			return whole === null || value === null ? null : whole + value;
		}, 0);
	const { result, net } = picture.tender ?? {};
	/** As it was answered with its call-offs, where that was kept; else as one order each. */
	const answered = quote.answers && wholeOf(quote.answers.items);
	const [gained, stays] = answered ? [answered.result, answered.net] : [sum(result), sum(net)];
	const margin =
		all.length > 1
			? gained === null || stays === null || stays <= 0
				? null
				: (100 * gained) / stays
			: heldNumber(held, picture.margin);
	const names = {
		customer: customer?.label ?? quote.to?.split('\n')[0] ?? '',
		goods: `${goods?.id ?? quote.items[0]?.text ?? ''}${all.length > 1 ? ` +${all.length - 1}` : ''}`
	};
	const chosen = picture.hour_value?.chosen;
	const runs = all.flatMap((one, i): Run[] => {
		const calls = quote.answers?.items.find(({ id }) => id === quote.items[i]?.id)?.calls;
		const own = quote.items[i]?.calls ?? calls;
		const hours = picture.hours === undefined ? null : heldNumber(one, picture.hours);
		if (!own || own.length === 0)
			return [
				{ month: (chosen !== undefined && heldChoice(one, chosen)?.label) || '', hours: hours ?? 0 }
			];
		// Where no answers are kept yet, by metres.
		const metres = own.reduce((whole, { amount }) => whole + amount, 0);
		return own.map(({ month, amount }, at) => ({
			month: months[Number(month.slice(5)) - 1] ?? month,
			hours: calls?.[at]?.figures.hours ?? ((hours ?? 0) * amount) / metres
		}));
	});
	const inMonths = [...new Set(runs.map(({ month }) => month))];
	const allGoods = all.flatMap((one) =>
		(offer?.goods ?? []).flatMap((name) => {
			const found = heldChoice(one, name);
			return found ? [found.id, found.label] : [];
		})
	);
	const texts = quote.items.flatMap(({ text }) => text ?? []);
	const words = [quoteName(quote), names.customer, ...allGoods, ...texts, quote.to, quote.note];
	return {
		...{ id: quote.id, number: quote.number, version: quote.version, name: quoteName(quote) },
		...{ state: quote.state, isExpired: isExpired(quote, today), isFiled: quote.filed ?? false },
		...names,
		...{ date: quote.date, validUntil: quote.valid_until ?? '' },
		value: sum(total),
		money: heldFigure(held, total)?.unit ?? '',
		margin,
		hours: answered && all.length > 1 ? answered.hours : sum(picture.hours),
		month: inMonths.length > 1 ? `${inMonths[0]} +${inMonths.length - 1}` : (inMonths[0] ?? ''),
		runs,
		found: [...words, quote.by, quote.reason].filter(Boolean).join('\n').toLocaleLowerCase()
	};
}

export type Shown = QuoteState | 'open' | 'expired' | 'filed' | 'all';

/** Newest first. What was put away is found where it is asked for alone. */
export function rowsShown(rows: readonly QuoteRow[], search: string, shown: Shown): QuoteRow[] {
	const words = search.toLocaleLowerCase().split(/\s+/).filter(Boolean);
	return rows
		.filter((row) => {
			if (row.isFiled !== (shown === 'filed')) return false;
			const fits =
				shown === 'all' || shown === 'filed'
					? true
					: shown === 'open'
						? isOpen(row)
						: shown === 'expired'
							? row.isExpired
							: row.state === shown;
			return fits && words.every((word) => row.found.includes(word));
		})
		.sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : b.name.localeCompare(a.name)));
}

const isOpen = ({ state, isExpired }: QuoteRow) =>
	(state === 'asked' || state === 'sent') && !isExpired;

/** Of each number its last version: earlier ones were not taken, and not lost either. */
export function lastVersions(rows: readonly QuoteRow[]): QuoteRow[] {
	const last = new Map<string, QuoteRow>();
	for (const row of rows)
		if (row.version >= (last.get(row.number)?.version ?? 0)) last.set(row.number, row);
	return [...last.values()];
}

export interface OpenValue {
	/** By currency: pounds are not added to euro. */
	readonly sums: readonly {
		readonly money: string;
		readonly value: number;
		readonly count: number;
	}[];
	/** Open quotes whose value is not known. */
	readonly without: number;
}

export function openValue(rows: readonly QuoteRow[]): OpenValue {
	const open = lastVersions(rows).filter((row) => isOpen(row) && !row.isFiled);
	const known = open.filter(({ value }) => value !== null);
	const moneys = [...new Set(known.map(({ money }) => money))];
	return {
		sums: moneys.map((money) => {
			const own = known.filter((row) => row.money === money);
			return { money, value: own.reduce((all, { value }) => all + value!, 0), count: own.length };
		}),
		without: open.length - known.length
	};
}

export interface Band {
	/** Percent; null: no bound on that side. */
	readonly from: number | null;
	readonly to: number | null;
	readonly won: number;
	readonly lost: number;
}

const BOUNDS = [null, 0, 5, 10, 15, 20, 30, null] as const;

/** Won out of won and lost, by the margin that was quoted; what was put away counts. */
export function hitRates(rows: readonly QuoteRow[]): Band[] {
	const decided = lastVersions(rows).filter(
		({ state, margin }) => margin !== null && (state === 'won' || state === 'lost')
	);
	return BOUNDS.slice(0, -1).map((from, i) => {
		const to = BOUNDS[i + 1]!;
		const within = decided.filter(
			({ margin }) => (from === null || margin! >= from) && (to === null || margin! < to)
		);
		const won = within.filter(({ state }) => state === 'won').length;
		return { from, to, won, lost: within.length - won };
	});
}

export interface MonthHours {
	readonly month: string;
	readonly open: number;
	readonly won: number;
}

/** Hours that quotes would take, by month in the order of the workbook. */
export function hoursByMonth(rows: readonly QuoteRow[], months: readonly string[]): MonthHours[] {
	const counted = lastVersions(rows).filter(({ isFiled }) => !isFiled);
	const sum = (month: string, is: (row: QuoteRow) => boolean) =>
		counted
			.filter(is)
			.flatMap(({ runs }) => runs)
			.reduce((all, run) => all + (run.month === month ? run.hours : 0), 0);
	return months
		.map((month) => ({
			month,
			open: sum(month, isOpen),
			won: sum(month, ({ state }) => state === 'won')
		}))
		.filter(({ open, won }) => open > 0 || won > 0);
}
