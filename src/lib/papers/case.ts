/** The headline figures of cases, as the page of payback shows them: their table, how cash runs, what the value is made of. */
import { formatNumber } from '$lib/ui/format';
import { axisOf } from '$lib/ui/figure/axis';
import { scaleFor, type Scale } from '$lib/ui/figure/scale';
import {
	cashRange,
	casesOf,
	largestCash,
	yearsShown,
	type Case,
	type PaybackPicture
} from '$lib/ui/pictures/payback/payback';
import { cautionsOf } from '$lib/ui/pictures/payback/payback-cautions';
import { partColumns, partText, type PartColumn } from '$lib/ui/pictures/payback/payback-parts';
import {
	FIGURE_COLUMNS,
	FIGURES,
	rowFigure,
	rowHeads,
	subLine
} from '$lib/ui/pictures/payback/payback-table';
import { paybackSummary } from '$lib/ui/pictures/payback/payback-words';
import { pictureOf } from '$lib/workbook/lookup';
import { chosen, type Making } from './making';
import { paragraph, type Block, type Drawing, type Ink, type Mark } from './paper';
import { texts } from './texts';
import { waterfall, type Step } from './waterfall';

export interface Cases {
	readonly picture: PaybackPicture;
	readonly cases: readonly Case[];
	readonly scale: Scale;
	/** Chosen scenarios without an investment. */
	readonly without: readonly string[];
}

/** Of the chosen scenarios alone; null where the workbook has no picture of payback. */
export function casesIn(making: Making): Cases | null {
	const { open, scenarios } = making;
	const picture = pictureOf(open.layout.workbook, 'payback');
	if (!picture) return null;
	const all = casesOf({ ...open, picture }).cases;
	const cases = scenarios.flatMap((id) => all.find((one) => one.id === id) ?? []);
	const unit = open.layout.byName.get(picture.npv)?.quantity.unit;
	return {
		picture,
		cases,
		scale: scaleFor(open.units, unit, largestCash(cases)),
		without: chosen(making)
			.filter(({ id }) => !cases.some((one) => one.id === id))
			.map(({ title }) => title)
	};
}

export function casePart(making: Making, { picture, cases, scale, without }: Cases): Block[] {
	const { layout, locale, results } = making.open;
	const blocks: Block[] = without.map((title) => paragraph(texts.noInvestment(title), 'caution'));
	if (cases.length === 0) return blocks;
	/** As the page has it, of these cases alone. */
	const shown = { cases, colours: {}, without: [], lacking: null, pending: 0 };
	const heads = rowHeads(cases[0], scale);
	blocks.push({
		kind: 'table',
		caption: texts.caseTable,
		columns: [
			{ title: texts.scenario },
			...FIGURES.map((name) => ({
				title: `${FIGURE_COLUMNS[name].label === 'discounted' ? texts.discountedPayback : heads[name].label}, ${heads[name].unit}`,
				isNumber: true as const
			}))
		],
		rows: cases.map((one) => ({
			cells: [
				[one.title, subLine(one, locale)].filter(Boolean).join(', '),
				...FIGURES.map((name) => rowFigure(one, name, scale, locale).text)
			]
		})),
		note: texts.caseNote
	});
	blocks.push({
		kind: 'figure',
		caption: texts.runsTo(scale.unit),
		alt: paybackSummary(shown, scale, locale),
		drawing: cashDrawing(cases, scale, locale)
	});
	const parts = partColumns(layout, picture, scale);
	if (parts.length > 0)
		blocks.push({
			kind: 'table',
			caption: texts.madeOf,
			columns: [
				{ title: texts.part },
				...cases.map(({ title }) => ({ title, isNumber: true as const }))
			],
			rows: parts.map((part) => ({
				cells: [
					part.unit ? `${part.label}, ${part.unit}` : part.label,
					...cases.map((one) => {
						const side = chosen(making).find(({ id }) => id === one.id)!;
						return partText(part, side.source, scale, locale);
					})
				]
			}))
		});
	blocks.push(...stepsOf(making, cases, parts, scale));
	const cautions = cautionsOf(shown, { layout, picture, results, locale });
	blocks.push(
		...cautions.map(({ about, text }) => paragraph(about ? `${about} ${text}` : text, 'caution'))
	);
	return blocks;
}

