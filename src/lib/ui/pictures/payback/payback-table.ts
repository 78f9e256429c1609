/**
 * The rows below the payback picture, figure by figure, and the table to take along.
 */
import type { Layout } from '$lib/engine/layout';
import type { PlainTable } from '$lib/exchange/csv/write';
import { decimalsFor, formatDifference, formatNumber, formatUnit } from '../../format';
import type { Interaction } from './interaction';
import { outcomeOf, type Case, type Cases, type PaybackPicture } from './payback';
import { partColumns } from './payback-parts';
import { plain, type Reading, type Source } from '../../figure/read';
import type { Scale } from '../../figure/scale';
import { years } from '../../figure/words';

interface FigureColumn {
	/** In pixels of a wide table; the chart above leaves as much room. */
	readonly width: number;
	readonly label: string;
	readonly isMoney?: true;
	readonly isSigned?: true;
}

/** The figures of a row, as the table's head has them. */
export const FIGURE_COLUMNS = {
	payback: { width: 70, label: 'Payback' },
	discountedPayback: { width: 88, label: 'discounted' },
	outlay: { width: 92, label: 'Investment', isMoney: true },
	npv: { width: 70, label: 'NPV', isMoney: true, isSigned: true },
	irr: { width: 70, label: 'IRR' },
	annualValue: { width: 104, label: 'Annual value', isMoney: true, isSigned: true }
} as const satisfies Readonly<Record<string, FigureColumn>>;
export type FigureName = keyof typeof FIGURE_COLUMNS;
export const FIGURES = Object.keys(FIGURE_COLUMNS) as FigureName[];

/** What all columns of figures take. */
export const FIGURES_WIDTH = FIGURES.reduce((sum, name) => sum + FIGURE_COLUMNS[name].width, 0);
/** What the scenario's name takes. */
export const NAME_WIDTH = 208;

export interface RowFigure {
	readonly text: string;
	/** 'never' and 'none' are answers; an error is not. */
	readonly kind: 'value' | 'answer' | 'error' | 'nothing';
	readonly because: string;
	/** Whether there ought to be a figure and is none. */
	readonly isMissing: boolean;
}

/** In place of the years where there is no payback. */
const NOT_BACK = { 'nothing-to-pay': 'at once', doubtful: 'none' } as const;
const notBack = (one: Case) => {
	const outcome = outcomeOf(one);
	return outcome === 'nothing-to-pay' || outcome === 'doubtful' ? NOT_BACK[outcome] : 'never';
};

/** One figure of a row in words: "2.7", "never", "none" or "No value". */
export function rowFigure(one: Case, name: FigureName, scale: Scale, locale: string): RowFigure {
	const reading = one[name];
	const without = { because: '', isMissing: false };
	if (reading.kind === 'error')
		return { ...without, text: 'No value', kind: 'error', because: reading.because };
	if (reading.kind === 'pending') return { ...without, text: '…', kind: 'nothing' };
	if (reading.kind === 'no-answer' && name !== 'irr')
		return { ...without, text: notBack(one), kind: 'answer' };
	if (reading.kind !== 'value')
		return {
			...{ ...without, text: 'none', isMissing: true },
			kind: reading.kind === 'no-answer' ? 'answer' : 'nothing'
		};
	const { isMoney, isSigned }: FigureColumn = FIGURE_COLUMNS[name];
	const value = reading.value * (isMoney ? scale.factor : 1);
	const decimals = isMoney ? (scale.factor === 1 ? decimalsFor(value, 4) : 0) : 1;
	const text = (isSigned ? formatDifference : formatNumber)(value, decimals, locale);
	return { ...without, text, kind: 'value' };
}

/** "on New line, 12 years". */
export function subLine(one: Case, locale: string): string {
	const life =
		one.life.kind === 'value'
			? years(formatNumber(one.life.value, 0, locale), one.life.quantity?.quantity.unit ?? '')
			: '';
	return [one.on, life].filter(Boolean).join(', ');
}

/** Heads of the figures, with their units. */
export function rowHeads(
	one: Case | undefined,
	scale: Scale
): Record<FigureName, { label: string; unit: string }> {
	const unitOf = (name: FigureName) => {
		const { isMoney }: FigureColumn = FIGURE_COLUMNS[name];
		if (isMoney) return scale.unit;
		const unit = formatUnit(one?.[name].quantity?.quantity.unit);
		if (name === 'irr') return `${unit} a year`;
		return unit === 'year' ? 'years' : unit;
	};
	const heads = FIGURES.map((name) => {
		const { label } = FIGURE_COLUMNS[name];
		return [name, { label, unit: unitOf(name) }] as const;
	});
	return Object.fromEntries(heads) as Record<FigureName, { label: string; unit: string }>;
}

/** What a case has beside its own figures, as far as the picture names it. */
interface Beside {
	readonly interactions: readonly Interaction[];
	readonly sourceOf?: (scenario: string) => Source;
}

/** Every figure in its own unit, and the running totals year by year. */
export function paybackTable(
	{ cases }: Cases,
	layout: Layout,
	picture: PaybackPicture,
	beside: Beside = { interactions: [] }
): PlainTable {
	const all = layout.sets.get(picture.year)?.members ?? [];
	const inUnit = (label: string, name: string) => {
		const unit = formatUnit(layout.byName.get(name)?.quantity.unit);
		return unit ? `${label}, ${unit}` : label;
	};
	const totals = (label: string, name: string) =>
		all.map((year) => inUnit(`${label}, ${year.label ?? year.id}`, name));
	const cash = (line: Case['simple']) =>
		all.map((year, ordinal) => {
			const x = year.number ?? ordinal;
			return line.points.find((point) => point.x === x)?.y ?? null;
		});
	const own: Scale = { factor: 1, unit: formatUnit(layout.byName.get(picture.npv)?.quantity.unit) };
	const { interactions, sourceOf } = beside;
	const parts = sourceOf ? partColumns(layout, picture, own) : [];
	const beyond =
		interactions.length > 0 ? [inUnit('Beyond each option alone', picture.annual_value)] : [];
	const beyondOf = (one: Case) =>
		interactions.find(({ together }) => together.id === one.id)?.beyond ?? null;
	const back = (one: Case, reading: Reading) =>
		reading.kind === 'no-answer' ? notBack(one) : plain(reading);
	return {
		caption: picture.title,
		columns: [
			'Scenario',
			'Built on',
			inUnit('Life', picture.life),
			inUnit('Payback', picture.payback),
			inUnit('Payback, discounted', picture.discounted_payback),
			inUnit('Investment', picture.outlay),
			inUnit('Net present value', picture.npv),
			`${inUnit('Rate of return', picture.irr)} a year`,
			inUnit('Annual value', picture.annual_value),
			...parts.map(({ label, unit, isMoney }) => {
				const words = isMoney ? `Present value, ${label}` : label;
				return unit ? `${words}, ${unit}` : words;
			}),
			...beyond,
			...totals('Cumulative', picture.cumulative),
			...totals('Discounted', picture.cumulative_discounted)
		],
		rows: cases.map((case_) => [
			case_.title,
			case_.on,
			plain(case_.life),
			back(case_, case_.payback),
			back(case_, case_.discountedPayback),
			...[case_.outlay, case_.npv, case_.irr, case_.annualValue].map((reading) => plain(reading)),
			...parts.map((part) => (sourceOf ? plain(part.of(sourceOf(case_.id))) : null)),
			...beyond.map(() => beyondOf(case_)),
			...cash(case_.simple),
			...cash(case_.discounted)
		])
	};
}
