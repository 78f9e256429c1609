/**
 * The mark of what a study stood on when it ran: its settings, and of the workbook all that its results are
 * computed from. The same mark means the same numbers; another one means that the study is out of date.
 *
 * Words that nothing is computed from (titles, notes, sources) leave it as it is.
 */
import { axesOf } from '$lib/workbook/axes';
import { findFrozen } from '$lib/workbook/frozen';
import { hashOfText } from '$lib/workbook/hash';
import { kept } from '$lib/workbook/kept';
import { findRelation, findScenario, findSet } from '$lib/workbook/lookup';
import type { Programme } from '$lib/workbook/programme-schema';
import { referenceOf, scenarioChain } from '$lib/workbook/scenario';
import type { Frozen, Quantity, Workbook } from '$lib/workbook/schema';
import { resultsOf, scenariosOf } from '$lib/workbook/study-gaps';
import type { Study } from '$lib/workbook/study-schema';
import { behind, namesIn, programmesBehind } from './behind';

export function fingerprintOf(workbook: Workbook, study: Study): string {
	const { title: _title, note: _note, ran: _ran, ...settings } = study;
	const results = resultsOf(study).map(({ quantity }) => quantity);
	const quantities = behind(workbook, results);
	const programmes = programmesBehind(workbook, new Set(quantities.map(({ name }) => name)));
	const names = new Set(quantities.map(({ name }) => name));
	const sets = [
		...new Set(
			quantities.flatMap((quantity) => [
				...axesOf(quantity).map(({ set }) => set),
				...(typeof quantity.type === 'object' ? [quantity.type.member_of] : []),
				...namesIn(quantity)
			])
		)
	].flatMap((name) => findSet(workbook, name) ?? []);
	const relations = [...new Set(quantities.flatMap((quantity) => quantity.in ?? []))].flatMap(
		(name) => findRelation(workbook, name) ?? []
	);
	const copies = copiesBehind(workbook, study);
	return hashOf({
		settings,
		units: workbook.units ?? [],
		sets: sets.map(({ label: _, plural: __, note: ___, members, ...set }) => ({
			...set,
			members: members.map(({ id, number }) => ({ id, number }))
		})),
		relations: relations.map(({ label: _, note: __, ...relation }) => relation),
		quantities: quantities.map(computed),
		// What is left out where there is none leaves older marks as they are.
		...(copies.length > 0 && { copies: copies.map(hashOfCopy) }),
		...(programmes.length > 0 && { programmes: programmes.map((one) => decidedBy(workbook, one)) }),
		scenarios: scenariosBehind(workbook, study).map(({ id, parent, against, changes }) => ({
			id,
			parent,
			against,
			changes: changes
				.filter(({ quantity }) => names.has(quantity))
				.map(({ quantity, value }) => ({ quantity, value }))
		}))
	});
}

/** Whether the study ran, and has nothing to answer for since. */
export type Freshness = 'never-run' | 'up-to-date' | 'out-of-date';

export function freshnessOf(workbook: Workbook, study: Study): Freshness {
	if (!study.ran) return 'never-run';
	return study.ran.stood_on === fingerprintOf(workbook, study) ? 'up-to-date' : 'out-of-date';
}

/** A programme without its words, and the plans that are kept as they stand. */
const decidedBy = (workbook: Workbook, { title: _, note: __, ...programme }: Programme) => ({
	...programme,
	kept: (workbook.plans ?? []).filter(
		(plan) => plan.programme === programme.name && plan.kept !== undefined
	)
});

const computed = (quantity: Quantity) => {
	const { name, type, unit, per, fixed, value, formula, where, range } = quantity;
	return { name, type, unit, per, in: quantity.in, fixed, value, formula, where, range };
};

/** The study's scenarios, those they start from and those they are measured against. */
function scenariosBehind(workbook: Workbook, study: Study) {
	const ids = new Set(scenariosOf(study).filter((id) => findScenario(workbook, id)));
	for (const id of ids) {
		for (const one of scenarioChain(workbook, id)) ids.add(one.id);
		ids.add(referenceOf(workbook, id).id);
	}
	return workbook.scenarios.filter(({ id }) => ids.has(id));
}

/** The frozen copies at its ends, and those that its scenarios are measured against. */
const copiesBehind = (workbook: Workbook, study: Study): Frozen[] =>
	[
		...new Set([
			...scenariosOf(study),
			...scenariosBehind(workbook, study).map(({ against = '' }) => against)
		])
	].flatMap((id) => (findScenario(workbook, id) ? [] : (findFrozen(workbook, id) ?? [])));

const hashOfCopy = kept(({ quantities }: Frozen): string => hashOf(quantities));

/** Sixteen hexadecimal digits, whatever order the fields of an object came in. */
const hashOf = (value: unknown): string => hashOfText(written(value));

function written(value: unknown): string {
	if (Array.isArray(value)) return `[${value.map(written).join(',')}]`;
	if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'undefined';
	const fields = Object.entries(value)
		.filter(([, entry]) => entry !== undefined)
		.sort(([a], [b]) => (a < b ? -1 : 1))
		.map(([name, entry]) => `${JSON.stringify(name)}:${written(entry)}`);
	return `{${fields.join(',')}}`;
}