/** What the net present value of a single case is made of, drawn: beside each other several would be a table again. */
function stepsOf(
	making: Making,
	cases: readonly Case[],
	parts: readonly PartColumn[],
	scale: Scale
): Block[] {
	const [one] = cases;
	const money = parts.filter(({ isMoney }) => isMoney);
	const side = chosen(making).find(({ id }) => id === one?.id);
	if (!one || !side || cases.length > 1 || money.length === 0 || one.npv.kind !== 'value')
		return [];
	const { locale } = making.open;
	const steps = money.flatMap((part): Step[] => {
		const reading = part.of(side.source);
		if (reading.kind !== 'value') return [];
		const text = partText(part, side.source, scale, locale);
		return [{ label: part.label, value: reading.value * scale.factor, text }];
	});
	const total: Step = {
		label: texts.total,
		value: one.npv.value * scale.factor,
		text: rowFigure(one, 'npv', scale, locale).text
	};
	return [
		{
			kind: 'figure',
			caption: texts.steps(scale.unit),
			alt: [...steps, total].map(({ label, text }) => `${label} ${text}`).join(', '),
			drawing: waterfall(steps, total)
		}
	];
}

const INKS: readonly Ink[] = ['first', 'third', 'second', 'ink', 'bad'];
const FRAME = { width: 480, height: 210, left: 52, right: 110, top: 10, bottom: 26 };

/** Running totals by year, plain as a line and discounted as a broken one, each named at its end. */
export function cashDrawing(cases: readonly Case[], scale: Scale, locale: string): Drawing {
	const { low, high } = cashRange(cases);
	const last = yearsShown(cases);
	const [from, to] = [low * scale.factor, high * scale.factor];
	const pad = (to - from) * 0.04 || 1;
	const x = (year: number) => FRAME.left + (year / last) * (FRAME.width - FRAME.left - FRAME.right);
	const y = (cash: number) =>
		FRAME.top +
		((to + pad - cash) / (to - from + 2 * pad)) * (FRAME.height - FRAME.top - FRAME.bottom);
	const marks: Mark[] = [];
	const right = FRAME.width - FRAME.right;
	for (const tick of axisOf(from, to, 6).ticks)
		marks.push(
			{
				kind: 'line',
				points: [
					[FRAME.left, y(tick)],
					[right, y(tick)]
				],
				ink: tick === 0 ? 'ink' : 'rule',
				width: tick === 0 ? 0.8 : 0.5
			},
			{
				...{ kind: 'text', x: FRAME.left - 6, y: y(tick) + 3, at: 'end', ink: 'soft' },
				text: formatNumber(tick, 0, locale)
			}
		);
	for (const tick of axisOf(0, last, 10).ticks.filter(Number.isInteger))
		marks.push({
			...{ kind: 'text', x: x(tick), y: FRAME.height - 8, at: 'middle', ink: 'soft' },
			text:
				tick === last
					? texts.yearTick(formatNumber(tick, 0, locale))
					: formatNumber(tick, 0, locale)
		});
	const names: { y: number; text: string; ink: Ink }[] = [];
	cases.forEach((one, i) => {
		const ink = INKS[i % INKS.length]!;
		const points = (line: Case['simple']) =>
			line.points.map((point) => [x(point.x), y(point.y * scale.factor)] as const);
		marks.push(
			{ kind: 'line', points: points(one.discounted), ink, width: 1, isDashed: true },
			{ kind: 'line', points: points(one.simple), ink, width: 1.6 }
		);
		if (one.payback.kind === 'value')
			marks.push({ kind: 'dot', x: x(one.payback.value), y: y(0), ink });
		const end = one.simple.points.at(-1);
		if (end) names.push({ y: y(end.y * scale.factor) + 3, text: one.title, ink });
	});
	names.sort((a, b) => a.y - b.y);
	let before = -Infinity;
	for (const name of names) {
		const at = Math.max(name.y, before + 10);
		before = at;
		marks.push({ kind: 'text', x: right + 5, y: at, text: shortened(name.text), ink: name.ink });
	}
	return { width: FRAME.width, height: FRAME.height, marks };
}

const shortened = (text: string) => (text.length > 24 ? `${text.slice(0, 23).trimEnd()}…` : text);
