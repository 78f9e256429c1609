/** A quote in the plan: what of it is taken where and when, and what the plan made again around it says. */
import type { OrderFigures } from '$lib/engine/quote-figures';
import { cellAt, membersOf, type Layout } from '$lib/engine/layout';
import type { Placing, Share, Where } from '$lib/programmes/inquiry/questions';
import { activeProgrammes } from '$lib/workbook/plans';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { QuoteAnswers, Scalar } from '$lib/workbook/schema';
import { memberLabel, placeLabel, unitOf } from '../programmes/labels';
import { firstOfEach } from '../programmes/plan-table';
import type { DatedMonth, Tender } from './tender';

export type PlanAnswer = NonNullable<QuoteAnswers['plan']>;

/** One run: so much of an item in a month. */
export interface Run {
	/** Whose. */
	readonly item: string;
	readonly amount: number;
	readonly month: DatedMonth;
	readonly figures: Pick<OrderFigures, 'values'>;
}

export interface PlanQuestion {
	readonly where: Where;
	readonly takes: readonly Share[];
	readonly hours: string;
	/** Hours of the runs, by cell of the requirement that tells hours. */
	readonly taken: ReadonlyMap<number, number>;
	/** What the runs bring less what they cost besides what the plan pays. */
	readonly brings: number;
}

/** One question for each part of the plan that is asked; null where the workbook has no plan to ask, or a run has no figures. */
export function planQuestions(
	layout: Layout,
	scenario: string,
	picture: QuotePicture,
	{ plan }: Tender,
	runs: readonly Run[]
): PlanQuestion[] | null {
	const asked = plan && askedPlan(layout, picture, plan);
	const taken = plan && layout.byName.get(plan.taken);
	const hours = plan && layout.byName.get(plan.hours);
	if (!plan || !asked || !taken || !hours) return null;
	const { programme, each, first, monthSet } = asked;
	const parts = new Map<
		string,
		{ takes: Map<number, number>; taken: Map<number, number>; brings: number }
	>();
	// What has no price yet is named beside its item, and is in no plan.
	const priced = runs.filter(({ figures }) => typeof figures.values[picture.price] === 'number');
	if (priced.length === 0) return null;
	for (const { amount, month, figures } of priced) {
		const part = month.part ?? first[each[0] ?? ''] ?? '';
		const memberOf = (set: string): Scalar => {
			if (set === each[0]) return part;
			if (each.includes(set)) return first[set] ?? null;
			if (set === monthSet) return month.month;
			const names = [
				...picture.order,
				...(picture.taken_by === undefined ? [] : [picture.taken_by])
			];
			const name = names.find((one) => setOf(layout, one) === set);
			return name === undefined ? null : (figures.values[name] ?? null);
		};
		const cellOf = (place: typeof taken): number =>
			cellAt(
				place,
				place.axes.map(({ set }) => layout.ordinals.get(set)?.get(String(memberOf(set))) ?? -1)
			);
		const [at, there] = [cellOf(taken), cellOf(hours)];
		const [net, beyond] = [figures.values[picture.price], figures.values[plan.beyond]];
		if (at < 0 || typeof net !== 'number' || typeof beyond !== 'number') return null;
		const own = parts.get(part) ?? { takes: new Map(), taken: new Map(), brings: 0 };
		parts.set(part, own);
		own.takes.set(at, (own.takes.get(at) ?? 0) + amount);
		const long = picture.hours === undefined ? null : figures.values[picture.hours];
		if (there >= 0 && typeof long === 'number')
			own.taken.set(there, (own.taken.get(there) ?? 0) + long);
		own.brings += (net - beyond) * amount;
	}
	return [...parts].map(([part, own]) => ({
		where: {
			...{ programme: programme.name, scenario },
			members: each.map((set, i) => (i === 0 ? part : (first[set] ?? '')))
		},
		takes: [...own.takes].map(([cell, amount]) => ({ cell, amount })),
		...{ hours: plan.hours, taken: own.taken, brings: own.brings }
	}));
}

