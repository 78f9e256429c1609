/**
 * A plant of one's own, begun from a shipped workbook: its structure without its figures.
 *
 * Sets that say so (`own`) begin with a single member, which stands for all until the own ones are named; members that a
 * formula speaks of by name belong to the structure and stay. Scenarios, studies and plans speak of the shipped plant and go.
 * Whatever else is entered stays as a typical value: `begun_from` and the members' `like` tell which still stand as shipped.
 */
import { applyCommand, type Command } from '../commands';
import { OTHERS } from '../cells';
import { axesOf } from '../axes';
import { baseOf, choicesOf, quantityPlaces } from '../lookup';
import { FORMAT, VERSION, type Member, type SetDefinition, type Workbook } from '../schema';
import { flatten } from '../values';
import { withoutCopies } from './without-copies';

/** What is begun, or why the workbook cannot be begun from. */
export type Begun =
	| { readonly ok: true; readonly workbook: Workbook }
	| { readonly ok: false; readonly message: string };

export function beginFrom(template: Workbook, title: string): Begun {
	const workbook = withoutItsOwn(withoutCopies(template), title);
	const own = workbook.sets.filter((set) => set.own);
	// Members and pairs that follow each other are checked once.
	const commands = [
		...own.flatMap((set) => choicesOfGone(workbook, set)),
		...own.flatMap((set) => oneAlone(workbook, set))
	];
	const applied = applyCommand(workbook, { kind: 'several', commands });
	return applied.ok
		? { ok: true, workbook: applied.workbook }
		: { ok: false, message: applied.problem.message };
}

/** A workbook with nothing in it but a sheet to begin on. */
export const emptyWorkbook = (title: string, sheet: string, base: string): Workbook => ({
	...{ format: FORMAT, version: VERSION, title },
	...{ sets: [], sheets: [{ title: sheet, quantities: [] }] },
	scenarios: [{ id: 'base', title: base, parent: null, changes: [] }]
});

/** Without what speaks of the shipped plant as it is: its story, scenarios, studies, plans, what was ticked off. */
function withoutItsOwn(template: Workbook, title: string): Workbook {
	const {
		about: _a,
		invented: _i,
		studies: _s,
		plans: _p,
		reviewed: _r,
		tables: _t,
		quotes: _q,
		letterhead: _l,
		calibrations,
		...rest
	} = template;
	return {
		...rest,
		title,
		scenarios: [{ ...baseOf(template), changes: [] }],
		// What is found from which points stays; the points are the plant's.
		...(calibrations && { calibrations: calibrations.map(({ data: _data, ...fit }) => fit) })
	};
}

function oneAlone(workbook: Workbook, set: SetDefinition): Command[] {
	const { like, first } = set.own!;
	const member: Member = { id: first, like };
	return [
		...goneOf(workbook, set).map((id) => ({
			...{ kind: 'remove_member' as const, set: set.name, id, also: true }
		})),
		{ kind: 'replace_member', set: set.name, id: like, member }
	];
}

function goneOf(workbook: Workbook, set: SetDefinition): string[] {
	const named = namedInCases(workbook, set);
	return set.members.map(({ id }) => id).filter((id) => id !== set.own!.like && !named.has(id));
}

/** Members with a rule of their own: the line that an option puts in. */
function namedInCases(workbook: Workbook, set: SetDefinition): ReadonlySet<string> {
	const named = new Set<string>();
	for (const { quantity } of quantityPlaces(workbook).values()) {
		const { formula } = quantity;
		if (typeof formula !== 'object') continue;
		if (axesOf(quantity).find(({ name }) => name === formula.by)?.set !== set.name) continue;
		for (const member of Object.keys(formula.cases)) if (member !== OTHERS) named.add(member);
	}
	return named;
}

/** Choices of one that is gone fall on the one that stands for all. */
function choicesOfGone(workbook: Workbook, set: SetDefinition): Command[] {
	const gone = new Set(goneOf(workbook, set));
	const entries = choicesOf(workbook, set.name).flatMap((quantity) =>
		flatten(quantity.value)
			.filter(({ value }) => typeof value === 'string' && gone.has(value))
			.map(({ at }) => ({ quantity: quantity.name, at, value: set.own!.like }))
	);
	return entries.length > 0 ? [{ kind: 'set_inputs', scenario: baseOf(workbook).id, entries }] : [];
}
