/**
 * Every name that a study uses, in one walk: renaming a quantity, a member or a scenario carries over
 * into studies by it, and `study-gaps.ts` finds by it what is no longer there.
 */
import { mapped } from './commands/lists';
import { partsOf, withPartsAt, type StudyCells } from './study-parts';
import type { Study } from './study-schema';
import type { Change, Workbook } from './schema';
import type { Values } from './value-schema';

/** What to do with each name; what is left out stays. */
export interface StudyNames {
	readonly quantity?: (name: string) => string;
	readonly scenario?: (id: string) => string;
	/** The members of one cell or, with null, of all along an axis. */
	readonly members?: (
		quantity: string,
		members: readonly (string | null)[]
	) => readonly (string | null)[];
	/** The values that an alternative gives to a quantity. */
	readonly values?: (quantity: string, values: Values) => Values;
}

/** The study under other names; itself where none changes. */
export function mapStudyNames<S extends Study>(study: S, names: StudyNames): S {
	const next = mappedStudy(study, names) as S;
	return JSON.stringify(next) === JSON.stringify(study) ? study : next;
}

function mappedStudy(study: Study, names: StudyNames): Study {
	const { scenarios, moved, named, changes, results } = partsOf(study);
	const cells = (of: StudyCells) => ({
		...of,
		quantity: names.quantity?.(of.quantity) ?? of.quantity,
		...(of.members && names.members ? { members: names.members(of.quantity, of.members) } : {})
	});
	const change = (one: Change): Change => ({
		...one,
		quantity: names.quantity?.(one.quantity) ?? one.quantity,
		value: names.values ? names.values(one.quantity, one.value) : one.value
	});
	let next = cells(study) as Study;
	if (names.scenario) next = withPartsAt(next, scenarios, names.scenario);
	for (const paths of [moved, named]) next = withPartsAt(next, paths, cells);
	next = withPartsAt(next, changes, change);
	return withPartsAt(next, results, cells);
}

/** The quantities that a study names, in the order of its settings. */
export function studyQuantities(study: Study): string[] {
	const found = new Set<string>();
	const quantity = (name: string) => {
		found.add(name);
		return name;
	};
	mapStudyNames(study, { quantity });
	return [...found];
}

/** The workbook with each of its studies changed; itself where none changes. */
export function mapStudies(workbook: Workbook, change: (study: Study) => Study): Workbook {
	const { studies } = workbook;
	if (!studies) return workbook;
	const next = mapped(studies, change);
	return next === studies ? workbook : { ...workbook, studies: next };
}
