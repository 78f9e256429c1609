/** Finding quotes, numbering them, and making one of another. */
import { kept } from './kept';
import type { KeptQuote, QuoteItem } from './quote-list-schema';
import type { Workbook } from './schema';

const byId = kept(
	(all: readonly KeptQuote[]): ReadonlyMap<string, KeptQuote> =>
		new Map(all.map((one) => [one.id, one]))
);

export const findQuote = (
	{ quotes }: Pick<Workbook, 'quotes'>,
	id: string
): KeptQuote | undefined => quotes && byId(quotes).get(id);

/** "26-AB-014, version 2"; the first version goes without. */
export const quoteName = ({ number, version }: Pick<KeptQuote, 'number' | 'version'>): string =>
	version === 1 ? number : `${number}, version ${version}`;

/**
 * The next number of a person: year, sign of the person, count of that year and person. Two people who count apart
 * never reach the same one as long as their signs differ.
 */
export function nextNumber(quotes: readonly KeptQuote[], date: string, sign: string): string {
	const head = `${date.slice(2, 4)}-${sign}-`;
	const most = quotes.reduce((most, { number }) => {
		const count = number.startsWith(head) ? Number(number.slice(head.length)) : NaN;
		return Number.isInteger(count) ? Math.max(most, count) : most;
	}, 0);
	return `${head}${String(most + 1).padStart(3, '0')}`;
}

/** "Ada Byron" gives "AB"; a name of one word its first two letters; none, "Q". */
export function signOf(name: string): string {
	const words = name.normalize('NFC').match(/[\p{L}\p{N}]+/gu) ?? [];
	const letters = words.length > 1 ? words.map((word) => [...word][0]!) : [...(words[0] ?? 'Q')];
	return letters
		.slice(0, words.length > 1 ? 3 : 2)
		.join('')
		.toUpperCase();
}

/** Numbers and versions that two quotes bear: those of two people with one sign, who were not in step. */
export const numberedTwice = kept((quotes: readonly KeptQuote[]): ReadonlySet<string> => {
	const seen = new Set<string>();
	return new Set(
		quotes.flatMap((quote) => {
			const name = quoteName(quote);
			if (seen.has(name)) return [name];
			seen.add(name);
			return [];
		})
	);
});

interface Fresh {
	readonly id: string;
	/** ISO 8601 day. */
	readonly date: string;
	readonly by?: string;
}

/** The next version: the same terms, on today's figures until it is sent. The old one stays as it is. */
export function nextVersion(
	quotes: readonly KeptQuote[],
	of: KeptQuote,
	{ id, date, by }: Fresh
): KeptQuote {
	const version = quotes.reduce(
		(most, one) => (one.number === of.number ? Math.max(most, one.version) : most),
		of.version
	);
	return { ...reopened(of), id, date, version: version + 1, ...(by !== undefined && { by }) };
}

/** The same order for somebody else: whoever it was for, and the entries that hold for that customer, stay behind. */
export function forAnother(
	of: KeptQuote,
	{ id, date, by, number }: Fresh & { readonly number: string },
	isOfCustomer: (entry: QuoteItem['entries'][number]) => boolean
): KeptQuote {
	const { to: _to, note: _note, ...rest } = reopened(of);
	return {
		...rest,
		...{ id, date, number, version: 1 },
		...(by !== undefined && { by }),
		items: rest.items.map((item) => ({
			...item,
			entries: item.entries.filter((entry) => !isOfCustomer(entry))
		}))
	};
}

/** As asked again: without grounds, end, date of validity or who made it. */
function reopened(quote: KeptQuote): KeptQuote {
	const { reason: _reason, filed: _filed, valid_until: _until, by: _by, ...rest } = quote;
	return {
		...rest,
		state: 'asked',
		items: quote.items.map(({ grounds: _grounds, ...item }) => item)
	};
}

/** Whether its time has run out by a day, with no answer yet. */
export const isExpired = (
	{ state, valid_until }: Pick<KeptQuote, 'state' | 'valid_until'>,
	today: string
): boolean => state === 'sent' && valid_until !== undefined && valid_until < today;
