/**
 * Why a decision is not larger and why a requirement is not used in full, from the prices of the best plan: what one unit
 * more would bring by itself, what it takes of everything scarce, and by which ways it could be had.
 */
import { unitOfRow } from '../words';
import type { DecisionReason, Reason, RequirementReason, Take, Way } from './questions';
import { roomOf } from './rooms';
import { entriesOf, isPinned, roomWay, type Entry, type Settled } from './settled';

/** So many ways and takers are told. */
const MOST = 12;
/** Relative to what is added up: below it a sum is nothing. */
const NOTHING = 1e-9;

/** Null where the cell is neither a decision of the part nor a requirement. */
export function reasonOf(settled: Settled, cell: number): Reason | null {
	const column = settled.columnOf.get(cell);
	if (column !== undefined) return decisionReason(settled, column);
	const rows = settled.part.rows.flatMap((row, at) => (row.cell === cell ? [at] : []));
	return rows.length > 0 ? requirementReason(settled, cell, rows) : null;
}

function decisionReason(settled: Settled, column: number): DecisionReason {
	const { part, gain, stands, gains } = settled;
	const { cost, lower, upper } = part.programme;
	const cell = part.cells[column]!;
	const own = gain * cost[column]!;
	const takes = scarceEntries(settled, column).map((entry): Take => {
		const take = takeOf(settled, entry);
		return { ...take, ways: take.loss > 0 ? waysOf(settled, entry, gains[column]!) : [] };
	});
	const size = takes.reduce((most, { loss }) => Math.max(most, Math.abs(loss)), Math.abs(own));
	return {
		kind: 'decision',
		cell,
		value: stands[column]!,
		lower: lower[column]!,
		upper: upper[column]!,
		isPinned: isPinned(settled, cell),
		own,
		gain: settledAt(gains[column]!, size),
		takes: takes.sort((a, b) => b.loss - a.loss)
	};
}

const settledAt = (value: number, size: number) => (Math.abs(value) <= NOTHING * size ? 0 : value);

const scarceEntries = (settled: Settled, column: number): Entry[] =>
	settled.byColumn[column]!.filter(
		({ row, factor }) => Math.abs(settled.prices[row]! * factor) > 0
	);

function takeOf(settled: Settled, { row, factor }: Entry): Omit<Take, 'ways'> {
	const { part, model, prices } = settled;
	const { cell } = part.rows[row]!;
	const amount = factor * roomWay(part, row);
	return {
		cell,
		unit: unitOfRow(model.plan, cell) ?? '',
		amount,
		price: prices[row]!,
		loss: amount * prices[row]!
	};
}

/** The decisions that give room to a row, each with what one unit more of the decision asked about would change by it. */
function waysOf(settled: Settled, asked: Entry, gain: number): Way[] {
	const { part, gains, stands } = settled;
	const { cost } = part.programme;
	const ways = entriesOf(part, asked.row).flatMap(({ column, factor }): Way[] => {
		if (column === asked.column || Math.sign(factor) === Math.sign(asked.factor)) return [];
		if (isPinned(settled, part.cells[column]!)) return [];
		const needed = Math.abs(asked.factor / factor);
		const takes = scarceEntries(settled, column)
			.filter(({ row }) => row !== asked.row)
			.map((entry) => takeOf(settled, { ...entry, factor: entry.factor * needed }));
		const own = settled.gain * cost[column]! * needed;
		const size = takes.reduce((most, { loss }) => Math.max(most, Math.abs(loss)), Math.abs(own));
		return [
			{
				cell: part.cells[column]!,
				gain: settledAt(gain + gains[column]! * needed, size),
				own,
				takes: takes.sort((a, b) => b.loss - a.loss)
			}
		];
	});
	const used = (cell: number) => stands[settled.columnOf.get(cell)!]!;
	return ways.sort((a, b) => b.gain - a.gain || used(b.cell) - used(a.cell)).slice(0, MOST);
}

function requirementReason(
	settled: Settled,
	cell: number,
	rows: readonly number[]
): RequirementReason {
	const { part, prices, stands, gains } = settled;
	const takers = rows.flatMap((row) =>
		entriesOf(part, row).flatMap(({ column, factor }) => {
			const amount = factor * roomWay(part, row);
			if (amount <= 0) return [];
			const taker = part.cells[column]!;
			const size = Math.abs(part.programme.cost[column]!);
			return [
				{
					cell: taker,
					value: stands[column]!,
					amount,
					gain: settledAt(gains[column]!, size),
					isPinned: isPinned(settled, taker)
				}
			];
		})
	);
	return {
		kind: 'requirement',
		cell,
		rows: rows.flatMap((row) => {
			const room = roomOf(settled, row);
			return room ? [{ room, price: prices[row]! }] : [];
		}),
		takers: takers.sort((a, b) => b.gain - a.gain || b.value - a.value).slice(0, MOST)
	};
}
