/** Formulas that are due, taken in the plan's order: what is run asks for cells further on alone. */
import type { Plan } from '$lib/engine/plan';
import { ranksIn } from './reach';

export class Due {
	readonly #order: Int32Array;
	readonly #ranks: Int32Array;
	/** By rank, what is still to be done there; 0 for nothing. */
	readonly #due: Uint8Array;
	#first: number;
	#last = -1;

	constructor(plan: Plan) {
		this.#order = plan.order;
		this.#ranks = ranksIn(plan);
		this.#due = new Uint8Array(plan.order.length);
		this.#first = plan.order.length;
	}

	isFormula(cell: number): boolean {
		return this.#ranks[cell]! >= 0;
	}

	/** Of two things asked of one formula the larger holds; an input is never due. */
	ask(cell: number, what: number): void {
		const rank = this.#ranks[cell]!;
		if (rank < 0) return;
		if (this.#due[rank]! < what) this.#due[rank] = what;
		if (rank < this.#first) this.#first = rank;
		if (rank > this.#last) this.#last = rank;
	}

	/** Hands over each, with what was asked of it, and is empty again. */
	take(each: (cell: number, what: number) => void): void {
		for (let rank = this.#first; rank <= this.#last; rank++) {
			const what = this.#due[rank]!;
			if (what === 0) continue;
			this.#due[rank] = 0;
			each(this.#order[rank]!, what);
		}
		this.#first = this.#order.length;
		this.#last = -1;
	}
}
