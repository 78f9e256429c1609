/**
 * The look before pairs of a relation come in from a table: which are new, which would go and what is entered for
 * them, which names no member has. Nothing is changed here.
 */
import { axesOf, pairKey, relationAxes } from '$lib/workbook/axes';
import { applyCommand, type Command } from '$lib/workbook/commands';
import { findRelation, findSet, pairsOf, quantityPlaces } from '$lib/workbook/lookup';
import type { Relation, SetDefinition, Workbook } from '$lib/workbook/schema';
import { flatten } from '$lib/workbook/values';
import { columnName, type Grid, type Row } from './grid';
import type { Refusal, UnknownMember } from './import-table';
import { readMark } from './marks';
import { memberNamed } from './member-named';
import { memberCommands, unknownKey, type MemberChoices } from './new-members';
import { holdsMarks, isWhole, type PairMapping } from './pair-mapping';
import { quoted } from './number-text';
import { textOf } from './row-parts';

export type Pair = readonly [string, string];

export interface PairThatGoes {
	readonly pair: Pair;
	/** The line that says that they do not go together; null: the file does not name the pair. */
	readonly line: number | null;
	/** How many values are entered for it, in all scenarios: they go with it. */
	readonly entered: number;
}

export interface PairLook {
	readonly fresh: readonly { readonly pair: Pair; readonly line: number }[];
	/** Of members that the file has a row for. */
	readonly gone: readonly PairThatGoes[];
	readonly same: number;
	/** Pairs of the workbook whose member the file has no row for. */
	readonly untouched: number;
	/** The first of them, and how many there are. */
	readonly problems: readonly Refusal[];
	readonly refused: number;
	readonly unknown: readonly UnknownMember[];
	readonly leftOut: readonly string[];
	/** Makes the members as decided; first of all that is done. */
	readonly before: readonly Command[];
}

export type PairsLooked =
	{ readonly ok: true; readonly look: PairLook } | { readonly ok: false; readonly message: string };

const MOST_TOLD = 500;

export function lookOverPairs(
	grid: Grid,
	mapping: PairMapping,
	choices: MemberChoices,
	workbook: Workbook
): PairsLooked {
	if (!isWhole(mapping) || !findRelation(workbook, mapping.relation))
		return { ok: false, message: 'Say first which column names which.' };
	const before = memberCommands(choices, workbook);
	let made = workbook;
	if (before.length > 0) {
		const result = applyCommand(workbook, { kind: 'several', commands: before });
		if (!result.ok) return { ok: false, message: result.problem.message };
		made = result.workbook;
	}
	const read = new PairReading(grid, mapping, made);
	// One that is decided of stays in the list, so that it can be decided otherwise.
	const unknown =
		before.length > 0 ? new PairReading(grid, mapping, workbook).unknown : read.unknown;
	return { ok: true, look: { ...read.result(), unknown: [...unknown.values()], before } };
}

/** What is entered, as one edit: members first. */
export const pairCommands = (
	{ before, fresh }: Pick<PairLook, 'before' | 'fresh'>,
	going: readonly PairThatGoes[],
	relation: string
): Command[] => {
	const set = (pair: Pair, exists: boolean): Command => ({
		kind: 'set_relation_pair',
		relation,
		pair: [...pair],
		exists
	});
	return [
		...before,
		...fresh.map(({ pair }) => set(pair, true)),
		...going.map(({ pair }) => set(pair, false))
	];
};

interface Said {
	readonly pair: Pair;
	readonly line: number;
	readonly exists: boolean;
}

class PairReading {
	readonly unknown = new Map<string, UnknownMember & { rows: number }>();
	readonly #relation: Relation;
	readonly #sets: readonly [SetDefinition, SetDefinition];
	readonly #problems: Refusal[] = [];
	readonly #said = new Map<string, Said>();
	/** Pairs that the file names with something that is no mark: nothing is done to them. */
	readonly #unclear = new Set<string>();
	/** Members that rows are about, by the place of their set in the relation. */
	readonly #rowsOf = new Set<string>();
	readonly #leftOut: string[];
	/** The set whose members name rows: the first, unless it is in the headings. */
	readonly #down: 0 | 1;

