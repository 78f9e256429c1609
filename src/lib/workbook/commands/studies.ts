/**
 * Keeping, renaming, moving and removing studies, and noting what their last run found. None of this
 * changes what the workbook computes.
 */
import { canonicalStudy } from '../canonical';
import type { Workbook } from '../schema';
import { studySchema, type Study } from '../study-schema';
import { ranSchema } from '../study-shapes';
import { edited, refused, type Edit, type StudyCommand } from './command';
import { inserted, without } from './lists';
import { shapeRefusal } from './refusal';

type Of<K extends StudyCommand['kind']> = Extract<StudyCommand, { kind: K }>;

export function editStudy(workbook: Workbook, command: StudyCommand): Edit {
	if (command.kind === 'put_study') return putStudy(workbook, command);
	const studies = workbook.studies ?? [];
	const place = studies.findIndex(({ name }) => name === command.name);
	const study = studies[place];
	if (!study) return noStudy(command.name);
	if (command.kind === 'remove_study') return withStudies(workbook, without(studies, place));
	const bad = command.ran && shapeRefusal(ranSchema, command.ran, `The last run of ${study.title}`);
	if (bad) return bad;
	const { ran: _ran, ...rest } = study;
	const next = canonicalStudy(command.ran ? { ...rest, ran: command.ran } : rest);
	return withStudies(
		workbook,
		studies.map((one) => (one === study ? next : one))
	);
}

function putStudy(workbook: Workbook, command: Of<'put_study'>): Edit {
	const studies = workbook.studies ?? [];
	const bad = shapeRefusal(studySchema, command.study, 'The study');
	if (bad) return bad;
	const study = canonicalStudy(command.study);
	const old = command.name === undefined ? -1 : studies.findIndex(named(command.name));
	if (command.name !== undefined && old < 0) return noStudy(command.name);
	const twin = studies.findIndex(named(study.name));
	if (twin >= 0 && twin !== old)
		return refused(
			'duplicate-study',
			`There is already a study named ${study.name}. Choose another name.`
		);
	const others = old < 0 ? studies : without(studies, old);
	return withStudies(
		workbook,
		inserted(others, command.index ?? (old < 0 ? studies.length : old), study)
	);
}

/** The list goes with its last study, so that taking the first one back leaves the file as it was. */
function withStudies(workbook: Workbook, studies: readonly Study[]): Edit {
	const { studies: _studies, ...rest } = workbook;
	return edited(studies.length > 0 ? { ...rest, studies: [...studies] } : rest);
}

const named =
	(name: string) =>
	(study: Study): boolean =>
		study.name === name;

const noStudy = (name: string) =>
	refused('unknown-study', `There is no study "${name}". Choose one of the workbook's studies.`);
