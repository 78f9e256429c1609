/**
 * What the workbook's own studies found of the chosen scenarios: their answers where they were run for this paper, else the
 * few figures that the workbook keeps of the last run, with the word on whether they still hold.
 */
import { freshnessOf } from '$lib/studies/fingerprint';
import type { SensitivityResult } from '$lib/studies/sensitivity';
import { decimalsFor, formatNumber, formatUnit } from '$lib/ui/format';
import type { KindWords } from '$lib/ui/studies/kind-words';
import { kind as bridge } from '$lib/ui/studies/kinds/bridge/words';
import { kind as breakEven } from '$lib/ui/studies/kinds/break-even/words';
import { kind as risk, riskFacts } from '$lib/ui/studies/kinds/risk/words';
import { kind as sensitivity, swingRows } from '$lib/ui/studies/kinds/sensitivity/words';
import { nameOf } from '$lib/ui/studies/names';
import { shownOf, type Shown } from '$lib/ui/studies/shown';
import type { PaperSection } from '$lib/workbook/paper-schema';
import type { Workbook } from '$lib/workbook/schema';
import { resultsOf, scenariosOf } from '$lib/workbook/study-gaps';
import type { Study, StudyKind, StudyOf } from '$lib/workbook/study-schema';
import type { Making } from './making';
import { heading, paragraph, type Block, type Drawing, type Mark } from './paper';
import { texts } from './texts';

/** Those that ask about one of these results in a chosen scenario; every study of the scenarios where none is named. */
export function studiesOf(
	workbook: Workbook,
	{ quantities }: Pick<PaperSection, 'quantities'>,
	scenarios: readonly string[]
): Study[] {
	return (workbook.studies ?? []).filter(
		(study) =>
			scenariosOf(study).some((id) => scenarios.includes(id)) &&
			(!quantities || resultsOf(study).some(({ quantity }) => quantities.includes(quantity)))
	);
}

export function studiesPart(making: Making, section: PaperSection): Block[] {
	const { workbook } = making.open.layout;
	const studies = studiesOf(workbook, section, making.scenarios);
	if (studies.length === 0) return [paragraph(texts.noStudies)];
	const hasAnswer = (study: Study) => making.found.has(study.name) || study.ran !== undefined;
	const without = studies.filter((study) => !hasAnswer(study)).map(({ title }) => title);
	return [
		...studies
			.filter(hasAnswer)
			.flatMap((study) => [
				heading(study.title, 3),
				...answerOf(making, study),
				...(study.note ? [paragraph(study.note, 'small')] : [])
			]),
		...(without.length > 0 ? [paragraph(texts.neverRun(without))] : [])
	];
}

const WORDS: { readonly [K in StudyKind]?: KindWords<K> } = {
	sensitivity,
	risk,
	break_even: breakEven,
	bridge
};

function answerOf(making: Making, study: Study): Block[] {
	const { layout, locale } = making.open;
	const { workbook } = layout;
	const result = making.found.get(study.name);
	const words = WORDS[study.kind] as KindWords<StudyKind> | undefined;
	if (!result || !words) return keptFigures(workbook, study, locale);
	const shown = shownOf(making.open, workbook, study, words.figures(result, study));
	const { title, line } = words.said(workbook, study, result, shown);
	const blocks: Block[] = [paragraph(`${title}.`, 'strong'), paragraph(`${line}.`, 'small')];
	if (study.kind === 'sensitivity')
		blocks.push(...swingBlocks(workbook, study, result as SensitivityResult, shown));
	if (study.kind === 'risk')
		blocks.push({
			kind: 'table',
			caption: nameOf(workbook, study),
			columns: [{ title: texts.figure }, { title: texts.value, isNumber: true }],
			rows: riskFacts(study, result as Parameters<typeof riskFacts>[1], shown).map(
				({ label, value }) => ({ cells: [label, value] })
			)
		});
	return blocks;
}

