/**
 * The sheet of a quote that stays in the house: every item with its floor and what is left, the whole, call-offs, prices that
 * were tested, and the plan made again. It is made of the same figures as the page, live or as they stood.
 */
import { decimalsFor, formatNumber, formatUnit } from '$lib/ui/format';
import { language } from '$lib/ui/language';
import { itemsTexts as texts } from '$lib/ui/quotes/items-texts';
import { marginOf, wholeOf, type ItemAnswer } from '$lib/ui/quotes/tender';
import type { PlanAnswer } from '$lib/ui/quotes/tender-plan';
import { tenderPlanTexts as planTexts } from '$lib/ui/quotes/tender-plan-texts';
import { heading, list, paragraph, type Block, type Paper, type Row } from './paper';

export interface InternalSheet {
	readonly title: string;
	/** Number, dates, customer, what it stands on: a line each. */
	readonly facts: readonly string[];
	readonly items: readonly {
		readonly name: string;
		readonly metres: number | null;
		readonly when: string;
		readonly test: number | null;
		readonly answer: ItemAnswer | null;
		readonly remarks: readonly string[];
	}[];
	readonly plan: PlanAnswer | null;
	/** Units of money and hours. */
	readonly money: string;
	readonly hours: string;
	readonly locale: string;
}

export function internalSheetPaper(sheet: InternalSheet): Paper {
	const { title, facts, items, plan, money, hours, locale } = sheet;
	const number = (value: number | null | undefined, digits = 4) =>
		value === null || value === undefined
			? '–'
			: formatNumber(value, Math.abs(value) >= 1000 ? 0 : decimalsFor(value, digits), locale);
	const amount = (value: number, unit: string) => `${number(value)} ${formatUnit(unit)}`.trim();
	const { columns } = texts;
	const rows = items.flatMap(({ name, metres, when, test, answer }, i): Row[] => {
		const row = (
			first: string,
			much: number | null,
			at: string,
			of: ItemAnswer['whole'] | undefined
		) => ({
			cells: [
				...[first, number(much), at, number(of?.invoice), number(of?.price), number(of?.floor)],
				...[number(of?.target), number(of?.contribution), number(of && marginOf(of), 3)],
				number(of?.hours, 3)
			]
		});
		return [
			row(`${i + 1}. ${name}`, metres, when, answer?.whole),
			...(answer?.calls ?? []).map((call) => row('', call.amount, call.month, call.figures)),
			...(answer?.tested && test !== null
				? [row(`${columns.test} ${number(test)}`, metres, when, answer.tested)]
				: [])
		];
	});
	const whole = wholeOf(items.flatMap(({ answer }) => answer ?? []));
	const total: Row = {
		kind: 'total',
		cells: [
			...[texts.whole, '', '', number(whole.revenue), number(whole.net), '', ''],
			...[number(whole.contribution), number(marginOf(whole), 3), number(whole.hours, 3)]
		]
	};
	const remarks = items.flatMap(({ name, remarks: own }, i) =>
		own.map((text) => `${i + 1}. ${name}: ${text}`)
	);
	return {
		...{ title, language, landscape: true },
		blocks: [
			...facts.map((text) => paragraph(text)),
			{
				kind: 'table',
				caption: texts.title,
				columns: [
					...[
						{ title: columns.item, width: 3 },
						{ title: columns.metres, isNumber: true }
					],
					{ title: columns.when, width: 2 },
					...[columns.invoice, columns.price, columns.floor, columns.target, columns.left].map(
						(one) => ({ title: one, isNumber: true })
					),
					...[columns.margin, columns.hours].map((one) => ({ title: one, isNumber: true }))
				],
				rows: [...rows, total]
			},
			...(remarks.length > 0 ? [list(remarks)] : []),
			...(plan ? planBlocks(plan, (value, unit) => amount(value, unit), money, hours) : [])
		]
	};
}

function planBlocks(
	plan: PlanAnswer,
	amount: (value: number, unit: string) => string,
	money: string,
	hours: string
): Block[] {
	const { loses, brings } = plan;
	const sum = (value: number) => amount(value, money);
	const net = loses === null || brings === null ? null : brings - loses;
	const verdict =
		net === null || loses === null || brings === null
			? planTexts.noRoom(`${Math.floor(100 * (plan.fits ?? 0))} %`)
			: (net < 0 ? planTexts.costs : planTexts.gains)(sum(Math.abs(net)), sum(brings), sum(loses));
	const gives = plan.gives.map(({ place, amount: less, unit, money: of }) => ({
		cells: [place, amount(less, unit), sum(of)]
	}));
	return [
		heading(planTexts.title),
		paragraph(verdict, 'strong'),
		...(plan.hours.length > 0
			? [
					{
						kind: 'table' as const,
						caption: planTexts.hours,
						columns: [
							...[{ title: planTexts.place }, { title: planTexts.month }],
							...[planTexts.taken, planTexts.free, planTexts.freeWith].map((title) => ({
								...{ title, isNumber: true }
							}))
						],
						rows: plan.hours.map((one) => ({
							cells: [
								...[one.place, one.month, one.taken === null ? '' : amount(one.taken, hours)],
								amount(one.free, hours),
								one.free_with === null ? '–' : amount(one.free_with, hours)
							]
						}))
					}
				]
			: []),
		...(gives.length > 0
			? [
					{
						kind: 'table' as const,
						caption: planTexts.pushedOut,
						columns: [
							{ title: planTexts.what },
							...[planTexts.less, planTexts.money].map((title) => ({ title, isNumber: true }))
						],
						rows: gives
					}
				]
			: []),
		paragraph(planTexts.line, 'small')
	];
}
