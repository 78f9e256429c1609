/** Programmes: what they name exists, and can be decided, required or filled. */
import { axesOf } from '../axes';
import { hasInputs } from '../cells';
import { findQuantity, findScenario, findSet, quantityPlaces } from '../lookup';
import type { Programme } from '../programme-schema';
import { shadowQuantities } from '../plans';
import type { Quantity } from '../schema';
import type { Findings } from './findings';
import { meant } from './names';

type Path = readonly PropertyKey[];

export function checkProgrammes(findings: Findings): void {
	const programmes = findings.workbook.programmes ?? [];
	const decidedBy = new Map<string, string>();
	programmes.forEach((programme, i) => {
		const path = ['programmes', i];
		if (programmes.findIndex(({ name }) => name === programme.name) < i)
			findings.add(
				[...path, 'name'],
				'duplicate-programme',
				`there are two programmes named ${programme.name}`,
				'Choose another name.'
			);
		checkProgramme(findings, programme, path);
		if (programme.off) return;
		for (const name of [...programme.decisions, ...shadowQuantities(programme)]) {
			const other = decidedBy.get(name);
			if (other !== undefined)
				findings.add(
					path,
					'decided-twice',
					`${name} is decided by ${other} as well`,
					'Take it out of one of the two, or switch one off.'
				);
			decidedBy.set(name, programme.title);
		}
	});
	checkPlans(findings);
}

function checkProgramme(findings: Findings, programme: Programme, path: Path): void {
	const { workbook } = findings;
	const objectives = [programme.maximise, programme.minimise].filter((name) => name !== undefined);
	if (objectives.length !== 1)
		findings.add(
			path,
			'no-objective',
			`it says ${objectives.length === 0 ? 'neither what shall be largest nor what shall be smallest' : 'both what shall be largest and what shall be smallest'}`,
			'Give it one of "maximise" and "minimise".'
		);
	(programme.each ?? []).forEach((set, k) => {
		if (!findSet(workbook, set))
			findings.add(
				[...path, 'each', k],
				'unknown-set',
				`there is no set named ${set}`,
				meant(
					set,
					workbook.sets.map(({ name }) => name),
					'Name one, or take it out.'
				)
			);
	});
	const known = (name: string, at: Path): Quantity | undefined => {
		const quantity = findQuantity(workbook, name);
		if (!quantity)
			findings.add(
				at,
				'unknown-quantity',
				`there is no quantity named ${name}`,
				meant(name, quantityPlaces(workbook).keys(), 'Name one, or take it out.')
			);
		return quantity;
	};
	for (const field of ['maximise', 'minimise'] as const) {
		const name = programme[field];
		if (name === undefined) continue;
		const quantity = known(name, [...path, field]);
		if (!quantity) continue;
		const sets = axesOf(quantity).map(({ set }) => set);
		const each = programme.each ?? [];
		if (sets.length !== each.length || sets.some((set) => !each.includes(set)))
			findings.add(
				[...path, field],
				'objective-axes',
				`${name} is per ${sets.join(' and ') || 'nothing'}, but the programme is solved for each ${each.join(' and ') || 'workbook'} apart`,
				'Gather what is left over in the formula of the objective, or change "each".'
			);
	}
	programme.decisions.forEach((name, k) => {
		const at = [...path, 'decisions', k];
		const quantity = known(name, at);
		if (quantity) checkDecision(findings, quantity, at);
	});
	programme.constraints.forEach((name, k) => {
		const at = [...path, 'constraints', k];
		const quantity = known(name, at);
		if (quantity && (quantity.type !== 'yes_no' || quantity.formula === undefined))
			findings.add(
				at,
				'not-a-requirement',
				`${name} is not a yes/no quantity with a formula, so it cannot be required`,
				'Name one that compares two sides: "hours_used <= hours_there".'
			);
	});
	for (const [name, constraint] of Object.entries(programme.shadow_prices ?? {})) {
		const at = [...path, 'shadow_prices', name];
		const quantity = known(name, at);
		if (!programme.constraints.includes(constraint))
			findings.add(
				at,
				'unknown-constraint',
				`${constraint} is not among the constraints of the programme`,
				meant(constraint, programme.constraints, 'Name one of them.')
			);
		if (quantity && (!hasInputs(quantity) || (quantity.type ?? 'number') !== 'number'))
			findings.add(
				at,
				'not-fillable',
				`${name} is not an input that is a number, so no worth can be filled in`,
				'Make it an input without a formula.'
			);
		const required = findQuantity(workbook, constraint);
		if (quantity && required && axisNames(quantity) !== axisNames(required))
			findings.add(
				at,
				'shadow-axes',
				`${name} is not per the same sets as ${constraint}`,
				'Give both the same sets in the same order.'
			);
	}
}

const axisNames = (quantity: Quantity) =>
	axesOf(quantity)
		.map(({ name }) => name)
		.join(' ');

function checkDecision(findings: Findings, quantity: Quantity, at: Path): void {
	const { name, type = 'number', formula, fixed, whole, range } = quantity;
	if (formula !== undefined)
		findings.add(
			at,
			'decides-formula',
			`${name} follows a formula, so there is nothing to decide`,
			'Decide one of the inputs that it is computed from.'
		);
	else if (fixed)
		findings.add(
			at,
			'decides-fixed',
			`${name} is fixed with the structure`,
			'Let it change, or take it out of the programme.'
		);
	else if (typeof type === 'object')
		findings.add(
			at,
			'decides-choice',
			`${name} is a choice among members, and only numbers and yes/no can be decided`,
			'Write it as one yes/no for each member.'
		);
	if (whole && (range?.min === undefined || range.max === undefined))
		findings.add(
			at,
			'whole-without-bounds',
			`${name} is a whole number without a least and a greatest value, so there would be no end of trying`,
			'Give it a range with "min" and "max".'
		);
}

function checkPlans(findings: Findings): void {
	const { workbook } = findings;
	const seen = new Set<string>();
	(workbook.plans ?? []).forEach((plan, i) => {
		const path = ['plans', i];
		const programme = workbook.programmes?.find(({ name }) => name === plan.programme);
		if (!programme)
			findings.add(
				path,
				'unknown-programme',
				`there is no programme named ${plan.programme}`,
				'Take the plan out.'
			);
		if (!findScenario(workbook, plan.scenario))
			findings.add(
				path,
				'unknown-scenario',
				`there is no scenario ${plan.scenario}`,
				'Take the plan out.'
			);
		const key = `${plan.programme} ${plan.scenario}`;
		if (seen.has(key))
			findings.add(path, 'duplicate-plan', 'it stands twice', 'Take one of the two out.');
		seen.add(key);
	});
}
