/**
 * Writing, removing and switching programmes, and keeping what was found for them. The plan of cells stays as it is;
 * what the decided inputs are may change.
 */
import {
	programmePlanSchema,
	programmeSchema,
	type Programme,
	type ProgrammePlan
} from '../programme-schema';
import type { Workbook } from '../schema';
import { edited, refused, type Edit, type ProgrammeCommand } from './command';
import { without } from './lists';
import { shapeRefusal } from './refusal';

type Of<K extends ProgrammeCommand['kind']> = Extract<ProgrammeCommand, { kind: K }>;

export function editProgramme(workbook: Workbook, command: ProgrammeCommand): Edit {
	switch (command.kind) {
		case 'put_programme':
			return putProgramme(workbook, command);
		case 'remove_programme': {
			const programmes = workbook.programmes ?? [];
			const place = programmes.findIndex(({ name }) => name === command.name);
			if (place < 0) return noProgramme(command.name);
			const plans = (workbook.plans ?? []).filter(({ programme }) => programme !== command.name);
			return withProgrammes(workbook, without(programmes, place), plans);
		}
		case 'set_plans':
			return setPlans(workbook, command);
	}
}

function putProgramme(workbook: Workbook, command: Of<'put_programme'>): Edit {
	const { programme } = command;
	const bad = shapeRefusal(programmeSchema, programme, 'The programme');
	if (bad) return bad;
	const programmes = workbook.programmes ?? [];
	const old = programmes.findIndex(({ name }) => name === (command.name ?? programme.name));
	if (command.name !== undefined && old < 0) return noProgramme(command.name);
	if (command.name === undefined && old >= 0)
		return refused(
			'duplicate-programme',
			`There is already a programme named ${programme.name}. Choose another name.`
		);
	const next =
		old < 0
			? [...programmes, programme]
			: programmes.map((one, i) => (i === old ? programme : one));
	// What was found for a programme that says something else now is the answer to another question; a name alone is none.
	const plans = (workbook.plans ?? []).map((plan) =>
		plan.programme === command.name ? { ...plan, programme: programme.name } : plan
	);
	return withProgrammes(workbook, next, plans);
}

/** Several plans at once, each in the place of the one for its programme and scenario. */
function setPlans(workbook: Workbook, { plans }: Of<'set_plans'>): Edit {
	const next = [...(workbook.plans ?? [])];
	for (const given of plans) {
		const place = next.findIndex(
			({ programme, scenario }) => programme === given.programme && scenario === given.scenario
		);
		if (!('values' in given)) {
			if (place >= 0) next.splice(place, 1);
			continue;
		}
		const bad = shapeRefusal(programmePlanSchema, given, `The plan of ${given.programme}`);
		if (bad) return bad;
		if (place < 0) next.push(given);
		else next[place] = given;
	}
	return withProgrammes(workbook, workbook.programmes ?? [], next);
}

/** Empty lists are left out, so that taking the first one back leaves the file as it was. */
function withProgrammes(
	workbook: Workbook,
	programmes: readonly Programme[],
	plans: readonly ProgrammePlan[]
): Edit {
	const { programmes: _programmes, plans: _plans, ...rest } = workbook;
	return edited({
		...rest,
		...(programmes.length > 0 && { programmes: [...programmes] }),
		...(plans.length > 0 && { plans: [...plans] })
	});
}

const noProgramme = (name: string) =>
	refused(
		'unknown-programme',
		`There is no programme "${name}". Choose one of the workbook's programmes.`
	);
