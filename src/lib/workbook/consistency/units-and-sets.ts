/** Units and set names, wherever a workbook writes one. */
import { UnitSystem } from '$lib/units/system';
import type { Findings } from './findings';
import { meant } from './names';

/** Reports a unit that cannot be read. */
export function checkUnit(
	findings: Findings,
	units: UnitSystem,
	text: string | undefined,
	path: readonly PropertyKey[]
): void {
	// Each that cannot be read is compared with all that can.
	if (text === undefined || findings.isFull) return;
	const result = units.parse(text);
	if (!result.ok)
		findings.add(
			path,
			'bad-unit',
			asClause(result.problem.message),
			'Correct it, or add the unit to the workbook.'
		);
}

/** The workbook's units, those with a fault left out and reported. */
export function checkUnitDefinitions(findings: Findings): UnitSystem {
	const { system, problems } = UnitSystem.create(findings.workbook.units ?? []);
	for (const problem of problems)
		findings.add(['units'], 'bad-unit', asClause(problem.message), 'Correct its definition.');
	return system;
}

/** Reports a set that does not exist. */
export function unknownSet(findings: Findings, path: readonly PropertyKey[], name: string): void {
	const names = findings.workbook.sets.map((set) => set.name);
	findings.add(
		path,
		'unknown-set',
		`there is no set named "${name}"`,
		meant(name, names, 'Add the set, or correct the name.')
	);
}

/** A sentence as part of another: without its full stop. */
export const asClause = (sentence: string): string => sentence.replace(/\.\s*$/, '');
