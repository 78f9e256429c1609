/** Lists of numbers in typed arrays that double when they are full. */

abstract class Growing<A extends Int32Array | Float64Array> {
	#array: A;
	#length = 0;

	constructor(array: A) {
		this.#array = array;
	}

	protected abstract allocate(length: number): A;

	get length(): number {
		return this.#length;
	}

	/** Adds a number and says at which place. */
	push(value: number): number {
		if (this.#length === this.#array.length) this.#reach(this.#length + 1);
		this.#array[this.#length] = value;
		return this.#length++;
	}

	/** 0 beyond the end. */
	at(place: number): number {
		return place < this.#length ? (this.#array[place] ?? 0) : 0;
	}

	/** Sets a place, also beyond the end: what lies between is 0. */
	set(place: number, value: number): void {
		if (place >= this.#array.length) this.#reach(place + 1);
		if (place >= this.#length) this.#length = place + 1;
		this.#array[place] = value;
	}

	finish(): A {
		const exact = this.allocate(this.#length);
		exact.set(this.#array.subarray(0, this.#length));
		return exact;
	}

	#reach(length: number): void {
		const larger = this.allocate(Math.max(length, 2 * this.#array.length));
		larger.set(this.#array);
		this.#array = larger;
	}
}

export class GrowingInts extends Growing<Int32Array> {
	constructor() {
		super(new Int32Array(256));
	}

	protected allocate(length: number): Int32Array {
		return new Int32Array(length);
	}
}

export class GrowingFloats extends Growing<Float64Array> {
	constructor() {
		super(new Float64Array(64));
	}

	protected allocate(length: number): Float64Array {
		return new Float64Array(length);
	}
}
