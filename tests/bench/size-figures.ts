/**
 * What `one-size.ts` reports of one size of plant, and `one-opening.ts` of one opening; times in milliseconds. `cpu` is what the processor spent,
 * which is what growth is judged by: other programs' share of the machine does not count in it.
 */
export interface Spent {
	readonly ms: number;
	readonly cpu: number;
}

export interface EditFigures extends Spent {
	/** The values of all scenarios that follow from it. */
	readonly values: number;
}

export interface SizeFigures {
	/** How many times the demo's products. */
	readonly times: number;
	/** The values held by all scenarios: the base's whole, of the others what their changes reach. */
	readonly values: number;
	readonly nodes: number;
	readonly problems: number;
	/** What the second engine would check of it, in words. */
	readonly second: string;
	/** Once the code is warm: the plan, and the values of all scenarios. */
	readonly plan: Spent;
	readonly pass: Spent;
	/** Per edit of the list in `shipped.ts`. */
	readonly edits: readonly EditFigures[];
	/** Held by the open model, all scenarios answered. */
	readonly bytes: number;
}

/** One after the other: the plan, the base's values, those of all other scenarios. */
export interface Opening {
	readonly plan: number;
	readonly base: number;
	readonly rest: number;
}
