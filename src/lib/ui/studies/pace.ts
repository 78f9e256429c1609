/**
 * How long a study takes that plans anew at every point: measured on its first points, corrected by each that follows.
 * The very first are left out, since everything is fetched and warmed up for them.
 */
import type { Study } from '$lib/workbook/study-schema';

export interface Pace {
	/** Milliseconds. */
	readonly perPoint: number;
	/** Of the study that was measured. */
	readonly points: number;
}

/** Points and milliseconds between two marks, before a pace is told. */
const FEW = 3;
const SHORT = 250;

interface Mark {
	readonly done: number;
	readonly at: number;
}

export class PaceMeter {
	readonly #begun: number;
	#first: Mark | null = null;
	#points = 0;

	constructor(now: number) {
		this.#begun = now;
	}

	/** Null as long as too little has been seen. */
	mark(done: number, points: number, at: number): Pace | null {
		this.#points = points;
		this.#first ??= { done, at };
		const seen = done - this.#first.done;
		const took = at - this.#first.at;
		return seen < FEW || took < SHORT ? null : { perPoint: took / seen, points };
	}

	/** Of one that was over before a pace could be told: all that it took. */
	whole(at: number): Pace {
		const points = Math.max(1, this.#points);
		return { perPoint: (at - this.#begun) / points, points };
	}
}

/** The settings that make a point take longer or shorter, or be one of more. */
export function paceKey(study: Study): string {
	const { title: _, note: __, ran: ___, ...settings } = study;
	const { kind } = settings;
	return JSON.stringify({
		...settings,
		...(kind === 'break_even' && { target: null }),
		...(kind === 'risk' && { draws: null, seed: null, target: null })
	});
}

/** Milliseconds that a study takes from beginning to end. */
export const timeFor = (study: Study, { perPoint, points }: Pace): number =>
	perPoint * pointsOf(study, points);

/** How many points a study has: a risk study says so itself. */
export const pointsOf = (study: Study, measured: number): number =>
	study.kind === 'risk' ? study.draws : measured;
