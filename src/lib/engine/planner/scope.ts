/**
 * Which axes run at a place in a formula: the quantity's own, and those that the aggregates around the place
 * gather. An aggregate without `over` collects what the places inside it turn out to need.
 */
import type { Variable } from './types';

export class Scope {
	readonly #own: Variable[] = [];
	readonly used = new Set<Variable>();

	constructor(
		readonly parent: Scope | null,
		/** Whether axes that run nowhere are gathered here. */
		readonly collects: boolean
	) {}

	get own(): readonly Variable[] {
		return this.#own;
	}

	add(variable: Variable): void {
		this.#own.push(variable);
	}

	/** The variable of that name, innermost first. */
	find(name: string): Variable | undefined {
		for (const scope of this.#outward()) {
			const found = scope.#own.find((variable) => variable.name === name);
			if (found) return found;
		}
		return undefined;
	}

	/** The innermost aggregate around that takes up axes which run nowhere. */
	get collector(): Scope | undefined {
		return this.#outward().find((scope) => scope.collects);
	}

	/** Remembers that something at this place depends on a variable. */
	use(variable: Variable): void {
		for (const scope of this.#outward()) scope.used.add(variable);
	}

	/** One bit for each variable that runs here, hidden ones included. */
	get mask(): number {
		let mask = 0;
		for (const scope of this.#outward())
			for (const variable of scope.#own) mask |= 1 << variable.slot;
		return mask;
	}

	/** This scope and those around it, innermost first. */
	#outward(): readonly Scope[] {
		return this.parent ? [this, ...this.parent.#outward()] : [this];
	}
}
