/**
 * Aggregates that do not depend on everything that runs around them are computed once, in a cell of their own:
 * `layer_mass / SUM(layer_mass over layer)` sums once for each product, not for each layer. The same
 * aggregate in two formulas is one. So the plan grows with the values, not with their products.
 */
import type { Context } from './context';
import type { Aggregate, AxisIndex, Typed } from './types';

/** Tables beyond this are not worth their memory. */
const PLACE_LIMIT = 4_000_000;

export interface Lift {
	/** The variables it depends on, in the order of the table. */
	readonly slots: readonly number[];
	readonly sizes: readonly number[];
	/** Node + 1 by row-major place of the members; 0: not lowered yet. */
	readonly table: Int32Array;
}

export class Lifts {
	readonly #tables = new Map<string, Int32Array>();
	readonly #known = new Map<Aggregate, Lift | null>();

	constructor(readonly context: Context) {}

	/** Where the aggregate's values are kept, or null where it stands in its formula as it is. */
	of(aggregate: Aggregate): Lift | null {
		const known = this.#known.get(aggregate);
		if (known !== undefined) return known;
		const lift = this.#make(aggregate);
		this.#known.set(aggregate, lift);
		return lift;
	}

	#make(aggregate: Aggregate): Lift | null {
		const running = aggregate.scope.mask;
		if ((aggregate.free & running) === running) return null;
		const writer = new SignatureWriter(aggregate.free);
		const signature = writer.write(aggregate);
		const slots = [...writer.free.keys()];
		const sets = [...writer.free.values()];
		const sizes = sets.map((set) => this.context.sets.get(set)?.ids.length ?? 0);
		const places = sizes.reduce((product, size) => product * size, 1);
		if (places > PLACE_LIMIT) return null;
		const key = `${sets.join(' ')} ${signature}`;
		const table = this.#tables.get(key) ?? new Int32Array(places);
		this.#tables.set(key, table);
		return { slots, sizes, table };
	}
}

/** Writes what an aggregate computes, its variables numbered as they appear. */
class SignatureWriter {
	/** Set by slot, in order of appearance. */
	readonly free = new Map<number, string>();
	readonly #names = new Map<number, string>();

	constructor(readonly mask: number) {}

	write(typed: Typed): string {
		switch (typed.kind) {
			case 'constant':
				return `${typed.value}`;
			case 'variable':
				return this.#variable(typed.slot, typed.type.kind === 'member' ? typed.type.set : '');
			case 'member-number':
				return `${typed.which}(${this.write(typed.of)})`;
			case 'read':
				return this.#read(typed);
			case 'unary':
				return `u${typed.op}(${this.write(typed.of)})`;
			case 'binary':
				return `b${typed.op}(${this.write(typed.left)},${this.write(typed.right)})`;
			case 'list':
				return `l${typed.op}(${typed.items.map((item) => this.write(item)).join()})`;
			case 'conversion':
				return `c${typed.factor}(${this.write(typed.of)})`;
			case 'aggregate':
				return this.#aggregate(typed);
			case 'broken':
				return '?';
		}
	}

	#aggregate(typed: Aggregate): string {
		const terms = typed.terms.map(({ gathered, value, where, paired, direct }) => {
			const over = gathered.map((variable) => {
				this.#names.set(variable.slot, `g${this.#names.size}`);
				return `${this.#names.get(variable.slot)}:${variable.set}`;
			});
			// What must exist may be more than what the value reads, where a branch was dropped.
			const exists = direct.map((read) => this.#read(read));
			const filter = where ? this.write(where) : '';
			return `{${over.join()}|${this.write(value)}|${filter}|${exists.join()}|${paired ? this.write(paired) : ''}}`;
		});
		const rest = [...typed.parameters, ...(typed.otherwise ? [typed.otherwise] : [])];
		const places = typed.positions === null ? '' : 'p';
		return `a${typed.op}${places}[${terms.join('')}](${rest.map((typed) => this.write(typed)).join()})`;
	}

	#read({ quantity, indices, scenario, otherwise }: Extract<Typed, { kind: 'read' }>): string {
		const axes = indices.map((index, at) => this.#index(index, quantity.axes[at]?.set ?? ''));
		const end = otherwise ? ` else ${this.write(otherwise)}` : '';
		return `r${quantity.index}.${scenario}[${axes.join()}${end}]`;
	}

	#index(index: AxisIndex, set: string): string {
		if (index.kind === 'member') return `m${index.ordinal}`;
		if (index.kind === 'choice') return `(${this.write(index.of)})`;
		const variable = this.#variable(index.slot, set);
		return index.kind === 'variable' ? variable : `${variable}+${index.offset}`;
	}

	#variable(slot: number, set: string): string {
		const known = this.#names.get(slot);
		if (known !== undefined) return known;
		const name = `f${this.#names.size}`;
		this.#names.set(slot, name);
		if ((this.mask & (1 << slot)) !== 0) this.free.set(slot, set);
		return name;
	}
}
