/**
 * What a quote says in one scenario, read from its results: prices on one scale, the ladders, the steps
 * from list to what is left, the months. Sentences are in `quote-words.ts`; places, in the parts drawn.
 */
import type { Layout } from '$lib/engine/layout';
import type { Picture } from '$lib/workbook/schema';
import { choiceSet } from '../cells';
import { read, type Reading, type Source } from '../figure/read';
import { formatUnit } from '../format';

export type QuotePicture = Extract<Picture, { kind: 'quote' }>;

export interface LadderStep {
	readonly id: string;
	readonly label: string;
	/** The number of the member: metres of an order, or of a coil. */
	readonly size: number;
	readonly floor: Reading;
	readonly target: Reading;
	/** Only by the size of the order. */
	readonly offered: Reading | null;
}

export interface PriceStep {
	readonly label: string;
	readonly amount: Reading;
	readonly level: Reading;
	readonly isTotal: boolean;
}

export interface MonthValue {
	readonly id: string;
	readonly label: string;
	readonly value: Reading;
	readonly cost: Reading;
	/** Hours that are free then; null where the picture names none. */
	readonly free: Reading | null;
	readonly isChosen: boolean;
}

/** Prices as the customer reads them: a row for each, a column for each way to count. */
export interface OnInvoice {
	readonly columns: readonly { readonly label: string; readonly unit: string }[];
	readonly rows: readonly { readonly label: string; readonly prices: readonly Reading[] }[];
}

export interface Extra {
	readonly id: string;
	readonly label: string;
	readonly isWanted: boolean;
	readonly price: Reading;
}

export interface ClausePart {
	readonly label: string;
	readonly share: Reading;
	readonly index: Reading;
}

/** A member that a choice holds. */
export interface Chosen {
	readonly id: string;
	readonly label: string;
	readonly set: string;
	readonly ordinal: number;
}

export interface Quote {
	readonly picture: QuotePicture;
	/** The scenario that it stands on, where that is not the base. */
	readonly standsOn: string | null;
	readonly price: Reading;
	readonly floor: Reading;
	/** The floor with what the plan loses once it is made again around the order; null while unknown, or where it is the same. */
	readonly planFloor: Reading | null;
	readonly target: Reading;
	readonly list: Reading;
	readonly invoice: Reading;
	readonly margin: Reading;
	readonly targetMargin: Reading | null;
	readonly size: Reading;
	readonly hours: Reading | null;
	readonly takenBy: Chosen | null;
	/** What the inputs of the order choose, in their order. */
	readonly choices: readonly Chosen[];
	readonly bySize: readonly LadderStep[];
	readonly byLength: readonly LadderStep[];
	readonly steps: readonly PriceStep[];
	readonly months: readonly MonthValue[];
	readonly onInvoice: OnInvoice | null;
	readonly extras: readonly Extra[];
	readonly makeOrBuy: { make: Reading; buy: Reading; buyIsLess: boolean } | null;
	readonly validity: Reading | null;
	readonly clause: {
		readonly parts: readonly ClausePart[];
		readonly least: Reading;
		readonly most: Reading;
		readonly price: Reading;
	} | null;
}

const isYes = (reading: Reading) => reading.kind === 'value' && reading.value === 1;

/** The member that a choice without axes holds; null while it has none. */
export function chosenOf(source: Source, name: string): Chosen | null {
	const quantity = source.layout.byName.get(name);
	const set = quantity && choiceSet(source.layout, quantity);
	const reading = read(source, name);
	const member = reading.kind === 'value' ? set?.members[reading.value] : undefined;
	if (!set || !member) return null;
	const { id, label = id } = member;
	return { id, label, set: set.name, ordinal: reading.value };
}

/** Members of the one set that a quantity is per. */
function membersOf(layout: Layout, name: string) {
	const set = layout.byName.get(name)?.axes[0]?.set ?? '';
	const members = layout.sets.get(set)?.members ?? [];
	return members.map(({ id, label = id, number }, ordinal) => ({
		...{ id, label, number: number ?? ordinal + 1, at: { [set]: ordinal } }
	}));
}

function invoiceOf(source: Source, names: readonly string[]): OnInvoice {
	const quantities = names.map((name) => source.layout.byName.get(name)?.quantity);
	return {
		columns: quantities.map((quantity) => ({
			label: quantity?.label ?? '',
			unit: formatUnit(quantity?.unit)
		})),
		rows: membersOf(source.layout, names[0] ?? '').map(({ label, at }) => ({
			label,
			prices: names.map((name) => read(source, name, at))
		}))
	};
}

export function quoteOf(picture: QuotePicture, source: Source): Quote {
	const { layout } = source;
	const [, ...others] = layout.workbook.scenarios;
	const other = others.find(({ id }) => id === picture.scenario);
	const of = (name: string) => read(source, name);
	const maybe = (name: string | undefined) => (name === undefined ? null : of(name));
	const { by_size: size, by_length: length, waterfall, hour_value: hours, extras } = picture;
	const { make_or_buy: making, clause } = picture;
	const month = hours && chosenOf(source, hours.chosen)?.id;
	return {
		picture,
		standsOn: other?.title ?? null,
		...{ price: of(picture.price), floor: of(picture.floor), target: of(picture.target) },
		planFloor: null,
		...{ list: of(picture.list), invoice: of(picture.invoice), margin: of(picture.margin) },
		targetMargin: maybe(picture.target_margin),
		size: of(picture.size),
		hours: maybe(picture.hours),
		takenBy: picture.taken_by === undefined ? null : chosenOf(source, picture.taken_by),
		choices: picture.order.flatMap((name) => chosenOf(source, name) ?? []),
		bySize: membersOf(layout, size.floor).map(({ id, label, number, at }) => ({
			...{ id, label, size: number },
			floor: read(source, size.floor, at),
			target: read(source, size.target, at),
			offered: read(source, size.offered, at)
		})),
		byLength: length
			? membersOf(layout, length.floor).map(({ id, label, number, at }) => ({
					...{ id, label, size: number, offered: null },
					floor: read(source, length.floor, at),
					target: read(source, length.target, at)
				}))
			: [],
		steps: membersOf(layout, waterfall.amount).map(({ label, at }) => ({
			label,
			amount: read(source, waterfall.amount, at),
			level: read(source, waterfall.level, at),
			isTotal: isYes(read(source, waterfall.is_total, at))
		})),
		months: hours
			? membersOf(layout, hours.value).map(({ id, label, at }) => ({
					...{ id, label, isChosen: id === month },
					value: read(source, hours.value, at),
					cost: read(source, hours.cost, at),
					free: hours.free === undefined ? null : read(source, hours.free, at)
				}))
			: [],
		onInvoice: picture.on_invoice ? invoiceOf(source, picture.on_invoice) : null,
		extras: extras
			? membersOf(layout, extras.price).map(({ id, label, at }) => ({
					...{ id, label, isWanted: isYes(read(source, extras.wanted, at)) },
					price: read(source, extras.price, at)
				}))
			: [],
		makeOrBuy: making
			? { make: of(making.make), buy: of(making.buy), buyIsLess: isYes(of(making.buy_is_less)) }
			: null,
		validity: maybe(picture.validity),
		clause: clause
			? {
					parts: membersOf(layout, clause.share).map(({ label, at }) => ({
						...{ label, share: read(source, clause.share, at) },
						index: read(source, clause.index, at)
					})),
					...{ least: of(clause.least), most: of(clause.most), price: of(clause.price) }
				}
			: null
	};
}
