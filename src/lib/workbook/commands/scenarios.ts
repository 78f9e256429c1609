/**
 * Making, describing, ordering, removing and promoting scenarios.
 *
 * Removing one keeps the values of those that start from it: they take its changes over. Promoting one
 * makes its values the base's. A scenario that does not itself change such an input then sees the new value,
 * for it follows the base; one that does keeps its own.
 */
import { canonicalChange } from '../canonical';
import { findFrozen } from '../frozen';
import { changesOf, findScenario } from '../lookup';
import { inputValues, scenarioChain } from '../scenario';
import { LIMITS, scenarioSchema, type Change, type Scenario, type Workbook } from '../schema';
import { layered } from '../values';
import { edited, refused, type Edit, type ScenarioCommand } from './command';
import { inserted, mapped } from './lists';
import { followedBy, holding } from '../deciding';
import { mapQuantities, withValue } from './parts';
import { mapStudies, mapStudyNames } from '../study-names';
import { mapProgrammeNames, withoutPlansOf } from './programme-names';
import { mapTableNames } from './tables';
import { shapeRefusal } from './refusal';
import { z } from '../zod';

type Of<K extends ScenarioCommand['kind']> = Extract<ScenarioCommand, { kind: K }>;

export function editScenario(workbook: Workbook, command: ScenarioCommand): Edit {
	if (command.kind === 'add_scenario') return addScenario(workbook, command);
	const scenario = findScenario(workbook, command.id);
	if (!scenario)
		return refused(
			'unknown-scenario',
			`There is no scenario "${command.id}". Choose one of the workbook's scenarios.`
		);
	if (command.kind === 'replace_scenario') return replaceScenario(workbook, scenario, command);
	if (command.kind === 'quote_on')
		return edited(quotedOn(workbook, () => (scenario === workbook.scenarios[0] ? '' : command.id)));
	if (scenario === workbook.scenarios[0]) return refuseForBase(scenario, command.kind);
	switch (command.kind) {
		case 'remove_scenario':
			return edited(withoutScenario(workbook, scenario));
		case 'move_scenario': {
			const others = workbook.scenarios.filter((one) => one !== scenario);
			const scenarios = inserted(others, Math.max(1, command.index), scenario);
			return edited({ ...workbook, scenarios });
		}
		case 'promote_scenario':
			return promote(workbook, scenario, command);
	}
}

function refuseForBase({ title }: Scenario, kind: ScenarioCommand['kind']): Edit {
	if (kind === 'remove_scenario')
		return refused(
			'base',
			`${title} holds the values that all scenarios start from, so it cannot be removed. Promote another scenario instead.`
		);
	if (kind === 'move_scenario')
		return refused('base', `${title} always comes first. Move the other scenarios.`);
	return refused('base', `${title} is the base already. Promote another scenario.`);
}

function addScenario(workbook: Workbook, { scenario, index }: Of<'add_scenario'>): Edit {
	const bad = shapeRefusal(scenarioSchema, scenario, 'The new scenario');
	if (bad) return bad;
	const changes = scenario.changes.flatMap((change) => canonicalChange(change) ?? []);
	return edited({
		...workbook,
		scenarios: inserted(workbook.scenarios, Math.max(1, index), { ...scenario, changes })
	});
}

function replaceScenario(
	workbook: Workbook,
	old: Scenario,
	{ scenario }: Of<'replace_scenario'>
): Edit {
	const next: Scenario = { ...scenario, changes: old.changes };
	const bad = shapeRefusal(z.omit(scenarioSchema, { changes: true }), scenario, old.title);
	if (bad) return bad;
	if (next.id !== old.id && (findScenario(workbook, next.id) || findFrozen(workbook, next.id)))
		return refused(
			'duplicate-scenario',
			`There is already a scenario or a frozen copy with the id ${next.id}. Choose another id.`
		);
	const renamed = (id: string) => (id === old.id ? next.id : id);
	const scenarios = workbook.scenarios.map((scenario) => {
		const header = scenario === old ? next : scenario;
		return pointing(header, header.parent && renamed(header.parent), header.against, renamed);
	});
	const named = mapStudies(workbook, (study) => mapStudyNames(study, { scenario: renamed }));
	const quoted = mapTableNames(quotedOn(named, renamed), { scenario: renamed });
	return edited({ ...mapProgrammeNames(quoted, { scenario: renamed }), scenarios });
}

