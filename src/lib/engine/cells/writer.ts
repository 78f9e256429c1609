/**
 * Writes the formulas of one sheet. Knows where every cell of every scenario stands, gives pieces of formulas
 * cells of their own where they would be too long or too deep or are read more than once, and lays
 * the terms of long aggregates out as columns. What an operation looks like as text is said in
 * `scalar.ts`, `aggregate.ts` and `finance.ts`.
 */
import { nodesRead } from '$lib/engine/operands';
import { isAggregate, Op } from '$lib/engine/operations';
import type { Nodes, Plan } from '$lib/engine/plan';
import type { Outcome } from '$lib/engine/results';
import { ABSENT, OK } from '$lib/engine/state';
import { aggregatePiece } from './aggregate';
import type { Facts } from './facts';
import { Grid, runsOf, type Content } from './grid';
import { literalOf, type Literals } from './literals';
import { numeral, numeric, plain, type Piece } from './piece';
import { scalarPiece } from './scalar';

/** Longest text of one formula before a piece of it moves out, and how deep its brackets may nest. */
const LONGEST = 1500;
const DEEPEST = 24;
/** A shorter piece that is read twice is written twice. */
const WORTH_A_CELL = 30;
/** After so many operations one above the other, one gets a cell of its own. */
const MAX_HEIGHT = 40;

/**
 * Where the value of a cell stands that the formula reads: on which sheet, and the place there. The value itself where a
 * scenario is measured against a frozen copy; null where scenarios are measured against one another in a circle.
 */
export type Locate = (
	cell: number,
	which: number
) => { sheet: number; place: number } | Outcome | null;

/** Terms of an aggregate, standing in cells one below the other. */
export interface Column {
	readonly places: readonly number[];
	/** The sheet that the cells stand on. */
	readonly sheet: number;
	/** Whether some of the cells hold "" because their term is left out. */
	readonly gaps: boolean;
}

export class Writer {
	readonly nodes: Nodes;
	readonly #shared = new Map<number, Piece>();
	readonly #columns = new Map<string, Column>();
	/** Why values of this sheet cannot be judged, by plan cell. */
	readonly notCompared = new Map<number, string>();
	#current = -1;

	constructor(
		readonly plan: Plan,
		readonly facts: Facts,
		readonly literals: Literals,
		readonly sheet: number,
		readonly grid: Grid,
		readonly locate: Locate,
		/** The address of a place on a sheet, without the sheet's name. */
		readonly addressOn: (sheet: number, place: number) => string,
		readonly sheetNames: readonly string[]
	) {
		this.nodes = plan.nodes;
	}

	/** What the cell of this node's value holds: a number, or a formula. */
	content(cell: number, root: number): Content {
		this.#current = cell;
		if (this.nodes.op[root] === Op.Constant) return this.nodes.constants[this.nodes.a[root]!]!;
		this.#prepare(root);
		return this.#formula(numeric(this.piece(root)));
	}

	/** The value of a node as a piece of formula. */
	piece(node: number): Piece {
		const op = this.nodes.op[node]!;
		const once = op === Op.Constant || op === Op.Cell || op === Op.Nothing;
		const isSpillPoint = this.#isSpillPoint(node);
		if (once || (this.facts.readers(node) < 2 && !isSpillPoint)) return this.#write(op, node);
		let piece = this.#shared.get(node);
		if (!piece) {
			piece = this.#write(op, node);
			if (isSpillPoint || piece.text.length > WORTH_A_CELL) piece = this.hoist(piece);
			this.#shared.set(node, piece);
		}
		return piece;
	}

	/** The value of a node where only yes or no is asked: AND of one thing is that thing. */
	test(node: number): Piece {
		const { op, a, b, lists } = this.nodes;
		let asked = node;
		while ((op[asked] === Op.And || op[asked] === Op.Or) && b[asked] === 1)
			asked = lists[a[asked]!]!;
		return this.piece(asked);
	}

	tests(list: number, count: number): Piece[] {
		return Array.from(this.nodes.lists.subarray(list, list + count), (node) => this.test(node));
	}

