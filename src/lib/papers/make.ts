/**
 * A paper of a workbook: what decides first, then what it stands on, part by part as the workbook names them. No rule of the
 * trade is in it: parts say which figures they show, and these come with their labels, units, sources and cautions.
 */
import { language } from '$lib/ui/language';
import { saidBeside } from '$lib/ui/said-beside';
import { texts as besideTexts } from '$lib/ui/said-beside-texts';
import type { PaperSection } from '$lib/workbook/paper-schema';
import { baseOf, scenarioTitle } from '$lib/workbook/lookup';
import { referenceOf } from '$lib/workbook/scenario';
import { assumptionsPart, figuresPart, tablePart } from './figures';
import { casePart, casesIn, type Cases } from './case';
import { changesPart } from './changes';
import { headlineOf, verdictText } from './headline';
import { studiesPart } from './kept-studies';
import { chosen, sidesOf, type Making } from './making';
import { isOfCases } from './named';
import { heading, list, paragraph, type Block, type Paper } from './paper';
import { patternsPart } from './patterns';
import { texts } from './texts';

export type Made =
	{ readonly ok: true; readonly paper: Paper } | { readonly ok: false; readonly message: string };

export function makePaper(making: Making): Made {
	const { open, picture, scenarios, said } = making;
	const { workbook } = open.layout;
	const isCases = isOfCases(picture);
	const cases = isCases ? casesIn(making) : null;
	if (scenarios.length === 0) return { ok: false, message: texts.choose };
	const missing = scenarios.find((id) => !workbook.scenarios.some((one) => one.id === id));
	if (missing !== undefined) return { ok: false, message: texts.noScenario(missing) };
	if (isCases && cases && cases.cases.length === 0)
		return {
			ok: false,
			message: texts.noneHasInvestment(chosen(making).map(({ title }) => title))
		};
	const blocks: Block[] = [
		...(cases ? decisive(cases, open.locale) : []),
		...(workbook.invented ? [paragraph(texts.invented, 'caution')] : []),
		...cautions(making),
		paragraph(madeBy(making), 'small'),
		...question(making),
		...(isCases ? options(making) : []),
		...picture.sections.flatMap((section) => part(making, cases, section)),
		...points(texts.leftOut, said.leftOut),
		...points(texts.openPoints, said.openPoints)
	];
	const title = isCases
		? texts.titleOf(
				picture.title,
				chosen(making).map((side) => side.title)
			)
		: picture.title;
	return {
		ok: true,
		paper: {
			...{ title, language, blocks, foot: foot(making) },
			subject: workbook.title,
			...(said.author ? { author: said.author } : {}),
			landscape: blocks.some((block) => block.kind === 'table' && block.columns.length > 8)
		}
	};
}

function decisive({ cases, scale }: Cases, locale: string): Block[] {
	const first = paragraph(headlineOf(cases, scale, locale), 'strong');
	if (cases.length < 2) return [first];
	return [first, list(cases.map((one) => verdictText(one, scale, locale)))];
}

/** What must be said beside any of its figures, once. */
function cautions(making: Making): Block[] {
	const { open, picture } = making;
	const names = new Set(picture.sections.flatMap(({ quantities = [] }) => quantities));
	const behind = making.behind ? [paragraph(making.behind, 'caution')] : [];
	const all = sidesOf(making).flatMap(({ id, title, source }) =>
		saidBeside(open.layout, source.results, isOfCases(picture) ? undefined : names).map(
			({ text, message }) => ({ id, text: besideTexts.inScenario(title, text, message) })
		)
	);
	const said = [...new Set(all.map(({ text }) => text))].map((text) => paragraph(text, 'caution'));
	return [...behind, ...said];
}

function madeBy({ open, said, date, revision }: Making): string {
	const { workbook } = open.layout;
	const day = new Intl.DateTimeFormat(open.locale, { dateStyle: 'long', timeZone: 'UTC' }).format(
		new Date(`${date}T00:00:00Z`)
	);
	return texts.madeBy(workbook.title, day, said.author ?? '', revision);
}

const foot = ({ open, picture, revision }: Making): string =>
	texts.foot(open.layout.workbook.title, picture.title, revision);

function question({ said, picture }: Making): Block[] {
	const text = said.question?.trim() || picture.question;
	return text ? [heading(texts.question), paragraph(text)] : [];
}

/** What there is to choose from, and what each is held against. */
function options(making: Making): Block[] {
	const { workbook } = making.open.layout;
	const base = baseOf(workbook).id;
	return [
		heading(texts.options),
		{
			kind: 'table',
			caption: texts.optionsTable,
			columns: [
				{ title: texts.scenario },
				{ title: texts.what },
				{ title: texts.builtOn },
				{ title: texts.comparedWith }
			],
			rows: sidesOf(making).map(({ id, title }) => {
				const scenario = workbook.scenarios.find((one) => one.id === id);
				const isChosen = making.scenarios.includes(id);
				return {
					cells: [
						title,
						scenario?.note ?? '',
						scenario?.parent ? scenarioTitle(workbook, scenario.parent) : '',
						id === base || !scenario || !isChosen ? texts.reference : referenceTitle(making, id)
					]
				};
			})
		}
	];
}

function referenceTitle({ open }: Making, id: string): string {
	const { workbook } = open.layout;
	return scenarioTitle(workbook, referenceOf(workbook, id).id);
}

function part(making: Making, cases: Cases | null, section: PaperSection): Block[] {
	const blocks = within(making, cases, section);
	const note = section.note ? [paragraph(section.note, 'small')] : [];
	return [heading(section.title), ...note, ...blocks];
}

function within(making: Making, cases: Cases | null, section: PaperSection): Block[] {
	switch (section.kind) {
		case 'case':
			return cases ? casePart(making, cases) : [paragraph(texts.noPayback, 'caution')];
		case 'changes':
			return changesPart(making);
		case 'figures':
			return figuresPart(making, section);
		case 'table':
			return tablePart(making, section);
		case 'assumptions':
			return assumptionsPart(making, section);
		case 'studies':
			return studiesPart(making, section);
		case 'patterns':
			return patternsPart(making);
		case 'text':
			return [list(section.text ?? [])];
	}
}

function points(title: string, said: readonly string[] | undefined): Block[] {
	const items = (said ?? []).map((text) => text.trim()).filter(Boolean);
	return items.length > 0 ? [heading(title), list(items)] : [];
}