/** The workbook whose quotes stand on what `by` gives for the scenario named; empty: for the base, which goes unnamed. */
function quotedOn(workbook: Workbook, by: (named: string) => string): Workbook {
	const pictures = workbook.pictures?.map((picture) => {
		if (picture.kind !== 'quote') return picture;
		const { scenario = '', ...rest } = picture;
		const next = by(scenario);
		return next === scenario ? picture : next ? { ...rest, scenario: next } : rest;
	});
	return pictures ? { ...workbook, pictures } : workbook;
}

/** The scenario with this parent, measured against the scenario that `by` names for the old one. */
function pointing(
	scenario: Scenario,
	parent: string | null,
	against: string | undefined,
	by: (id: string) => string | undefined
): Scenario {
	const next = against === undefined ? undefined : by(against);
	if (parent === scenario.parent && next === scenario.against) return scenario;
	const { against: _against, ...rest } = scenario;
	return next === undefined ? { ...rest, parent } : { ...rest, parent, against: next };
}

/** Its children start from its parent, with its changes taken over, so that they keep their values. */
function withoutScenario(workbook: Workbook, gone: Scenario): Workbook {
	const scenarios = workbook.scenarios.flatMap((scenario) => {
		if (scenario === gone) return [];
		const against = (id: string) => (id === gone.id ? gone.against : id);
		if (scenario.parent !== gone.id)
			return [pointing(scenario, scenario.parent, scenario.against, against)];
		const next = pointing(scenario, gone.parent, scenario.against, against);
		return [{ ...next, changes: joined(gone, scenario) }];
	});
	const quoted = quotedOn(workbook, (id) => (id === gone.id ? '' : id));
	return withoutPlansOf({ ...quoted, scenarios }, gone.id);
}

function joined(lower: Scenario, upper: Scenario): Change[] {
	const own = changesOf(upper);
	const inherited = changesOf(lower);
	const below = lower.changes.map((change) => {
		const over = own.get(change.quantity);
		const value = over && layered(change.value, over.value);
		return over && value !== undefined ? { ...change, ...over, value } : change;
	});
	return [...below, ...upper.changes.filter(({ quantity }) => !inherited.has(quantity))];
}

function promote(
	workbook: Workbook,
	scenario: Scenario,
	{ hold = [], against }: Of<'promote_scenario'>
): Edit {
	if (hold.length === 0) return edited(promoted(workbook, scenario));
	const followed = followedBy(workbook, scenario.id);
	const unknown = hold.find((id) => !followed.some((one) => one.scenario.id === id));
	if (unknown !== undefined)
		return refused(
			'unknown-scenario',
			`"${unknown}" is no other scenario that could keep its figures. Choose one of the workbook's scenarios.`
		);
	const note = `As before ${scenario.title} was made the base.`.slice(0, LIMITS.note);
	const held = mapped(workbook.scenarios, (one) => {
		const found = hold.includes(one.id) && followed.find((each) => each.scenario === one);
		return found ? holding(found, note, against) : one;
	});
	return edited(promoted({ ...workbook, scenarios: held }, scenario));
}

function promoted(workbook: Workbook, scenario: Scenario): Workbook {
	const base = workbook.scenarios[0];
	const changed = new Set(
		scenarioChain(workbook, scenario.id).flatMap(({ changes }) =>
			changes.map(({ quantity }) => quantity)
		)
	);
	const next = mapQuantities(workbook, (quantity) =>
		changed.has(quantity.name)
			? withValue(quantity, inputValues(workbook, scenario.id, quantity.name))
			: quantity
	);
	const scenarios = mapped(next.scenarios, (one) => {
		if (one === base) return one;
		if (one === scenario) return { ...one, parent: base?.id ?? null, changes: [] };
		return one.parent === scenario.id ? { ...one, parent: base?.id ?? null } : one;
	});
	return { ...next, scenarios };
}
