/** What the pages of studies say. */
import { inLanguage } from '../language';

const en = {
	// MakeScenario
	scenarioMade: (made: string) =>
		`The scenario "${made}" was made and is shown now. Undo takes it back.`,

	// NewStudy
	tooManyStudies: (most: number) =>
		`A workbook holds at most ${most} studies. Delete one that is no longer needed.`,
	aNewStudy: 'A new study',
	addStudy: 'Add study',
	whatItAsks: 'What it asks',
	title: 'Title',

	// StudyList
	studies: 'Studies',
	runAll: 'Run all',
	newStudy: 'New study',
	whatStudiesAre:
		'A study is a question put to the whole workbook: why two scenarios differ, which inputs matter, where a result breaks even, how sure it is, which combination is best. It is kept here with its settings, and says when it is out of date.',
	study: 'Study',
	itsLastRunFound: 'Its last run found',
	actions: 'Actions',
	running: 'Running',
	runningAt: (percent: number) => `Running, ${percent} %`,
	cancel: 'Cancel',
	runOne: (title: string) => `Run ${title}`,
	run: 'Run',
	moveOneUp: (title: string) => `Move ${title} up`,
	up: 'Up',
	moveOneDown: (title: string) => `Move ${title} down`,
	down: 'Down',
	deleteOne: (title: string) => `Delete ${title}`,
	delete: 'Delete',

	// PlansField
	plans: 'What the workbook decides by itself',
	plannedAnew: (atEach: string) => `planned anew ${atEach}`,
	asItStands: 'the plan as it stands',
	plannedAnewMeans:
		'Whatever the study moves, the best plan for it is found, here and in what it is measured against: people react.',
	asItStandsMeans: 'Nobody reacts: what is planned today is carried out, whatever the study moves.',
	measuring: 'The first few are being measured, to tell how long all of them take.',
	takes: (time: string, count: string, points: string) =>
		`Takes ${time} for ${count} ${points} on this machine, by the first of them. It can be stopped at any time.`,

	// StudyPage
	runningLeft: (percent: number, left: string) => `Running, ${percent} %, ${left} left`,
	waitsToBeAsked: (atEach: string, time: string) =>
		`Not run: planned anew ${atEach}, it takes ${time} on this machine. Run it to see its answer; it can be stopped at any time.`,
	allStudies: 'All studies',
	checksFirstDraw: 'The second engine checks the first draw',
	progressOfTheStudy: 'Progress of the study',
	runAndKeep: 'Run and keep',
	standing: (words: string, found: string) =>
		found ? `${words}. The last run found: ${found}.` : `${words}.`,
	earlierState:
		'The picture is of an earlier state: settings or inputs changed since. Run the study again.',
	notChecked:
		'The second engine has not checked this answer, since its check was cancelled. Run the study again.',
	answeringTheStudy: 'Answering the study',
	notRun: 'Not run since the workbook was opened. Run it to see its answer.',
	anEstimate: "An estimate from this workbook's inputs, for people who decide; no advice.",
	noSuchStudy: 'No such study',
	studyGone: (name: string) =>
		`There is no study "${name}" in this workbook: it was deleted or renamed.`,

	// StudySettings
	whatTheStudyAsks: 'What the study asks',
	correctFirst: 'The study was not run: correct the marked value first.',
	inTheScenario: 'In the scenario',
	note: 'Note'
};

export const texts = inLanguage({ en });
