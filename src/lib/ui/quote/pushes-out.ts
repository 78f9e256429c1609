/** What an order's hours push out of the plan: where they are required, what gives way, and what the floor charges for them. */
import { cellAt, type Layout } from '$lib/engine/layout';
import type { Taking, Where } from '$lib/programmes/inquiry/questions';
import { activeProgrammes } from '$lib/workbook/plans';
import type { Reading } from '../figure/read';
import { listed } from '../figure/words';
import { placeLabel, unitOf } from '../programmes/labels';
import { amountText } from '../programmes/numbers';
import { firstOfEach } from '../programmes/plan-table';
import type { Chosen, Quote } from './quote';
import { priceText, unitOf as readingUnit } from './quote-words';
import { texts } from './texts';

export interface HoursInPlan {
	readonly where: Where;
	/** Of the requirement that makes the hours scarce. */
	readonly cell: number;
	/** Sets whose member goes without saying. */
	readonly each: readonly string[];
	/** Unit of the objective. */
	readonly money: string;
}

/** Null where no programme requires anything of what takes the order in its month. */
export function hoursInPlan(
	layout: Layout,
	scenario: string,
	takenBy: Chosen | null,
	month: Chosen | null
): HoursInPlan | null {
	if (!takenBy || !month) return null;
	for (const programme of activeProgrammes(layout.workbook)) {
		const each = programme.each ?? [];
		const first = firstOfEach(layout.workbook.sets, each);
		const chosen = new Map([
			...Object.entries(first),
			[takenBy.set, takenBy.id] as const,
			[month.set, month.id] as const
		]);
		for (const name of Object.values(programme.shadow_prices ?? {})) {
			const quantity = layout.byName.get(name);
			const sets = quantity?.axes.map(({ set }) => set) ?? [];
			if (!quantity || ![takenBy.set, month.set].every((set) => sets.includes(set))) continue;
			const ordinals = sets.map(
				(set) => layout.ordinals.get(set)?.get(chosen.get(set) ?? '') ?? -1
			);
			const cell = cellAt(quantity, ordinals);
			const objective = layout.byName.get(programme.maximise ?? programme.minimise ?? '');
			const members = each.map((set) => first[set] ?? '');
			const where = { programme: programme.name, scenario, members };
			if (cell >= 0 && objective) return { where, cell, each, money: unitOf(objective) };
		}
	}
	return null;
}

/** What is named one by one. */
const MOST = 3;

/** `hours`: "219 h of L2 in January". */
export function pushesOutWords(
	layout: Layout,
	{ each, money }: Pick<HoursInPlan, 'each' | 'money'>,
	{ cost, gives }: Taking,
	hours: string,
	locale: string
): string {
	if (cost === null) return texts.notSoManyHours(hours);
	const amount = amountText(cost, money, locale);
	if (cost < 0.5) return texts.pushesNothingOut(hours);
	if (gives.length === 0) return texts.movesOthers(hours, amount);
	const named = gives.slice(0, MOST).map(({ cell, amount: less }) => {
		const quantity = layout.quantities[layout.quantityOfCell[cell]!]!;
		return texts.lessOf(amountText(less, unitOf(quantity), locale), placeLabel(layout, cell, each));
	});
	const rest = gives.length - named.length;
	return texts.pushesOut(hours, listed(rest > 0 ? [...named, texts.others(rest)] : named), amount);
}

/** What the floor charges for the hours: an hour's value over all of them. Null where a part of it has no value. */
export function chargedFor({ months, hours }: Quote): number | null {
	const value = months.find(({ isChosen }) => isChosen)?.value;
	if (value?.kind !== 'value' || hours?.kind !== 'value') return null;
	return value.value * hours.value;
}

/** The floor's estimate beside what the plan loses; empty where there is nothing to compare. */
export function chargedWords(
	quote: Quote,
	cost: number | null,
	money: string,
	locale: string
): string {
	const charged = chargedFor(quote);
	if (charged === null || cost === null) return '';
	const gap = cost - charged;
	if (Math.abs(gap) < 0.5) return texts.chargedAlike;
	const amount = (of: number) => amountText(of, money, locale, of < 10 ? 2 : 4);
	const told = texts.charged(amount(charged), amount(Math.abs(gap)), gap > 0);
	const byPlan = floorByPlan(quote, cost, locale);
	if (!byPlan) return told;
	const floor = `${priceText(byPlan, locale)} ${readingUnit(byPlan)}`;
	return `${told} ${texts.floorByPlan(floor, priceText(quote.floor, locale))}`;
}

/** The floor with what the plan loses in place of what the hours are charged; null where no digit of it would change. */
export function floorByPlan(quote: Quote, cost: number | null, locale: string): Reading | null {
	const { floor, size } = quote;
	const charged = chargedFor(quote);
	if (charged === null || cost === null) return null;
	if (floor.kind !== 'value' || size.kind !== 'value' || size.value <= 0) return null;
	const byPlan = { ...floor, value: floor.value + (cost - charged) / size.value };
	return priceText(byPlan, locale) === priceText(floor, locale) ? null : byPlan;
}