	/** Writes a very deep formula from the bottom up, a flight at a time, so that the call stack lasts. */
	#prepare(root: number): void {
		if (this.facts.height(root) < MAX_HEIGHT) return;
		const seen = new Set<number>();
		const stack = [root];
		for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
			if (seen.has(node)) continue;
			seen.add(node);
			stack.push(...nodesRead(this.nodes, node));
		}
		const spillPoints = [...seen].filter((node) => this.#isSpillPoint(node));
		for (const node of spillPoints.sort((x, y) => x - y)) this.piece(node);
	}

	#isSpillPoint(node: number): boolean {
		const height = this.facts.height(node);
		return height > 0 && height % MAX_HEIGHT === 0;
	}

	pieces(list: number, count: number): Piece[] {
		return Array.from(this.nodes.lists.subarray(list, list + count), (node) => this.piece(node));
	}

	#write(op: number, node: number): Piece {
		return isAggregate(op) ? aggregatePiece(this, node) : scalarPiece(this, node);
	}

	/** The same as a piece that may be written more than once: a reference, a constant. */
	hoist(piece: Piece): Piece {
		if (piece.plain) return piece;
		const [place] = this.grid.allot(1) as [number];
		this.grid.put(place, this.#formula(numeric(piece)));
		return plain(this.address(this.sheet, place), piece.absent);
	}

	/** The pieces, the longest and deepest of them moved to cells of their own, until they go together. */
	fit(pieces: readonly Piece[]): Piece[] {
		const fitting = pieces.map((piece) => (piece.depth > DEEPEST ? this.hoist(piece) : piece));
		let length = fitting.reduce((sum, piece) => sum + piece.text.length, 0);
		while (length > LONGEST) {
			let longest = -1;
			fitting.forEach((piece, i) => {
				if (piece.plain) return;
				if (longest < 0 || piece.text.length > fitting[longest]!.text.length) longest = i;
			});
			if (longest < 0) break;
			length -= fitting[longest]!.text.length;
			fitting[longest] = this.hoist(fitting[longest]!);
			length += fitting[longest]!.text.length;
		}
		return fitting;
	}

	reference(cell: number, which: number): Piece {
		const at = this.locate(cell, which);
		if (!at) return plain(this.literals.circular);
		if ('state' in at)
			return at.state === OK
				? numeral(at.value)
				: plain(literalOf(this.literals, at.state), at.state === ABSENT);
		return plain(this.address(at.sheet, at.place), this.facts.cellMayBeAbsent(cell));
	}

	address(sheet: number, place: number): string {
		return this.#prefix(sheet) + this.addressOn(sheet, place);
	}

	/** The cells of a column from term `first` to term `last`, as ranges. */
	ranges(column: Column, first = 0, last = column.places.length - 1): string[] {
		return runsOf(column.places.slice(first, last + 1)).map(
			({ from, to }) => `${this.address(column.sheet, from)}:${this.addressOn(column.sheet, to)}`
		);
	}

	/** One cell a term. The key tells columns of the same terms from one another. */
	column(key: string, texts: () => { pieces: Piece[]; gaps: boolean }): Column {
		const known = this.#columns.get(key);
		if (known) return known;
		const { pieces, gaps } = texts();
		const places = this.grid.allot(pieces.length);
		pieces.forEach((piece, i) => this.grid.put(places[i]!, this.#formula(piece)));
		const column = { places, sheet: this.sheet, gaps };
		this.#columns.set(key, column);
		return column;
	}

	/** A column where the cells that these nodes read stand already, if they stand one below the other. */
	standing(nodes: readonly number[]): Column | null {
		const { op, a, b } = this.nodes;
		const places: number[] = [];
		let sheet = -1;
		for (const node of nodes) {
			if (op[node] !== Op.Cell) return null;
			const at = this.locate(a[node]!, b[node]!);
			if (
				!at ||
				'state' in at ||
				(sheet >= 0 && (at.sheet !== sheet || at.place !== places.at(-1)! + 1))
			)
				return null;
			sheet = at.sheet;
			places.push(at.place);
		}
		return sheet < 0 ? null : { places, sheet, gaps: false };
	}

	/** Where cells cannot answer: says why, and stands for the value. */
	notComparable(reason: string): Piece {
		this.notCompared.set(this.#current, reason);
		return plain(this.literals.notCompared);
	}

	#prefix(sheet: number): string {
		return sheet === this.sheet ? '' : `${this.sheetNames[sheet]}!`;
	}

	#formula(piece: Piece): Content {
		if (/^-?[0-9.]+(e[+-]?[0-9]+)?$/.test(piece.text)) return Number(piece.text);
		return `=${piece.text}`;
	}
}
