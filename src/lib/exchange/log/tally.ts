/** What rows of one cell come to, row by row: nothing of them is kept. */
import type { LogSum } from '$lib/workbook/schema';

/** A sum that loses nothing to rounding on the way (Neumaier 1974). */
class Total {
	#sum = 0;
	#lost = 0;
	add(value: number): void {
		const next = this.#sum + value;
		this.#lost +=
			Math.abs(this.#sum) >= Math.abs(value) ? this.#sum - next + value : value - next + this.#sum;
		this.#sum = next;
	}
	get value(): number {
		return this.#sum + this.#lost;
	}
}

export class Tally {
	rows = 0;
	least = Infinity;
	most = -Infinity;
	/** Running mean and sum of squares about it (Welford 1962). */
	#mean = 0;
	#squares = 0;
	readonly #sum = new Total();
	readonly #by = new Total();

	/** `line` is the first that speaks of the cell. */
	constructor(readonly line: number) {}

	add(value: number, by: number): void {
		this.rows++;
		this.#sum.add(value);
		this.#by.add(by);
		this.least = Math.min(this.least, value);
		this.most = Math.max(this.most, value);
		const off = value - this.#mean;
		this.#mean += off / this.rows;
		this.#squares += off * (value - this.#mean);
	}

	get sum(): number {
		return this.#sum.value;
	}
	get by(): number {
		return this.#by.value;
	}

	/** Null where the rows do not give it: the deviation of a sample asks for two. */
	taken(take: LogSum['take']): number | null {
		switch (take) {
			case 'sum':
			case 'share':
				return this.sum;
			case 'count':
				return this.rows;
			case 'average':
				return this.sum / this.rows;
			case 'least':
				return this.least;
			case 'most':
				return this.most;
			case 'deviation':
				return this.rows < 2 ? null : Math.sqrt(this.#squares / (this.rows - 1));
		}
	}
}