/** The programme that requires what is taken, the sets of its parts with the first of each, and that of its months. */
function askedPlan(layout: Layout, picture: QuotePicture, { taken }: NonNullable<Tender['plan']>) {
	const programme = activeProgrammes(layout.workbook).find(({ constraints }) =>
		constraints?.includes(taken)
	);
	if (!programme) return null;
	const each = programme.each ?? [];
	return {
		...{ programme, each, first: firstOfEach(layout.workbook.sets, each) },
		monthSet: picture.hour_value && setOf(layout, picture.hour_value.chosen)
	};
}

function setOf(layout: Layout, name: string): string | undefined {
	const type = layout.byName.get(name)?.quantity.type;
	return typeof type === 'object' ? type.member_of : undefined;
}

/** Below it, an hour or a metre is none. */
const SEEN = 0.05;

/** What the plan said, in words and numbers that stand by themselves. */
export function planAnswer(
	layout: Layout,
	picture: QuotePicture,
	{ plan }: Tender,
	asked: readonly { readonly question: PlanQuestion; readonly answer: Placing }[]
): PlanAnswer | null {
	const of = plan && askedPlan(layout, picture, plan);
	if (!plan || !of || asked.length === 0) return null;
	const { programme, each, first, monthSet } = of;
	const objective = layout.byName.get(programme.maximise ?? programme.minimise ?? '');
	/** Without the part where it is the first, which goes without saying. */
	const placeOf = (cell: number, but: readonly string[] = []) => {
		const { axes } = layout.quantities[layout.quantityOfCell[cell]!]!;
		const at = membersOf(layout, cell);
		const silent = axes.flatMap(({ set }, i) =>
			each.includes(set) && first[set] === at[i] ? [set] : []
		);
		return placeLabel(layout, cell, [...silent, ...but]);
	};
	const nameOf = (cell: number) => layout.quantities[layout.quantityOfCell[cell]!]!.quantity.name;
	const hours = asked.flatMap(({ question, answer }) =>
		answer.rooms.flatMap(({ cell, free, freeWith }) => {
			const taken = question.taken.get(cell) ?? null;
			const isTouched = freeWith !== null && Math.abs(freeWith - free) > SEEN;
			if (taken === null && !isTouched) return [];
			const { axes } = layout.quantities[layout.quantityOfCell[cell]!]!;
			const at = axes.findIndex(({ set }) => set === monthSet);
			const month = at < 0 ? '' : memberLabel(layout, axes[at]!.set, membersOf(layout, cell)[at]!);
			const place = placeOf(cell, monthSet === undefined ? [] : [monthSet]);
			return [{ place, month, free, free_with: freeWith, taken }];
		})
	);
	const changes = asked
		.flatMap(({ answer }) => answer.gives)
		.filter(({ amount }) => Math.abs(amount) > SEEN);
	const told = ({ cell, amount, money }: (typeof changes)[number]) => ({
		...{ place: placeOf(cell), amount, money },
		unit: unitOf(layout.quantities[layout.quantityOfCell[cell]!]!)
	});
	const isLost = ({ cell }: { cell: number }) => nameOf(cell) === plan.lost;
	const cost = asked.reduce<number | null>(
		(all, { answer }) => (all === null || answer.cost === null ? null : all + answer.cost),
		0
	);
	const fits = asked.flatMap(({ answer }) => answer.fits ?? []);
	return {
		money: objective ? unitOf(objective) : '',
		loses: cost,
		brings: asked.reduce((all, { question }) => all + question.brings, 0),
		...(fits.length > 0 && { fits: Math.min(...fits) }),
		hours: hours.slice(0, 400),
		gives: changes
			.filter((one) => isLost(one) && one.amount > 0)
			.slice(0, 40)
			.map(told),
		made: changes
			.filter((one) => !isLost(one) && one.money !== 0)
			.slice(0, 60)
			.map(told)
	};
}
