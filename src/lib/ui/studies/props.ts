/** What the components of one kind of study are given: those that draw its answer, and its settings. */
import type { ResultOf } from '$lib/studies/kinds';
import type { Shown } from './shown';
import type { Workbook } from '$lib/workbook/schema';
import type { StudyKind, StudyOf } from '$lib/workbook/study-schema';

export interface AnswerProps<K extends StudyKind> {
	workbook: Workbook;
	study: StudyOf<K>;
	result: ResultOf<K>;
	/** How its figures are written. */
	shown: Shown;
}

export interface SettingsProps<K extends StudyKind> {
	workbook: Workbook;
	study: StudyOf<K>;
	onchange: (study: StudyOf<K>) => void;
}
