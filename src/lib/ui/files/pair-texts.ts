/** What the import of pairs says. */
import { inLanguage } from '../language';

const pairs = (count: number) => `${count} ${count === 1 ? 'pair' : 'pairs'}`;
const values = (count: number) => `${count} ${count === 1 ? 'value' : 'values'}`;

const en = {
	tableHolds: 'The table holds',
	valuesOfQuantities: 'values of quantities',
	pairsGroup: 'Pairs',
	which: (label: string) => `Which ${label}`,
	choose: 'choose',
	theHeadings: 'the headings of the other columns',
	marks: 'Marks',
	everyRow: 'every row is a pair',
	firstSayColumns: 'Say first which column names which, or that the headings do.',
	summary: (fresh: number, going: number, same: number, refused: number) =>
		`${pairs(fresh)} new, ${going} taken out, ${same} the same${refused > 0 ? `, ${refused} refused` : ''}.`,
	untouched: (count: number, label: string) =>
		`${pairs(count)} of the workbook ${count === 1 ? 'is' : 'are'} of a ${label} that the file has no row for, and ${count === 1 ? 'stays' : 'stay'}.`,
	pairsOf: (label: string) => `pairs: ${label}`,
	noSuchRelation: (title: string, relation: string) =>
		`The workbook has no relation ${relation} any more, of which ${title} holds the pairs. Choose what the table holds, and keep that instead.`,
	newPairs: 'New pairs',
	pairsThatGo: 'Pairs to take out',
	whatGoes:
		'A pair goes where it is ticked, with all that is entered for it. What the file only does not name stays unless you tick it.',
	tickAll: (count: number) => `Tick all ${count}`,
	untickAll: 'Tick none',
	takeOut: (pair: readonly string[]) => `Take out ${pair.join(' and ')}`,
	goes: 'Goes',
	why: 'Why',
	line: 'File line',
	saysNo: (line: number) => `line ${line} says no`,
	notNamed: 'not in the file',
	enteredForIt: 'Entered for it',
	enteredValues: values,
	more: (count: number) => `and ${count} more`,
	enter: (fresh: number, going: number) =>
		going === 0
			? `Enter ${fresh === 1 ? '1 new pair' : `${fresh} new pairs`}`
			: fresh === 0
				? `Take out ${pairs(going)}`
				: `Enter ${fresh} new, take out ${going}`,
	entered: (fresh: number, going: number, name: string) =>
		`${pairs(fresh)} from ${name} entered, ${going} taken out; undo takes it back together.`,
	cancel: 'Cancel'
};

export const texts = inLanguage({ en });
