/**
 * The scenarios as ways out of a shortage: what hours each frees, what it earns, and what such an hour
 * costs. Those that pay come first, the cheapest hours before the dearer.
 */
import type { PlainTable } from '$lib/exchange/csv/write';
import type { Picture } from '$lib/workbook/schema';
import { formatDifference, formatNumber, formatUnit } from '../../format';
import { sourceOf, type Open } from '../../figure/open';
import { plain, read, shown, type Reading } from '../../figure/read';
import { doubtOf } from '../../said-beside';
import { scaleFor, type Scale } from '../../figure/scale';
import { count } from '../../figure/words';

export type WaysPicture = Extract<Picture, { kind: 'ways_out' }>;

export interface Way {
	readonly id: string;
	readonly title: string;
	readonly note: string;
	readonly freed: Reading;
	readonly earned: Reading;
	readonly later: Reading | undefined;
	readonly price: Reading | undefined;
	/** Frees hours and earns more than without: now, or later only. */
	readonly pays: boolean;
	readonly paysLater: boolean;
	readonly selectedScenario: boolean;
	/** Why its figures are no comparison, as the workbook cautions; empty where they are. */
	readonly doubt: string;
}

export interface Ways {
	readonly ways: readonly Way[];
	/** Titles of scenarios that free no hours. */
	readonly others: readonly string[];
	readonly pending: boolean;
	readonly money: Scale;
}

export function waysOf(open: Open, picture: WaysPicture): Ways {
	const names = new Set([picture.hours_freed, picture.earned]);
	const all = open.layout.workbook.scenarios.slice(1).map(({ id, title, note }): Way => {
		const source = sourceOf(open, id);
		const [freed, earned] = [read(source, picture.hours_freed), read(source, picture.earned)];
		const price =
			picture.price_of_hour === undefined ? undefined : read(source, picture.price_of_hour);
		const later =
			picture.earned_later === undefined ? undefined : read(source, picture.earned_later);
		const doubt = doubtOf(open.layout, open.results.get(id), names);
		const gains = (money: Reading | undefined) =>
			!doubt && valueOr(freed, 0) > 0 && valueOr(money, 0) > 0;
		return {
			...{ id, title, note: note ?? '', freed, earned, later, price, doubt },
			pays: gains(earned),
			paysLater: !gains(earned) && gains(later),
			selectedScenario: id === open.selectedScenario
		};
	});
	const frees = ({ freed }: Way) =>
		freed.kind === 'error' || (freed.kind === 'value' && freed.value >= 0.5);
	const ways = all.filter(frees).sort(before);
	const largest = Math.max(
		0,
		...ways.flatMap(({ earned, later }) =>
			[earned, later].map((money) => Math.abs(valueOr(money, 0)))
		)
	);
	const unit = open.layout.byName.get(picture.earned)?.quantity.unit;
	return {
		ways,
		others: all
			.filter((way) => !frees(way) && way.freed.kind !== 'pending')
			.map((way) => way.title),
		pending: all.some((way) => way.freed.kind === 'pending'),
		money: scaleFor(open.units, unit, largest)
	};
}

const valueOr = (reading: Reading | undefined, otherwise: number) =>
	reading?.kind === 'value' ? reading.value : otherwise;

/** Those that are no comparison last; those that pay first, then those that pay later; among them by what an hour costs, then by what is earned. */
function before(a: Way, b: Way): number {
	if ((a.doubt === '') !== (b.doubt === '')) return a.doubt ? 1 : -1;
	if (a.pays !== b.pays) return a.pays ? -1 : 1;
	if (a.paysLater !== b.paysLater) return a.paysLater ? -1 : 1;
	const [one, other] = [valueOr(a.price, Infinity), valueOr(b.price, Infinity)];
	if (one !== other) return one < other ? -1 : 1;
	return valueOr(b.earned, -Infinity) - valueOr(a.earned, -Infinity);
}

