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
	ordinals: number[];
}

/** Lays the terms out in place; what cannot be laid out is reported and left as it stands. */
export function layOutInTime(low: Lowering, aggregate: Aggregate, flows: Flows): void {
	const name = aggregate.terms[0]?.gathered[0]?.set ?? '';
	const set = low.context.sets.get(name);
	if (!set || flows.ordinals.length === 0) return;
	const report = (code: string, message: string) => {
		if (!low.tracing) low.report(code, message, aggregate.span);
	};
	const { numbers, ids } = set;
	if (!numbers) {
		const gap = flows.ordinals.findIndex(
			(ordinal, at) => at > 0 && ordinal !== flows.ordinals[at - 1]! + 1
		);
		if (gap > 0)
			report(
				'period-left-out',
				`${aggregate.name} takes one value a period, but ${ids[flows.ordinals[gap - 1]! + 1]} is left out between others, and the members of ${name} have no numbers to tell how far apart they are: give each a number, such as 0, 1, 2 for years.`
			);
		return;
	}
	const terms = flows.ordinals
		.map((ordinal, at) => ({
			ordinal,
			number: numbers.values[ordinal]!,
			entries: flows.entries.slice(3 * at, 3 * at + 3)
		}))
		.sort((a, b) => a.number - b.number);
	const [first] = terms;
	const idOf = (term: { readonly ordinal: number }) => ids[term.ordinal]!;
	const twin = terms.find((term, at) => at > 0 && term.number === terms[at - 1]!.number);
	if (twin)
		return report(
			'same-period',
			`${aggregate.name} takes one value a period, but ${idOf(terms[terms.indexOf(twin) - 1]!)} and ${idOf(twin)} of ${name} both have number ${twin.number}: give each a number of its own, or add up what belongs together.`
		);
	if (aggregate.op === Op.Payback) return put(flows, terms);
	const broken = terms.find((term) => !Number.isInteger(term.number));
	if (broken)
		return report(
			'part-of-a-period',
			`${aggregate.name} counts whole periods by the numbers of ${name}, but ${idOf(broken)} has number ${broken.number}: number the members by periods, 0, 1, 2 …, and take the rate of such a period.`
		);
	// NPV counts from today, the rates of return from their first flow.
	const start = aggregate.op === Op.Npv ? 1 : first!.number;
	if (first!.number < start)
		return report(
			'npv-starts-today',
			first!.number === 0
				? startsToday(low, aggregate, name, idOf(first!))
				: `NPV discounts what comes after today, but ${idOf(first!)} has number ${first!.number}, which is before it: leave it out by where.`
		);
	const last = terms.at(-1)!;
	if (last.number - start >= FARTHEST)
		return report(
			'periods-too-far',
			`${aggregate.name} discounts by the numbers of ${name}, and ${idOf(last)} has number ${last.number}: number the members by periods from today, 0, 1, 2 …, rather than by the calendar.`
		);
	const nothing = [low.store.constant(0), -1, -1];
	const row: { readonly ordinal: number; readonly entries: readonly number[] }[] = [];
	for (const term of terms) {
		while (start + row.length < term.number) row.push({ ordinal: term.ordinal, entries: nothing });
		row.push(term);
	}
	put(flows, row);
}

function put(
	flows: Flows,
	row: readonly { readonly ordinal: number; readonly entries: readonly number[] }[]
): void {
	flows.entries = row.flatMap(({ entries }) => entries);
	flows.ordinals = row.map(({ ordinal }) => ordinal);
}

function startsToday(low: Lowering, aggregate: Aggregate, set: string, id: string): string {
	const words = low.proof?.words(aggregate.terms[0]?.value.source ?? null) ?? 'cash';
	return `NPV discounts its first term by one period, but ${id} has number 0, which is today: write ${words}[${id}] + NPV(rate; ${words} over ${set} where ${set} > ${id}).`;
}
