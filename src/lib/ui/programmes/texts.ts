/** The words of the page of plans. */
import { formatNumber, formatUnit } from '../format';

export const texts = {
	title: 'Plan',
	none: 'This workbook plans nothing by itself',
	noneHint:
		'A programme says which inputs are chosen, what must hold and what shall be largest. It stands in the file, under "programmes".',
	scenario: 'Scenario',
	planning: 'Being planned …',
	off: 'Switched off: nothing is decided by it.',
	switchOn: 'Switch on',
	switchOff: 'Switch off',
	keep: 'Keep this plan',
	follow: 'Plan anew with every edit',
	decided: 'What is decided',
	pinHint:
		'Type a figure to hold a cell whatever comes of it; clear it to let the programme decide again. Held cells are underlined and end in a point.',
	pinned: 'held',
	showAll: 'Rows in which nothing is planned, too',
	worth: 'What one more is worth',
	worthHint: 'Nothing where there is room to spare.',
	must: 'What must hold',
	nothingPlanned: 'Nothing is planned here.',
	how: 'How it is stated',
	chosen: 'Chosen',
	largest: 'Shall be largest',
	smallest: 'Shall be smallest',
	apart: 'Solved apart for each'
} as const;

export const provenBest = (label: string, value: number, unit: string, locale: string): string =>
	`Proven best: ${label} ${formatNumber(value, 0, locale)}${formatUnit(unit) ? ` ${formatUnit(unit)}` : ''}.`;

export const keptSince = (date: string): string =>
	`Kept as it stood on ${date}; it no longer follows edits.`;

export const shortOfBest = (short: number, unit: string, locale: string): string =>
	`That is ${formatNumber(short, 0, locale)} ${formatUnit(unit)} under the best plan.`;

export const holdsOf = (holds: number, of: number): string =>
	holds === of ? `holds, ${of} of ${of}` : `fails in ${of - holds} of ${of}`;

export const leftOut = (rows: number): string =>
	rows === 1 ? 'One row without a plan is left out.' : `${rows} rows without a plan are left out.`;

export const tableOf = (label: string, unit: string): string =>
	formatUnit(unit) ? `${label}, ${formatUnit(unit)}` : label;
