/**
 * Cash flows in time. The functions of finance take one value a period, so the terms are laid out by the numbers of
 * their members: in that order, with nothing flowing where a number is left out. Both engines and the files
 * then read a plain row of periods. Without numbers there is only the order, and no member may be left out.
 */
import { Op } from '../operations';
import type { Lowering } from './lower';
import type { Aggregate } from './types';

/** What is farther away is no count of periods: a calendar year, most likely. */
const FARTHEST = 1000;

/** `entries` holds value, filter and position of each term; `ordinals` the member of each. */
export interface Flows {
	entries: number[];
	readonly ordinals: readonly number[];
}

interface Flow {
	readonly id: string;
	readonly number: number;
	readonly entries: readonly number[];
}

/** Lays the terms out; what cannot be laid out is reported and left as it stands. */
export function layOutInTime(low: Lowering, aggregate: Aggregate, flows: Flows): void {
	const set = low.context.sets.get(setOf(aggregate));
	if (!set || flows.ordinals.length === 0) return;
	const { numbers, ids } = set;
	const inOrder = numbers && inTime(flows, numbers.values, ids);
	// NPV counts from today, the rates of return from their first flow.
	const start = aggregate.op === Op.Npv ? 1 : (inOrder?.[0]?.number ?? 0);
	const refused = inOrder
		? refusal(low, aggregate, inOrder, start)
		: gapIn(aggregate, flows.ordinals, ids);
	if (refused) {
		if (!low.tracing) low.report(refused.code, refused.message, aggregate.span);
	} else if (inOrder)
		flows.entries =
			aggregate.op === Op.Payback
				? inOrder.flatMap(({ entries }) => entries)
				: filledUp(inOrder, start, low.store.constant(0));
}

const inTime = (
	{ entries, ordinals }: Flows,
	numbers: ArrayLike<number>,
	ids: readonly string[]
): Flow[] =>
	ordinals
		.map((ordinal, at) => ({
			id: ids[ordinal]!,
			number: numbers[ordinal]!,
			entries: entries.slice(3 * at, 3 * at + 3)
		}))
		.sort((a, b) => a.number - b.number);

/** A value for every period from the start on: nothing where no member has its number. */
function filledUp(flows: readonly Flow[], start: number, zero: number): number[] {
	const entries: number[] = [];
	for (const flow of flows) {
		while (start + entries.length / 3 < flow.number) entries.push(zero, -1, -1);
		entries.push(...flow.entries);
	}
	return entries;
}

interface Refusal {
	readonly code: string;
	readonly message: string;
}

/** Without numbers: a member left out between others. */
function gapIn(
	aggregate: Aggregate,
	ordinals: readonly number[],
	ids: readonly string[]
): Refusal | null {
	const at = ordinals.findIndex((ordinal, i) => i > 0 && ordinal !== ordinals[i - 1]! + 1);
	if (at < 0) return null;
	return {
		code: 'period-left-out',
		message: `${aggregate.name} takes one value a period, but ${ids[ordinals[at - 1]! + 1]} is left out between others, and the members of ${setOf(aggregate)} have no numbers to tell how far apart they are: give each a number, such as 0, 1, 2 for years.`
	};
}

function refusal(
	low: Lowering,
	aggregate: Aggregate,
	flows: readonly Flow[],
	start: number
): Refusal | null {
	const { name, op } = aggregate;
	const set = setOf(aggregate);
	const twin = flows.findIndex((flow, at) => flow.number === flows[at - 1]?.number);
	if (twin > 0) {
		const [one, other] = [flows[twin - 1]!, flows[twin]!];
		return {
			code: 'same-period',
			message: `${name} takes one value a period, but ${one.id} and ${other.id} of ${set} both have number ${one.number}: give each a number of its own, or add up what belongs together.`
		};
	}
	if (op === Op.Payback) return null;
	const broken = flows.find(({ number }) => !Number.isInteger(number));
	if (broken)
		return {
			code: 'part-of-a-period',
			message: `${name} counts whole periods by the numbers of ${set}, but ${broken.id} has number ${broken.number}: number the members by periods, 0, 1, 2 …, and take the rate of such a period.`
		};
	const [first, last] = [flows[0]!, flows.at(-1)!];
	if (first.number < start)
		return {
			code: 'npv-starts-today',
			message:
				first.number === 0
					? startsToday(low, aggregate, set, first.id)
					: `NPV discounts what comes after today, but ${first.id} has number ${first.number}, which is before it: leave it out by where.`
		};
	if (last.number - start < FARTHEST) return null;
	return {
		code: 'periods-too-far',
		message: `${name} discounts by the numbers of ${set}, and ${last.id} has number ${last.number}: number the members by periods from today, 0, 1, 2 …, rather than by the calendar.`
	};
}

const setOf = ({ terms }: Aggregate): string => terms[0]?.gathered[0]?.set ?? '';

function startsToday(low: Lowering, aggregate: Aggregate, set: string, id: string): string {
	const words = low.proof?.words(aggregate.terms[0]?.value.source ?? null) ?? 'cash';
	return `NPV discounts its first term by one period, but ${id} has number 0, which is today: write ${words}[${id}] + NPV(rate; ${words} over ${set} where ${set} > ${id}).`;
}