/** What the workbook keeps of the last run. */
function keptFigures(workbook: Workbook, study: Study, locale: string): Block[] {
	if (!study.ran) return [];
	const isFresh = freshnessOf(workbook, study) === 'up-to-date';
	return [
		{
			kind: 'table',
			caption: texts.lastRun(nameOf(workbook, study)),
			columns: [{ title: texts.figure }, { title: texts.value, isNumber: true }],
			rows: study.ran.headline.map(({ label, value, unit }) => ({
				cells: [
					label,
					value === null
						? texts.noValue
						: [formatNumber(value, decimalsFor(value, 4), locale), formatUnit(unit)]
								.filter(Boolean)
								.join(' ')
				]
			}))
		},
		...(isFresh ? [] : [paragraph(texts.outOfDate, 'caution')])
	];
}

function swingBlocks(
	workbook: Workbook,
	study: StudyOf<'sensitivity'>,
	result: SensitivityResult,
	shown: Shown
): Block[] {
	const rows = swingRows(workbook, study, result, shown);
	if (rows.length === 0) return [];
	const summary = sensitivity.said(workbook, study, result, shown).summary;
	return [
		{
			kind: 'figure',
			caption: texts.swings(nameOf(workbook, study), shown.unit),
			alt: summary,
			drawing: swingDrawing(
				rows.map(({ name, bars }) => ({ name, bars })),
				result.base.value * shown.factor,
				shown.number(result.base.value)
			)
		},
		{
			kind: 'table',
			caption: texts.swingTable,
			columns: [
				{ title: texts.input },
				{ title: texts.range },
				{ title: texts.from, isNumber: true },
				{ title: texts.to, isNumber: true },
				{ title: texts.reach, isNumber: true }
			],
			rows: rows.map(({ name, note, bars, end }) => {
				const figures = [...bars].sort((a, b) => a.to - b.to).map(({ figure }) => figure);
				return {
					cells: [
						name,
						note ?? '',
						figures[0] ?? '',
						figures.length > 1 ? figures.at(-1)! : '',
						end
					]
				};
			})
		}
	];
}

interface Swing {
	readonly name: string;
	readonly bars: readonly {
		readonly from: number;
		readonly to: number;
		readonly hatched: boolean;
	}[];
}
const ROW = 14;
const MOST = 14;

/** A bar from what it is to what it becomes, a row an input. */
export function swingDrawing(rows: readonly Swing[], base: number, baseText: string): Drawing {
	const drawn = rows.slice(0, MOST);
	const width = 480;
	const [left, right] = [170, width - 14];
	const ends = drawn.flatMap(({ bars }) => bars.flatMap(({ from, to }) => [from, to]));
	const [low, high] = [Math.min(base, ...ends), Math.max(base, ...ends)];
	const x = (value: number) => left + ((value - low) / (high - low || 1)) * (right - left);
	const height = drawn.length * ROW + 18;
	const marks: Mark[] = drawn.flatMap(({ name, bars }, row): Mark[] => [
		{
			...{ kind: 'text', x: left - 8, y: row * ROW + 10, at: 'end' },
			text: name.length > 34 ? `${name.slice(0, 33).trimEnd()}…` : name
		},
		...bars.map(({ from, to, hatched }): Mark => ({
			...{ kind: 'bar', x: Math.min(x(from), x(to)), y: row * ROW + 3 },
			...{ width: Math.max(0.5, Math.abs(x(to) - x(from))), height: ROW - 5 },
			ink: hatched ? 'bad' : 'good'
		}))
	]);
	marks.push(
		{
			kind: 'line',
			ink: 'ink',
			width: 0.8,
			points: [
				[x(base), 0],
				[x(base), drawn.length * ROW + 4]
			]
		},
		{ kind: 'text', x: x(base), y: height - 3, text: baseText, at: 'middle', ink: 'soft' }
	);
	return { width, height, marks };
}
