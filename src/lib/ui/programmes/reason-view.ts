/** Why a decision is not larger, or why something is not used in full, as the lines of a panel. */
import { quantityOf, type Layout } from '$lib/engine/layout';
import type {
	DecisionReason,
	Reason,
	RequirementReason,
	Take,
	Way
} from '$lib/programmes/inquiry/questions';
import { cellLabel } from './labels';
import { amountText, lotFor } from './numbers';
import { texts } from './texts';

export interface ReasonView {
	readonly title: string;
	/** The answer in a sentence or two. */
	readonly lead: string;
	/** What would have to change; empty where nothing has to. */
	readonly change: string;
	/** What one lot more brings and takes; empty for a requirement. */
	readonly sum: readonly Line[];
	/** By which ways it could be had, or who could take more. */
	readonly others: readonly Group[];
	readonly othersTitle: string;
}

export interface Line {
	readonly label: string;
	readonly amount: string;
	/** The cell to go on with. */
	readonly to: number | null;
	readonly isTotal?: boolean;
}

export interface Group extends Line {
	readonly lines: readonly Line[];
}

interface Told {
	readonly layout: Layout;
	readonly locale: string;
	/** Of the objective. */
	readonly money: string;
	/** Sets whose member goes without saying. */
	readonly each: readonly string[];
}

export const reasonView = (reason: Reason, told: Told): ReasonView =>
	reason.kind === 'decision' ? decisionView(reason, told) : requirementView(reason, told);

function decisionView(reason: DecisionReason, told: Told): ReasonView {
	const { layout, each } = told;
	const { cell, own, gain, takes } = reason;
	const lot = lotFor(own, gain, ...takes.map(({ loss }) => loss));
	const lotText = amountText(lot, unitAt(layout, cell), told.locale);
	const money = signedMoney(told);
	const best = takes
		.flatMap(({ ways }) => ways)
		.reduce<Way | null>((found, way) => (!found || way.gain > found.gain ? way : found), null);
	return {
		title: cellLabel(layout, cell, each),
		lead: decisionLead(reason, lot, lotText, told),
		change: decisionChange(reason, best, lot, lotText, told),
		sum: [
			{ label: texts.byItself(lotText), amount: money(own * lot), to: null },
			...takes.map((take) => takeLine(take, lot, told)),
			{ label: texts.inSum, amount: money(gain * lot), to: null, isTotal: true }
		],
		others: takes.flatMap(({ ways }) => ways.map((way) => wayGroup(way, lot, told))),
		othersTitle: texts.waysTitle(lotText)
	};
}

function decisionLead(reason: DecisionReason, lot: number, lotText: string, told: Told): string {
	const { cell, value, lower, upper, isPinned, gain, takes } = reason;
	const money = amountText(Math.abs(gain) * lot, told.money, told.locale, 3);
	const now = amountText(value, unitAt(told.layout, cell), told.locale);
	const change =
		gain > 0
			? texts.moreBrings(lotText, money)
			: gain < 0
				? texts.moreCosts(lotText, money)
				: takes.some(({ loss }) => loss > 0)
					? texts.moreEven(lotText)
					: texts.moreNothing(lotText);
	if (isPinned) return texts.heldAt(now, change);
	const isAt = (bound: number) => Math.abs(value - bound) <= 1e-6 * Math.max(1, Math.abs(bound));
	if (Number.isFinite(upper) && isAt(upper)) return texts.atMost(now, change);
	return isAt(lower) && value === 0 ? texts.notChosen(change) : texts.chosenAt(now, change);
}

/** The scarce things that stand in the way, of the decision itself or of the best way to have it. */
function decisionChange(
	{ gain, takes, isPinned }: DecisionReason,
	best: Way | null,
	lot: number,
	lotText: string,
	told: Told
): string {
	if (isPinned) return texts.changeLetGo;
	const scarce = [...(best?.takes ?? []), ...takes.filter(({ ways }) => ways.length === 0)]
		.filter(({ loss }) => loss > 0)
		.sort((a, b) => b.loss - a.loss)
		.slice(0, 3)
		.map(({ cell, price, unit }) =>
			texts.moreOf(
				cellLabel(told.layout, cell, told.each),
				amountText(price, perUnit(told.money, unit), told.locale, 3)
			)
		);
	const short = Math.max(0, -Math.max(gain, best?.gain ?? gain));
	return texts.change(
		short > 0
			? texts.changePrice(lotText, amountText(short * lot, told.money, told.locale, 3))
			: '',
		scarce
	);
}

function requirementView(reason: RequirementReason, told: Told): ReasonView {
	const { layout, locale, each } = told;
	return {
		title: cellLabel(layout, reason.cell, each),
		lead: reason.rows
			.map(({ room, price }) => {
				const there = amountText(room.there, room.unit, locale);
				const free = Math.abs(room.there - room.used);
				const isTight = free <= 1e-6 * Math.max(1, Math.abs(room.there));
				if (price > 0 || isTight)
					return texts.allUsed(
						room.way,
						there,
						amountText(price, perUnit(told.money, room.unit), locale, 3)
					);
				return texts.someFree(room.way, amountText(free, room.unit, locale), there);
			})
			.join(' '),
		change: '',
		sum: [],
		others: reason.takers.map((taker) => {
			const lot = taker.gain === 0 ? 1 : lotFor(taker.gain);
			const unit = unitAt(layout, taker.cell);
			return {
				label: texts.taker(
					cellLabel(layout, taker.cell, each),
					amountText(taker.value, unit, locale),
					taker.isPinned
				),
				amount:
					taker.gain === 0
						? texts.evens
						: texts.perLot(signedMoney(told)(taker.gain * lot), amountText(lot, unit, locale)),
				to: taker.cell,
				lines: []
			};
		}),
		othersTitle: reason.takers.length > 0 ? texts.takersTitle : ''
	};
}

const unitAt = (layout: Layout, cell: number) => quantityOf(layout, cell)?.quantity.unit ?? '1';

const signedMoney = (told: Told) => (value: number) =>
	`${value > 0 ? '+' : ''}${amountText(value, told.money, told.locale, 3)}`;

/** "EUR/h"; the money alone where what is counted has no unit. */
export const perUnit = (money: string, unit: string): string =>
	unit && unit !== '1' ? `${money}/${/[/*]/.test(unit) ? `(${unit})` : unit}` : money;

function takeLine(take: Omit<Take, 'ways'>, lot: number, told: Told): Line {
	const { layout, locale, each } = told;
	const amount = amountText(Math.abs(take.amount) * lot, take.unit, locale, 3);
	const label = cellLabel(layout, take.cell, each);
	const price = amountText(take.price, perUnit(told.money, take.unit), locale, 3);
	return {
		label: take.amount > 0 ? texts.takes(amount, label, price) : texts.gives(amount, label, price),
		amount: signedMoney(told)(-take.loss * lot),
		to: take.cell
	};
}

function wayGroup(way: Way, lot: number, told: Told): Group {
	const money = signedMoney(told);
	return {
		label: cellLabel(told.layout, way.cell, told.each),
		amount: way.gain === 0 ? texts.evens : money(way.gain * lot),
		to: way.cell,
		lines: [
			...(way.own === 0
				? []
				: [{ label: texts.wayItself, amount: money(way.own * lot), to: null }]),
			...way.takes.map((take) => takeLine(take, lot, told))
		]
	};
}