/** Longest bar, for a width of 100. */
export function freedShare({ ways }: Ways, way: Way): number {
	const most = Math.max(0, ...ways.map(({ freed }) => valueOr(freed, 0)));
	return most > 0 ? (100 * Math.max(0, valueOr(way.freed, 0))) / most : 0;
}

export interface WayFigures {
	readonly freed: string;
	readonly earned: string;
	readonly later: string;
	readonly price: string;
}

export function wayFigures({ money }: Ways, way: Way, locale: string): WayFigures {
	const moneyText = (reading: Reading) =>
		reading.kind === 'value'
			? formatDifference(reading.value * money.factor, 0, locale)
			: shown(reading, 0, locale);
	return {
		freed: shown(way.freed, 0, locale),
		earned: moneyText(way.earned),
		later: way.later ? moneyText(way.later) : '',
		price: way.price ? shown(way.price, 0, locale) : ''
	};
}

export function waysTitle({ ways: all, pending }: Ways, locale: string): string {
	const ways = all.filter(({ doubt }) => !doubt);
	if (ways.length === 0 && all.length > 0) return 'No scenario frees hours on equal terms';
	if (ways.length === 0)
		return pending ? 'The scenarios are being computed' : 'No scenario frees hours';
	const pay = ways.filter((way) => way.pays);
	const later = ways.filter((way) => way.paysLater);
	const many = `${count(ways.length)} ${ways.length === 1 ? 'way' : 'ways'} out`;
	const said = `${many[0]?.toUpperCase()}${many.slice(1)}`;
	const first = pay[0] ?? later[0];
	if (!first) return `${said}, and none would pay in the years shown`;
	const now = pay.length > 0 ? `${count(pay.length)} would pay today` : 'none would pay today';
	const then = later.length > 0 ? `, ${count(later.length)} more later` : '';
	const unit = formatUnit(first.price?.quantity?.quantity.unit);
	const price =
		first.price?.kind === 'value'
			? `, at ${formatNumber(first.price.value, 0, locale)} ${unit}`
			: '';
	return `${said}, ${now}${then}; the cheapest hours that pay come from ${first.title}${price}`;
}

export function waysSummary(ways: Ways, picture: WaysPicture, open: Open): string {
	const unit = (name: string | undefined) =>
		formatUnit(open.layout.byName.get(name ?? '')?.quantity.unit);
	const lines = ways.ways.map((way, i) => {
		const figures = wayFigures(ways, way, open.locale);
		const price = figures.price ? `, ${figures.price} ${unit(picture.price_of_hour)}` : '';
		return `${i + 1}, ${way.title}: frees ${figures.freed} ${unit(picture.hours_freed)}, earns ${figures.earned} ${ways.money.unit}${figures.later ? `, later ${figures.later}` : ''}${price}`;
	});
	const none = ways.others.length > 0 ? ` Freeing no hours: ${ways.others.join(', ')}.` : '';
	return `${lines.join('. ')}.${none}`;
}

export function waysTable({ ways }: Ways, picture: WaysPicture, open: Open): PlainTable {
	const head = (name: string) => {
		const quantity = open.layout.byName.get(name)?.quantity;
		const unit = formatUnit(quantity?.unit);
		return `${quantity?.label ?? name}${unit ? `, ${unit}` : ''}`;
	};
	const { price_of_hour: price, earned_later: later } = picture;
	return {
		caption: picture.title,
		columns: [
			'Scenario',
			head(picture.hours_freed),
			...(price === undefined ? [] : [head(price)]),
			head(picture.earned),
			...(later === undefined ? [] : [head(later)]),
			'Note'
		],
		rows: ways.map((way) => [
			way.title,
			plain(way.freed),
			...(way.price ? [plain(way.price)] : []),
			plain(way.earned),
			...(way.later ? [plain(way.later)] : []),
			way.note
		])
	};
}