	constructor(
		readonly grid: Grid,
		readonly mapping: PairMapping,
		readonly workbook: Workbook
	) {
		this.#relation = findRelation(workbook, mapping.relation)!;
		const [first, second] = this.#relation.sets.map((name) => findSet(workbook, name)!);
		this.#sets = [first!, second!];
		this.#down = mapping.of[0] === 'heads' ? 1 : 0;
		const taken = new Set<unknown>([...mapping.of, mapping.mark]);
		const isByHeads = mapping.of.includes('heads');
		const across = isByHeads ? this.#membersAcross(taken) : null;
		this.#leftOut = grid.head.filter(
			(name, column) => name !== '' && !taken.has(column) && !across?.has(column)
		);
		for (const row of grid.rows) {
			if (across) this.#readAcross(row, across);
			else this.#readPair(row);
		}
	}

	/** The member that each of the other columns stands for. */
	#membersAcross(taken: ReadonlySet<unknown>): Map<number, string> {
		const set = this.#sets[1 - this.#down]!;
		const across = new Map<number, string>();
		this.grid.head.forEach((name, column) => {
			if (taken.has(column) || name === '') return;
			const id = memberNamed(set, name);
			if (id !== null) across.set(column, id);
			// Remarks beside the marks name nobody.
			else if (holdsMarks(this.grid, column)) this.#count(set, name, this.grid.headLine);
		});
		return across;
	}

	#readAcross({ line, cells }: Row, across: ReadonlyMap<number, string>): void {
		const member = this.#member(this.#down, line, cells);
		if (member === null) return;
		for (const [column, other] of across) {
			const text = String(textOf(cells[column] ?? ''));
			const exists = readMark(text);
			const pair: Pair = this.#down === 0 ? [member, other] : [other, member];
			if (exists === null) this.#noMark(line, column, text, pair);
			else this.#say(line, pair, exists);
		}
	}

	#readPair({ line, cells }: Row): void {
		const first = this.#member(0, line, cells);
		const second = this.#member(1, line, cells);
		if (first === null || second === null) return;
		const { mark } = this.mapping;
		const text = mark === null ? 'x' : String(textOf(cells[mark] ?? ''));
		const exists = readMark(text);
		if (exists === null) this.#noMark(line, mark!, text, [first, second]);
		else this.#say(line, [first, second], exists);
	}

	#member(of: 0 | 1, line: number, cells: Row['cells']): string | null {
		const set = this.#sets[of];
		const text = String(textOf(cells[this.mapping.of[of] as number] ?? '')).trim();
		const word = set.label.toLowerCase();
		if (text === '') {
			this.#bad(line, null, `The row names no ${word}. Write it, or leave the row out.`);
			return null;
		}
		const id = memberNamed(set, text);
		if (id === null) {
			this.#count(set, text, line);
			const message = `There is no ${word} "${text}". Write it as it stands in the workbook, or add it.`;
			this.#bad(line, null, message);
		} else if (of === this.#down) this.#rowsOf.add(id);
		return id;
	}

	#say(line: number, pair: Pair, exists: boolean): void {
		const key = pairKey(pair);
		const before = this.#said.get(key);
		if (before && before.exists !== exists)
			this.#bad(
				line,
				null,
				`${pair.join(' and ')} ${before.exists ? 'go' : 'do not go'} together by line ${before.line}. Keep one of the two.`
			);
		else if (!before) this.#said.set(key, { pair, line, exists });
	}

	#noMark(line: number, column: number, text: string, pair: Pair): void {
		this.#unclear.add(pairKey(pair));
		this.#bad(
			line,
			columnName(this.grid, column),
			`${quoted(text)} is no mark. Write x, 1 or yes where they go together, and nothing, 0, - or no where they do not.`
		);
	}

	#bad(line: number, column: string | null, message: string): void {
		this.#problems.push({ line, column, message });
	}

	#count({ name: set }: SetDefinition, text: string, line: number): void {
		const key = unknownKey(set, text);
		const known = this.unknown.get(key);
		if (known) known.rows++;
		else this.unknown.set(key, { set, text, line, rows: 1, label: '' });
	}

	result(): Omit<PairLook, 'unknown' | 'before'> {
		const stand = pairsOf(this.#relation);
		const entered = enteredByPair(this.workbook, this.#relation);
		const fresh: { pair: Pair; line: number }[] = [];
		const gone: PairThatGoes[] = [];
		let same = 0;
		for (const [key, { pair, line, exists }] of this.#said) {
			if (stand.has(key) === exists) same++;
			else if (exists) fresh.push({ pair, line });
			else gone.push({ pair, line, entered: entered.get(key) ?? 0 });
		}
		let untouched = 0;
		for (const pair of this.#relation.pairs) {
			const key = pairKey(pair);
			if (this.#said.has(key) || this.#unclear.has(key)) continue;
			const [first = '', second = ''] = pair;
			if (!this.#rowsOf.has(pair[this.#down] ?? '')) untouched++;
			else gone.push({ pair: [first, second], line: null, entered: entered.get(key) ?? 0 });
		}
		return {
			fresh,
			gone,
			same,
			untouched,
			problems: this.#problems.slice(0, MOST_TOLD),
			refused: this.#problems.length,
			leftOut: this.#leftOut
		};
	}
}

/** How many values stand for each pair, in the base and in scenarios. */
function enteredByPair(workbook: Workbook, relation: Relation): Map<string, number> {
	const entered = new Map<string, number>();
	const changes = workbook.scenarios.flatMap((scenario) => scenario.changes);
	for (const { quantity } of quantityPlaces(workbook).values()) {
		const bound = quantity.in?.includes(relation.name) && relationAxes(axesOf(quantity), relation);
		if (!bound) continue;
		const own = changes.filter((change) => change.quantity === quantity.name);
		for (const { value } of [quantity, ...own])
			for (const { at, value: one } of flatten(value)) {
				if (one === null) continue;
				const key = pairKey(bound.map((axis) => at[axis] ?? ''));
				entered.set(key, (entered.get(key) ?? 0) + 1);
			}
	}
	return entered;
}
