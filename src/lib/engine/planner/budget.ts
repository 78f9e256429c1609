/**
 * What one quantity may cost while the plan is made. A formula beyond it is refused with a remedy, so that no
 * workbook can keep the plan from being made, nor fill the memory.
 */
import type { NodeStore } from './node-store';

/** Nodes and list entries that one quantity may cost. */
const NODE_LIMIT = 2_000_000;

/** Combinations of members looked at, and pieces of the formula put into nodes for each, kept or not. */
const WORK_LIMIT = 10_000_000;

/** Options of all its choices: each is a value that the cell may read. */
const OPTION_LIMIT = 2_000_000;

export class Budget {
	work = 0;
	options = 0;
	#size = NODE_LIMIT;

	constructor(readonly store: NodeStore) {}

	/** Begins anew, for the next quantity. */
	start(): void {
		this.#size = this.store.size + NODE_LIMIT;
		this.work = 0;
		this.options = 0;
	}

	isSpent(): boolean {
		return this.store.size > this.#size || this.work > WORK_LIMIT || this.options > OPTION_LIMIT;
	}

	/** What was too much, and the remedy. */
	why(name: string): string {
		const remedy =
			'gather in a quantity of its own with fewer sets, or let a relation or a fixed condition leave pairs out.';
		if (this.options > OPTION_LIMIT)
			return `${name} has more than ${said(OPTION_LIMIT)} options to choose from, all its members taken together: mark the choice as fixed, or choose in a quantity with fewer members.`;
		if (this.work > WORK_LIMIT)
			return `${name} looks at too many combinations of members (more than ${said(WORK_LIMIT)} steps before anything is computed): ${remedy}`;
		return `${name} takes more than ${said(NODE_LIMIT)} steps to compute: ${remedy}`;
	}
}

const said = (limit: number) => limit.toLocaleString('en');
