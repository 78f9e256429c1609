/** Shift patterns side by side, and scenarios likewise, as their page shows them. */
import { midSentence } from '$lib/ui/figure/words';
import {
	firstAgainst,
	patternsTitle,
	patternSides,
	scenarioSides,
	type PatternsPicture
} from '$lib/ui/pictures/patterns/patterns';
import { sideRows, type Side } from '$lib/ui/pictures/patterns/sides';
import { pictureOf } from '$lib/workbook/lookup';
import type { Making } from './making';
import { paragraph, type Block } from './paper';
import { texts } from './texts';

/** As many columns as have room beside the names. */
const MOST_COLUMNS = 6;

export function patternsPart(making: Making): Block[] {
	const { open, scenarios } = making;
	const picture = pictureOf(open.layout.workbook, 'patterns');
	if (!picture) return [paragraph(texts.noPatterns, 'caution')];
	const against = firstAgainst(open.layout, picture);
	const blocks: Block[] = scenarios.flatMap((scenario): Block[] => {
		const sides = patternSides(open, picture, scenario);
		const finding = patternsTitle(picture, sides, against, open.locale);
		const title = scenarioSides(open).find(({ id }) => id === scenario)?.title ?? scenario;
		return [
			paragraph(`${finding}.`, 'strong'),
			...(picture.note ? [paragraph(`${picture.note}.`, 'small')] : []),
			...sideTables(sides, picture.rows, against, open.locale, (part) =>
				texts.inScenario(part, title)
			)
		];
	});
	return [...blocks, ...betweenScenarios(making, picture)];
}

function betweenScenarios({ open, scenarios }: Making, picture: PatternsPicture): Block[] {
	const names = picture.by_scenario ?? [];
	const sides = scenarioSides(open).filter(({ id }) => id === open.base || scenarios.includes(id));
	if (names.length === 0 || sides.length < 2) return [];
	return sideTables(sides, names, open.base, open.locale, () => texts.wholePlant);
}

function sideTables(
	sides: readonly Side[],
	names: readonly string[],
	against: string,
	locale: string,
	caption: (part: string) => string
): Block[] {
	// The one compared with stands in every table.
	const from = sides.filter(({ id }) => id === against);
	const others = sides.filter(({ id }) => id !== against);
	const tables: Block[] = [];
	for (let at = 0; at === 0 || at < others.length; at += MOST_COLUMNS - from.length) {
		const shown = [...from, ...others.slice(at, at + MOST_COLUMNS - from.length)];
		const rows = sideRows(shown, names, against, locale);
		tables.push({
			kind: 'table',
			caption: caption(texts.patterns),
			columns: [
				{ title: texts.figure },
				...shown.map(({ title, aside }) => ({
					title: aside ? `${title}, ${midSentence(aside)}` : title,
					isNumber: true as const
				}))
			],
			rows: rows.map(({ label, unit, cells }) => ({
				cells: [unit ? `${label}, ${unit}` : label, ...cells.map(({ text }) => text)]
			}))
		});
	}
	return tables;
}
