/** The review list of the open workbook, found in slices so that nobody who types waits for it. */
import type { Writing } from '$lib/engine/number-words';
import { inOrder, reviewSteps } from '$lib/review/review';
import type { Line } from '$lib/review/line';
import type { Workbook } from '$lib/workbook/schema';

/** Milliseconds of work before whoever waits has their turn. */
const SLICE = 8;

export class Reviewing {
	/** Null until it is found for the first time; then the last one until a new one is there. */
	lines = $state.raw<readonly Line[] | null>(null);
	readonly #writing: Writing;
	#timer: ReturnType<typeof setTimeout> | undefined;

	/** `writing`: how numbers stand in what it says. */
	constructor(writing: Writing) {
		this.#writing = writing;
	}

	/** Begins anew with this workbook; `template`: what it was begun from, once it is fetched. */
	look(workbook: Workbook, template: Workbook | null = null): void {
		this.stop();
		const steps = reviewSteps(workbook, this.#writing, template);
		const found: Line[] = [];
		const go = () => {
			const until = performance.now() + SLICE;
			while (performance.now() < until) {
				const step = steps.next();
				if (step.done) {
					this.lines = inOrder(found);
					return;
				}
				found.push(...step.value);
			}
			this.#timer = setTimeout(go);
		};
		go();
	}

	stop(): void {
		clearTimeout(this.#timer);
	}
}
