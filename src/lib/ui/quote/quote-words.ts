/**
 * What the quote says: its finding, what is drawn, its summary, its table to take along. What is quoted is
 * the workbook's; nothing here advises to take or refuse an order.
 */
import type { Entry, PlainTable } from '$lib/exchange/csv/write';
import {
	decimalsFor,
	decimalsWritten,
	formatDifference,
	formatNumber,
	formatUnit,
	MOST_DECIMALS
} from '../format';
import { plain, shown, type Reading } from '../figure/read';
import { factorBetween } from '../figure/scale';
import type { UnitSystem } from '$lib/units/system';
import type { MonthValue, Quote } from './quote';

/** What words need beside the quote. */
export interface Tongue {
	readonly units: UnitSystem;
	readonly locale: string;
}

export const unitOf = (reading: Reading | null) =>
	formatUnit(reading?.quantity?.quantity.unit ?? undefined);

/** A reading with the digits of its quantity; its unit behind it if wanted. */
export function said(reading: Reading, locale: string, withUnit = false): string {
	const fitting = decimalsFor(reading.value, reading.quantity?.quantity.digits ?? 4);
	const decimals = Math.min(fitting, decimalsWritten(reading.value, MOST_DECIMALS));
	const text = shown(reading, decimals, locale);
	const unit = withUnit && reading.kind === 'value' ? unitOf(reading) : '';
	return unit ? `${text}\u00a0${unit}` : text;
}

/** A price with four decimals, as prices by the metre are written. */
export const priceText = (reading: Reading, locale: string) => shown(reading, 4, locale);

/** A difference of two prices, by the kilometre where prices are by the metre. */
export function differenceText(
	price: Reading,
	from: Reading,
	{ units, locale }: Tongue
): { amount: string; sign: number } {
	const unit = price.quantity?.quantity.unit ?? '';
	const perKm = unit.replace(/\/m$/, '/km');
	const factor = perKm === unit ? null : factorBetween(units, unit, perKm);
	const value = (price.value - from.value) * (factor ?? 1);
	const decimals = decimalsFor(value, 3);
	const size = formatNumber(Math.abs(value), factor === null ? decimals : 0, locale);
	const words = factor === null ? formatUnit(unit) : `${formatUnit(unit).split('/')[0]} per km`;
	return { amount: `${size}\u00a0${words}`, sign: Math.sign(value) };
}

/** `isImpossible`: the plan made again around the order has no hours for it. */
export function quoteTitle(quote: Quote, tongue: Tongue, isImpossible = false): string {
	const { price, floor, size } = quote;
	if (price.kind === 'pending') return 'The quote is being computed';
	const product = quote.choices[0]?.id ?? '';
	const month = monthOf(quote);
	const on = quote.standsOn === null ? '' : `, on ${quote.standsOn}`;
	const what = `${said(size, tongue.locale, true)} of ${product}${month ? ` in ${month}` : ''}${on}`;
	const bad = [price, floor].find((reading) => reading.kind !== 'value');
	if (bad) return bad.because ? `No quote for ${product}: ${bad.because}` : `${what}: no price yet`;
	if (isImpossible) return `${what}: the plan has no hours for it`;
	const { amount, sign } = differenceText(price, lowest(quote), tongue);
	const beside = besideTarget(quote);
	const which = quote.planFloor ? 'the plan’s floor' : 'the floor';
	if (sign === 0) return `${what}: just at ${which}${beside}`;
	return `${what}: ${amount} ${sign > 0 ? 'over' : 'under'} ${which}${beside}`;
}

/** What a price is held against: the plan's floor where it is known. */
export const lowest = ({ floor, planFloor }: Pick<Quote, 'floor' | 'planFloor'>): Reading =>
	planFloor ?? floor;

/** What keeps a price over the floor from being a good one; empty where nothing does. */
function besideTarget(quote: Quote): string {
	const { price, target } = quote;
	const floor = lowest(quote);
	if (target.kind !== 'value') return '';
	if (target.value < floor.value) return '; the target lies under it';
	return price.value < target.value && price.value >= floor.value ? ', short of the target' : '';
}

export const monthOf = (quote: Quote) => quote.months.find((month) => month.isChosen)?.label ?? '';

/** Who asks, how it runs, and the unit of every price on the page. */
export function quoteLine(quote: Quote): string {
	const words = quote.choices.slice(1).filter((choice) => choice.label !== monthOf(quote));
	const on = quote.takenBy ? [`on ${quote.takenBy.id}`] : [];
	const whom = [...words.map((word) => word.label), ...on].join(', ');
	return [whom, `${unitOf(quote.price)} throughout`].filter(Boolean).join('; ');
}

/** Below the mark of this quote. */
export function standing(quote: Quote, tongue: Tongue): string {
	const { price, target } = quote;
	const floor = lowest(quote);
	if (price.kind !== 'value') return '';
	const parts = ['net-net'];
	// Under the floor a target is none to hold a price against.
	const isTarget = target.kind === 'value' && target.value !== 0;
	if (isTarget && !(floor.kind === 'value' && target.value < floor.value)) {
		const share = (100 * (price.value - target.value)) / target.value;
		parts.push(`${formatDifference(share, 1, tongue.locale)}\u00a0% to target`);
	}
	if (floor.kind === 'value') {
		const { amount, sign } = differenceText(price, floor, tongue);
		parts.push(
			`${amount} ${sign < 0 ? 'under' : 'over'} ${quote.planFloor ? 'the plan’s floor' : 'floor'}`
		);
	}
	return parts.join(', ');
}

