/** What stands around every picture. */
import { inLanguage } from '../language';

const en = {
	// Cautions
	cautions: 'Cautions',
	allRows: 'All rows:',

	// DataTable
	allFigures: (caption: string) => `${caption}, all figures`,

	// Figure
	savePicture: 'Save picture',
	saveSvg: 'Save SVG',
	exportTable: 'Export table',
	toThePlan: 'To the plan',
	allFiguresTable: 'All figures as a table',

	// open.ts
	inScenario: (title: string) => `In ${title}`,

	// NoValue
	beingComputed: 'Being computed',
	noValue: 'No value.',
	cannotBeDrawn: (what: string, because: string) => `${what} can be drawn: ${because}.`,
	fixWorkbook: 'Fix it in the workbook.',
	missesAValue: (what: string, isNotEntered: boolean) =>
		`${what} can be drawn: a value that it needs is ${isNotEntered ? 'not entered' : 'n/a'}.`,
	enterWorkbook: 'Enter it in the workbook.'
};

export const texts = inLanguage({ en });
