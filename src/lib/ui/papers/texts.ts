/** What the page of papers says around a paper. */
import { inLanguage } from '../language';

const en = {
	papers: 'Papers',
	choice: 'Which paper',
	paper: 'Paper',
	scenarios: 'Scenarios',
	author: 'Made by',
	question: 'The question to be decided',
	openPoints: 'Open points, one a line',
	leftOut: 'What it leaves out, one a line',
	format: 'Format',
	formats: { a4: 'A4', letter: 'Letter' },
	print: 'Print',
	waits: 'The last edit is still being computed and planned: the paper is ready when that is.',
	studies: 'Studies in it',
	run: 'Run',
	runAgain: 'Run again',
	running: 'running …',
	found: 'with its answer',
	kept: 'with the figures of its last run',
	outOfDate: 'its answer is out of date',
	never: 'not run',
	none: 'No study of these scenarios and results is kept.',
	newStudy: 'Make one',
	computing: 'The scenarios are being computed.',
	seen: 'The paper as it will be',
	toPapers: 'Make this paper'
};

export const texts = inLanguage({ en });
