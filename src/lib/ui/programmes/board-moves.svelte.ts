/** Pieces moved on the board of a plan: taken up and put down by pointer, touch and keys; what was moved last. */
import { inputAt } from '$lib/workbook/scenario';
import type { Session } from '../session.svelte';
import type { Board } from './board';
import { Carrying } from './carrying.svelte';
import { holdAll, releaseAll } from './holding';
import {
	entriesFor,
	landingAt,
	pieceAt,
	pieceText,
	placeText,
	type Landing,
	type Piece,
	type Spot
} from './moving';
import { amountText } from './numbers';
import { texts } from './texts';

interface Ground {
	readonly board: Board;
	readonly scenario: string;
	/** The set whose members stand across. */
	readonly across: string;
	readonly editable: boolean;
	/** What the plan brings; NaN where there is none. */
	readonly objective: number;
}

interface Moved {
	readonly piece: Piece;
	readonly entries: ReturnType<typeof entriesFor>;
	readonly words: string;
	/** What the plan brought before. */
	readonly before: number;
}

export class BoardMoves {
	readonly #session: Session;
	readonly #ground: () => Ground;
	readonly carrying: Carrying;
	/** For those who do not see the board. */
	said = $state('');
	problem = $state('');
	#moved = $state.raw<Moved | null>(null);

	/** `ground`: the board as it is now; `spotAt`: the place on it under a point. */
	constructor(
		session: Session,
		ground: () => Ground,
		spotAt: (x: number, y: number) => Spot | null
	) {
		this.#session = session;
		this.#ground = ground;
		this.carrying = new Carrying({ spotAt, drop: (piece, to) => this.#drop(piece, to) });
	}

	/** "600 m B of L1, February". */
	textOf(piece: Piece): string {
		return `${this.#amount(piece)} ${pieceText(this.#ground().board, piece)}`;
	}

	/** While something is carried: whether it may be put down in a place. */
	mayLand(resource: number, column: number): 'may' | 'may-not' | null {
		const { piece } = this.carrying;
		return piece && (this.#landing(piece, { resource, column }).ok ? 'may' : 'may-not');
	}

	/** Where what is carried would come to stand, or why it cannot. */
	get where(): { readonly words: string; readonly isRefused: boolean } {
		const { piece, over } = this.carrying;
		if (!piece || !over) return { words: '', isRefused: false };
		const found = this.#landing(piece, over);
		return found.ok
			? { words: texts.putDown(this.#amount(piece), this.#place(over)), isRefused: false }
			: { words: found.because, isRefused: true };
	}

	press(event: PointerEvent, from: Spot, row: number): void {
		const { board, editable } = this.#ground();
		const piece = editable ? pieceAt(board, from, row) : null;
		if (piece) this.carrying.press(event, piece);
	}

	/** A key in a place of the board; whether it took something up, put it down or left it. */
	key(event: KeyboardEvent, at: Spot, row: number): boolean {
		const isM =
			event.key.toLowerCase() === 'm' && !event.ctrlKey && !event.metaKey && !event.altKey;
		const { carrying } = this;
		if (!carrying.piece) return isM && this.#take(at, row);
		if (event.key === 'Escape') {
			carrying.leave();
			this.said = texts.putBack;
		} else if (event.key === 'Enter' || isM) {
			carrying.over = at;
			carrying.putDown();
		} else return false;
		return true;
	}

	/** Keys have led to a place, with what is carried. */
	arrive(at: Spot): void {
		if (!this.carrying.piece || this.carrying.point) return;
		this.carrying.over = at;
		this.said = this.where.words;
	}

	/** What was moved last, while both figures are held as they were put. */
	get moved(): Moved | null {
		const { workbook } = this.#session;
		const moved = this.#moved;
		if (!moved || !workbook) return null;
		const { scenario } = this.#ground();
		const { name } = moved.piece.quantity.quantity;
		const isHeld = moved.entries.every(
			({ at, value }) => inputAt(workbook, scenario, name, at).value === value
		);
		return isHeld ? moved : null;
	}

	letGo(): void {
		const { moved } = this;
		if (!moved) return;
		const { scenario } = this.#ground();
		const cells = moved.entries.map(({ at }) => at);
		this.problem = releaseAll(this.#session, scenario, moved.piece.quantity, cells);
	}

	#take(from: Spot, row: number): boolean {
		const { board, editable } = this.#ground();
		if (!editable) return false;
		const piece = pieceAt(board, from, row);
		this.problem = piece ? '' : texts.nothingToMove;
		if (piece) {
			this.carrying.take(piece);
			this.said = texts.taken(this.textOf(piece));
		}
		return true;
	}

	#drop(piece: Piece, to: Spot): void {
		const found = this.#landing(piece, to);
		this.problem = '';
		if (!found.ok) {
			const isBack = to.resource === piece.from.resource && to.column === piece.from.column;
			if (!isBack) this.problem = found.because;
			this.said = texts.putBack;
			return;
		}
		const { scenario, objective } = this.#ground();
		const words = texts.moved(this.textOf(piece), this.#place(to));
		const entries = entriesFor(piece, found);
		this.problem = holdAll(this.#session, scenario, piece.quantity, entries);
		if (!this.problem) this.#moved = { piece, entries, words, before: objective };
	}

	#landing(piece: Piece, to: Spot): Landing {
		const { layout } = this.#session;
		const { board, scenario, across } = this.#ground();
		const results = this.#session.results.get(scenario);
		if (!layout || !results) return { ok: false, because: '' };
		return landingAt({ layout, results }, board, across, piece, to);
	}

	#amount({ amount, quantity }: Piece): string {
		return amountText(amount, quantity.quantity.unit ?? '1', this.#session.locale);
	}

	#place({ resource, column }: Spot): string {
		const { resources, columns } = this.#ground().board;
		return placeText(resources[resource] ?? { label: '' }, columns[column]?.label ?? '');
	}
}
