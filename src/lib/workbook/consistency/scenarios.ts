/**
 * Scenarios: the base first and without changes, parents that lead to it, changes to inputs alone.
 */
import { cellGuide, hasInputs, misplaced } from '../cells';
import { findFrozen } from '../frozen';
import { columnsOf, findQuantity, findScenario, quantityPlaces } from '../lookup';
import { LIMITS, type Change, type Scenario } from '../schema';
import type { Findings } from './findings';
import { meant } from './names';

export function checkScenarios(findings: Findings): void {
	const { scenarios } = findings.workbook;
	if (scenarios.length > LIMITS.scenarios) {
		findings.add(
			['scenarios'],
			'too-many',
			`a workbook holds at most ${LIMITS.scenarios} scenarios`,
			'Remove those that are no longer needed.'
		);
		return;
	}
	scenarios.forEach((scenario, i) => {
		if (i === 0) checkBase(findings, scenario);
		else {
			checkLink(findings, scenario, i, 'parent', scenario.parent);
			checkLink(findings, scenario, i, 'against', scenario.against ?? scenarios[0]?.id ?? null);
		}
		const seen = new Set<string>();
		scenario.changes.forEach((change, k) => {
			const path = ['scenarios', i, 'changes', k];
			if (seen.has(change.quantity))
				findings.add(
					path,
					'duplicate-change',
					`${change.quantity} is changed twice`,
					'Join the two changes into one.'
				);
			seen.add(change.quantity);
			if (i > 0) checkChange(findings, change, path);
		});
	});
}

function checkBase(findings: Findings, base: Scenario): void {
	const path = ['scenarios', 0];
	if (base.parent !== null)
		findings.add(
			[...path, 'parent'],
			'base-has-parent',
			'the first scenario is the base, which has no parent',
			'Put the base first, with "parent": null.'
		);
	if (base.changes.length > 0)
		findings.add(
			[...path, 'changes'],
			'base-has-changes',
			"the base changes nothing: its values stand in the quantities' own values",
			'Move the values there.'
		);
	if (base.against !== undefined && base.against !== base.id)
		findings.add(
			[...path, 'against'],
			'base-against',
			'the base is measured against itself',
			'Take "against" out.'
		);
}

/** Follows parents, or what each is measured against, until the base; a loop never gets there. */
function checkLink(
	findings: Findings,
	scenario: Scenario,
	i: number,
	field: 'parent' | 'against',
	to: string | null
): void {
	const { workbook } = findings;
	const path = ['scenarios', i, field];
	const base = workbook.scenarios[0];
	if (to === null) {
		findings.add(path, 'no-parent', 'only the base has no parent', `Write "${base?.id}".`);
		return;
	}
	if (field === 'against' && findFrozen(workbook, to)) return;
	if (!findScenario(workbook, to)) {
		findings.add(
			path,
			'unknown-scenario',
			field === 'parent'
				? `there is no scenario with the id "${to}"`
				: `there is no scenario and no frozen copy with the id "${to}"`,
			meant(
				to,
				(field === 'parent' ? workbook.scenarios : columnsOf(workbook)).map(({ id }) => id),
				`Write "${base?.id}", or add it.`
			)
		);
		return;
	}
	const passed = new Set<string>([scenario.id]);
	let here: string | null | undefined = to;
	while (here !== null && here !== undefined && here !== base?.id) {
		if (passed.has(here)) {
			if (here !== scenario.id) return;
			findings.add(
				path,
				'scenario-loop',
				`${[...passed, here].join(' → ')} is a loop that never reaches the base`,
				`Let one of them ${field === 'parent' ? 'start from' : 'be measured against'} "${base?.id}".`
			);
			return;
		}
		passed.add(here);
		const next: Scenario | undefined = findScenario(workbook, here);
		here = field === 'parent' ? next?.parent : (next?.against ?? base?.id);
	}
}

function checkChange(findings: Findings, change: Change, path: readonly PropertyKey[]): void {
	const { workbook } = findings;
	const quantity = findQuantity(workbook, change.quantity);
	const remedy = 'Take the change out.';
	if (!quantity)
		findings.add(
			path,
			'unknown-quantity',
			`there is no quantity named ${change.quantity}`,
			meant(change.quantity, quantityPlaces(workbook).keys(), remedy)
		);
	else if (!hasInputs(quantity))
		findings.add(
			path,
			'change-of-formula',
			`${change.quantity} follows a formula, and a scenario changes inputs only`,
			remedy
		);
	else if (quantity.fixed)
		findings.add(
			path,
			'change-of-fixed',
			`${change.quantity} is fixed with the structure, and no scenario changes it`,
			`${remedy.slice(0, -1)}, or make ${change.quantity} an input that is not fixed.`
		);
	const guide = quantity && cellGuide(workbook, quantity);
	if (!guide) return;
	for (const { at, problem } of misplaced(guide, change.value)) {
		if (findings.isFull) return;
		findings.add([...path, 'value', ...at], problem.code, problem.message, problem.remedy);
	}
}
