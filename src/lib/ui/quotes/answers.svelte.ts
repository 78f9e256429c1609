/** What the items of a quote come to, asked of the engine after each edit, and of the planner once it is at rest. */
import type { OrderFigures } from '$lib/engine/quote-figures';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { KeptQuote, QuoteAnswers, QuoteItem } from '$lib/workbook/schema';
import { withEntries } from '$lib/workbook/quote-overlay';
import type { Session } from '../session.svelte';
import { planAnswer, planQuestions, type PlanAnswer, type Run } from './tender-plan';
import {
	atPrice,
	byItem,
	callEntries,
	figuresRead,
	namesRead,
	NO_FIGURES,
	sumOfCalls,
	type Dated,
	type ItemAnswer,
	type Tender
} from './tender';

export interface Found {
	/** The items that were asked about, as they were then. */
	readonly items: readonly QuoteItem[];
	/** By item, as one order of the whole. */
	readonly wholes: ReadonlyMap<string, OrderFigures>;
	readonly answers: readonly ItemAnswer[];
	readonly runs: readonly Run[];
}

/** The order that an item is as a whole: in the month of its first call-off, where it has any. */
export function wholeEntries(item: QuoteItem, picture: QuotePicture, dated: Dated) {
	const first = item.calls && dated.get(item.calls[0]!.month);
	const month = picture.hour_value?.chosen;
	return first && month !== undefined
		? withEntries(item.entries, [{ quantity: month, value: first.month }])
		: item.entries;
}

/** Null where the engine cannot say. */
export async function findAnswers(
	figures: Session['figures'],
	items: readonly QuoteItem[],
	picture: QuotePicture,
	tender: Tender,
	dated: Dated,
	cautions: readonly string[]
): Promise<Found | null> {
	const names = [...namesRead(picture, tender), ...cautions];
	const own = items.map((item) => wholeEntries(item, picture, dated));
	const wholes = await figures({ orders: own, names, whole: true });
	if (!wholes) return null;
	const later: {
		readonly item: number;
		readonly call: number;
		readonly entries: QuoteItem['entries'];
	}[] = [];
	items.forEach((item, i) => {
		const invoice = figuresRead(wholes[i]!, picture, tender).invoice;
		if (item.test_price !== undefined && !item.calls)
			later.push({ item: i, call: -1, entries: atPrice(own[i]!, item.test_price, tender) });
		item.calls?.forEach((call, at) => {
			const month = dated.get(call.month);
			if (!month) return;
			const order = { amount: call.amount, month: month.month };
			later.push({
				item: i,
				call: at,
				entries: callEntries(item, order, invoice, picture, tender)
			});
			if (item.test_price !== undefined)
				later.push({
					...{ item: i, call: -2 - at },
					entries: callEntries(item, order, item.test_price, picture, tender)
				});
		});
	});
	const rest =
		later.length > 0
			? await figures({ orders: later.map(({ entries }) => entries), names, whole: false })
			: [];
	if (!rest) return null;
	const of = (item: number, call: number) => {
		const at = later.findIndex((one) => one.item === item && one.call === call);
		return at < 0 ? undefined : rest[at];
	};
	const runs: Run[] = [];
	const answers = items.map((item, i): ItemAnswer => {
		const whole = figuresRead(wholes[i]!, picture, tender);
		const read = (one: OrderFigures | undefined) =>
			one ? figuresRead(one, picture, tender) : NO_FIGURES;
		if (!item.calls) {
			const tested = of(i, -1);
			const amount = wholes[i]!.values[picture.size];
			const month = wholes[i]!.values[picture.hour_value?.chosen ?? ''];
			if (typeof amount === 'number' && typeof month === 'string')
				runs.push({
					...{ item: item.id, amount, figures: wholes[i]! },
					month: { month, part: null }
				});
			return { id: item.id, whole, ...(tested && { tested: read(tested) }) };
		}
		const calls = item.calls.map((call, at) => {
			const found = of(i, at);
			const month = dated.get(call.month);
			if (found && month) runs.push({ item: item.id, amount: call.amount, month, figures: found });
			return { ...call, figures: read(found) };
		});
		const tested = item.calls.map(({ amount }, at) => ({ amount, figures: read(of(i, -2 - at)) }));
		return {
			...{ id: item.id, whole: sumOfCalls(whole, calls), calls },
			...(item.test_price !== undefined && { tested: sumOfCalls(whole, tested) })
		};
	});
	return { items, wholes: byItem(items, wholes), answers, runs };
}

/** The plan made again with the quote in it; null where there is no plan to ask, or an item is not known to it. */
export async function findPlan(
	session: Session,
	found: Found,
	picture: QuotePicture,
	tender: Tender,
	standing: string
): Promise<PlanAnswer | null> {
	const { layout, planning } = session;
	if (!layout || !planning) return null;
	const questions = planQuestions(layout, standing, picture, tender, found.runs);
	if (!questions) return null;
	const asked = [];
	for (const question of questions) {
		const { where, takes, hours } = question;
		const reply = await planning.ask<'placing'>({ kind: 'placing', where, takes, hours });
		if (!reply.ok || session.layout?.cells !== layout.cells) return null;
		asked.push({ question, answer: reply.answer });
	}
	return planAnswer(layout, picture, tender, asked);
}

interface Asked {
	readonly quote: KeptQuote;
	readonly picture: QuotePicture;
	readonly tender: Tender;
	readonly dated: Dated;
	readonly cautions: readonly string[];
	readonly standing: string;
}

export class TenderAnswers {
	found = $state.raw<Found | null>(null);
	failed = $state(false);
	plan = $state.raw<PlanAnswer | null>(null);
	/** Whether the plan is being made again, or is of items that have changed since. */
	planBusy = $state(false);

	/** Null: nothing is asked, what is kept is shown. */
	constructor(session: Session, asked: () => Asked | null) {
		$effect(() => {
			const of = asked();
			const { layout } = session;
			if (!of || !layout || session.revision < 0) return;
			let isLast = true;
			void findAnswers(
				(what) => session.figures(what),
				of.quote.items,
				of.picture,
				of.tender,
				of.dated,
				of.cautions
			).then((found) => {
				if (!isLast) return;
				this.failed = found === null;
				this.found = found;
			});
			return () => (isLast = false);
		});
		$effect(() => {
			const of = asked();
			const { planning, isSettled } = session;
			const found = this.found;
			if (!of || !found || !planning) return;
			this.planBusy = true;
			if (planning.busy || !isSettled) return;
			let isLast = true;
			void findPlan(session, found, of.picture, of.tender, of.standing).then((plan) => {
				if (!isLast) return;
				this.plan = plan;
				this.planBusy = false;
			});
			return () => (isLast = false);
		});
	}

	/** As they are kept with a quote that is sent; null while they are not there. */
	kept(items: readonly QuoteItem[]): QuoteAnswers | null {
		if (!this.found || this.found.items !== items || this.planBusy) return null;
		return { items: [...this.found.answers], ...(this.plan && { plan: this.plan }) };
	}
}
