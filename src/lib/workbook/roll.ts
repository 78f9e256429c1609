/**
 * Months that move on by one: the first leaves, one comes at the end, and what steps in time said in the first holds on. Gives
 * commands, one step of undo together; what the month that leaves held is frozen by whoever has its results.
 */
import { applyCommand, type Command } from './commands';
import { pairKey } from './axes';
import { findSet } from './lookup';
import { monthId, monthNumber } from './months';
import { monthsOf, pathsOf, stepAt, stepEntries, type PathInTime, type Step } from './paths';
import { inputAt, inputValues, scenarioChain } from './scenario';
import type { Member, SetDefinition, Workbook } from './schema';
import { flatten } from './values';

export type Rolled =
	| {
			readonly ok: true;
			readonly commands: readonly Command[];
			/** The month that leaves. */
			readonly left: Member;
			readonly come: Member;
	  }
	| { readonly ok: false; readonly message: string };

type Level = Pick<Step, 'set' | 'moved'>;
const NONE: Level = { set: null, moved: null };

export function rollForward(workbook: Workbook, name: string): Rolled {
	const set = findSet(workbook, name);
	const [left, next] = set?.members ?? [];
	const last = set?.members.at(-1);
	if (!set || !last || set.time === undefined)
		return refusal(`${set?.label ?? name} has no months to move on. Mark a list as months first.`);
	if (!left || !next)
		return refusal(`${set.label} has one month alone, so none can leave. Add the month after it.`);
	if (!isClosed(workbook, set, left))
		return refusal(
			`${left.label ?? left.id} is not closed. Close it first: a month leaves with what came in it.`
		);
	const come = following(set, last);
	const commands: Command[] = [];
	let now = workbook;
	const run = (command: Command): string | null => {
		const applied = applyCommand(now, command);
		if (!applied.ok) return applied.problem.message;
		commands.push(command);
		now = applied.workbook;
		return null;
	};
	const paths = [...pathsOf(workbook).byPath.values()].filter(
		({ quantity }) => monthsOf(workbook, quantity)?.name === set.name
	);
	const scenarios = parentsFirst(workbook);
	/** Gives a month the steps that it is to have, in each scenario; parents first, whom the others follow. */
	const put = (
		month: string,
		holds: (path: PathInTime, scenario: string, at: readonly string[]) => Level
	): string | null => {
		for (const path of paths)
			for (const scenario of scenarios) {
				const entries = placesOf(now, path, [left.id, month]).flatMap((at) =>
					stepEntries(now, scenario, path, [...at, month], holds(path, scenario, at))
				);
				const problem = entries.length > 0 ? run({ kind: 'set_inputs', scenario, entries }) : null;
				if (problem) return problem;
			}
		return null;
	};
	const stood = ({ quantity }: PathInTime, scenario: string, at: readonly string[]) =>
		stepAt(workbook, scenario, quantity.name, at) ?? NONE;
	const problem =
		put(next.id, (path, scenario, at) =>
			oneAfterOther(
				stood(path, scenario, [...at, left.id]),
				stood(path, scenario, [...at, next.id])
			)
		) ??
		run({
			...{ kind: 'add_member', set: set.name, index: set.members.length },
			...{ member: come, like: last.id }
		}) ??
		put(come.id, () => NONE) ??
		run({ kind: 'remove_member', set: set.name, id: left.id });
	return problem === null ? { ok: true, commands, left, come } : refusal(problem);
}

const refusal = (message: string): Rolled => ({ ok: false, message });

/** As the pictures of these months tell it; months of which nothing says so may leave. */
function isClosed(workbook: Workbook, set: SetDefinition, { id }: Member): boolean {
	return (workbook.pictures ?? []).every((picture) => {
		if (picture.kind !== 'months' || picture.period !== set.name || !picture.closed) return true;
		return inputAt(workbook, workbook.scenarios[0]!.id, picture.closed, [id]).value === true;
	});
}

/** The month after the last, called as the same month of another year is. */
function following(set: SetDefinition, last: Member): Member {
	const id = monthId((monthNumber(last.id) ?? 0) + 1);
	const [year = '', month = ''] = id.split('-');
	const like = set.members.find((one) => one.id.endsWith(`-${month}`));
	const label = like?.label?.replace(like.id.slice(0, 4), year);
	return {
		id,
		...(label !== undefined && label !== like?.label && { label }),
		...(last.number !== undefined && { number: last.number + 1 })
	};
}

/** What a month holds if the one before it, with its step, is no more. */
function oneAfterOther(before: Level, own: Level): Level {
	if (own.set !== null) return own;
	if (before.set !== null)
		return { set: rounded(before.set * (1 + (before.moved ?? 0) / 100)), moved: own.moved };
	if (before.moved === null || own.moved === null)
		return { set: null, moved: before.moved ?? own.moved };
	const moved = rounded(((1 + before.moved / 100) * (1 + own.moved / 100) - 1) * 100);
	return { set: null, moved: moved === 0 ? null : moved };
}

/** Without the last bits that binary fractions leave. */
const rounded = (value: number) => Number(value.toPrecision(13));

/** The members beside the months for which any scenario has a step in one of these months. */
function placesOf(workbook: Workbook, path: PathInTime, months: readonly string[]): string[][] {
	const found = new Map<string, string[]>();
	for (const { id } of workbook.scenarios)
		for (const input of [path.set, path.moved])
			for (const { at, value } of flatten(inputValues(workbook, id, input.name)))
				if (value !== null && months.includes(at.at(-1) ?? ''))
					found.set(pairKey(at.slice(0, -1)), at.slice(0, -1));
	return [...found.values()];
}

const parentsFirst = (workbook: Workbook): string[] =>
	workbook.scenarios
		.map(({ id }) => ({ id, depth: scenarioChain(workbook, id).length }))
		.toSorted((a, b) => a.depth - b.depth)
		.map(({ id }) => id);
