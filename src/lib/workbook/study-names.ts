/**
 * Every name that a study uses, in one walk: renaming a quantity, a member or a scenario carries over
 * into studies by it, and `study-gaps.ts` finds by it what is no longer there.
 */
import { mapped } from './commands/lists';
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

type Cells = {
	readonly quantity: string;
	readonly members?: readonly (string | null)[] | undefined;
};

/** The study under other names; itself where none changes. */
export function mapStudyNames<S extends Study>(study: S, names: StudyNames): S {
	const next = mappedStudy(study, names) as S;
	return JSON.stringify(next) === JSON.stringify(study) ? study : next;
}

function mappedStudy(study: Study, names: StudyNames): Study {
	const scenario = names.scenario ?? ((id: string) => id);
	const cells = <C extends Cells>(of: C): C => ({
		...of,
		quantity: names.quantity?.(of.quantity) ?? of.quantity,
		...(of.members && names.members ? { members: names.members(of.quantity, of.members) } : {})
	});
	switch (study.kind) {
		case 'bridge': {
			const { groups } = study;
			return {
				...cells(study),
				from: scenario(study.from),
				to: scenario(study.to),
				...(groups && {
					groups: groups.map((group) => ({ ...group, changes: group.changes.map(cells) }))
				})
			};
		}
		case 'sensitivity': {
			const { inputs, cases } = study;
			return {
				...cells(study),
				scenario: scenario(study.scenario),
				...(inputs && { inputs: inputs.map(cells) }),
				...(cases && { cases: cases.map((case_) => ({ ...case_, moves: case_.moves.map(cells) })) })
			};
		}
		case 'map':
			return {
				...cells(study),
				scenario: scenario(study.scenario),
				across: cells(study.across),
				down: cells(study.down)
			};
		case 'break_even':
			return { ...cells(study), scenario: scenario(study.scenario), input: cells(study.input) };
		case 'risk':
			return {
				...cells(study),
				scenario: scenario(study.scenario),
				...(study.compare !== undefined && { compare: scenario(study.compare) }),
				inputs: study.inputs.map(cells)
			};
		case 'optimise': {
			const change = (one: Change): Change => ({
				...one,
				quantity: names.quantity?.(one.quantity) ?? one.quantity,
				value: names.values ? names.values(one.quantity, one.value) : one.value
			});
			return {
				...cells(study),
				scenario: scenario(study.scenario),
				options: study.options.map((option) => ({
					...option,
					alternatives: option.alternatives.map((alternative) => ({
						...alternative,
						changes: alternative.changes.map(change)
					}))
				})),
				...(study.limits && { limits: study.limits.map(cells) })
			};
		}
	}
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