export function quoteSummary(quote: Quote, tongue: Tongue): string {
	const { locale } = tongue;
	const unit = unitOf(quote.price);
	const price = (reading: Reading) =>
		reading.kind === 'value' ? `${priceText(reading, locale)} ${unit}` : plain(reading);
	const byPlan = quote.planFloor ? `, by the plan made again ${price(quote.planFloor)}` : '';
	const marks = `Floor ${price(quote.floor)}${byPlan}, this quote ${price(quote.price)} net-net, target ${price(quote.target)}, invoice ${price(quote.invoice)}, list ${price(quote.list)}.`;
	const ladder = quote.bySize
		.map((step) => `${step.label} ${step.offered ? price(step.offered) : ''}`)
		.join(', ');
	const steps = quote.steps
		.filter((step) => step.amount.kind !== 'value' || step.amount.value !== 0)
		.map((step) => `${step.label} ${priceText(step.amount, locale)}`)
		.join(', ');
	const months = quote.months
		.map((month) => `${month.label} ${said(month.value, locale)}`)
		.join(', ');
	const hours = months
		? ` Value of an hour by month, ${unitOf(quote.months[0]?.value ?? null)}: ${months}.`
		: '';
	return `${marks} Offered by size of the order: ${ladder}. From list to what is left, ${unit}: ${steps}.${hours}`;
}

/** Every figure of the page, one a row. */
export function quoteTable(quote: Quote): PlainTable {
	const rows: Entry[][] = [];
	const add = (part: string, of: string, reading: Reading | null) => {
		if (!reading) return;
		const label = reading.quantity?.quantity.label ?? '';
		rows.push([part, of ? `${label}, ${of}` : label, plain(reading), unitOf(reading)]);
	};
	const { price, floor, target, list, invoice, margin, size, hours, standsOn } = quote;
	if (standsOn !== null)
		rows.push(['This order', 'Stands on, which is not the base', standsOn, '']);
	for (const one of [size, hours, floor, target, list, invoice, price, margin])
		add('This order', '', one);
	for (const step of quote.steps)
		rows.push(['From list to what is left', step.label, plain(step.amount), unitOf(step.amount)]);
	for (const { label, floor, target, offered } of quote.bySize)
		for (const one of [floor, target, offered]) add('By size of the order', label, one);
	for (const { label, floor, target } of quote.byLength)
		for (const reading of [floor, target]) add('By length of the coil', label, reading);
	for (const { label, value, cost } of quote.months)
		for (const reading of [value, cost]) add('Hours by month', label, reading);
	for (const { label, prices } of quote.onInvoice?.rows ?? [])
		for (const reading of prices) add('On the invoice', label, reading);
	for (const { label, price } of quote.extras) add('Extras', label, price);
	add('Make or buy', '', quote.makeOrBuy?.make ?? null);
	add('Make or buy', '', quote.makeOrBuy?.buy ?? null);
	add('Validity', '', quote.validity);
	for (const { label, share, index } of quote.clause?.parts ?? [])
		for (const reading of [share, index]) add('Index clause', label, reading);
	add('Index clause', '', quote.clause?.price ?? null);
	return { caption: quote.picture.title, columns: ['Part', 'Figure', 'Value', 'Unit'], rows };
}

/** The hours of the order against those that are free where and when it runs; empty where none are told. */
export function capacityLine({ hours, months, takenBy }: Quote, { locale }: Tongue): string {
	const chosen = months.find((month) => month.isChosen);
	if (hours?.kind !== 'value' || chosen?.free?.kind !== 'value') return '';
	const place = `${takenBy ? `of ${takenBy.id} ` : ''}in ${chosen.label}`;
	const takes = `The order takes ${said(hours, locale, true)} ${place}`;
	// A plan lies a hair inside of what there is: that is none.
	const isNone = chosen.free.value < hours.value / 1000;
	const free = `the plan leaves ${isNone ? 'none' : said(chosen.free, locale, true)} free`;
	return hours.value > chosen.free.value
		? `${takes}; ${free}: other work has to move or give way.`
		: `${takes}; ${free}: it fits.`;
}

/** Whether the order's hours are free in a month: false only where fewer are known to be. */
export const fits = ({ hours }: Pick<Quote, 'hours'>, { free }: MonthValue): boolean =>
	hours?.kind !== 'value' || free?.kind !== 'value' || hours.value <= free.value;

/** Below the title of the hours: in which unit, and what the floor charges this order for them. */
export function hoursLine(quote: Quote, { locale }: Tongue): string {
	const chosen = quote.months.find((month) => month.isChosen);
	const unit = `${unitOf(quote.months[0]?.value ?? null)} over all hours of this order`;
	if (!chosen || chosen.cost.kind !== 'value') return unit;
	if (chosen.cost.value === 0)
		return fits(quote, chosen)
			? `${unit}; in ${chosen.label} the hours are free`
			: `${unit}; in ${chosen.label} one hour more is worth nothing`;
	if (Math.abs(chosen.cost.value) < 0.00005)
		return `${unit}; in ${chosen.label} the floor holds next to nothing for them`;
	const hours = quote.hours?.kind === 'value' ? ` for ${said(quote.hours, locale, true)}` : '';
	const cost = `${priceText(chosen.cost, locale)} ${unitOf(chosen.cost)}`;
	return `${unit}; in ${chosen.label} the floor holds ${cost}${hours}`;
}
