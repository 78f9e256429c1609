/**
 * What planning remembers from one scenario, member and edit to the next: the solver's bases, to start from, and the
 * answers themselves, for linear programmes that are alike in every number.
 */
import { digestOf, digestOfNumbers } from './digest';
import type { LinearProgramme } from './linear';
import { solve, type SolveOutcome, type Bases, type SolveSettings } from './solve';
import type { Solver } from './highs';

const MOST_ANSWERS = 400;

export class Memory {
	readonly #bases = new Map<string, Bases>();
	readonly #answers = new Map<string, SolveOutcome>();

	/** `places`: what the answer is of, then of what its bases may be taken instead, nearest first. */
	solve(
		solver: Solver,
		programme: LinearProgramme,
		places: readonly string[],
		settings: Omit<SolveSettings, 'bases'>
	): SolveOutcome {
		const { ties, priced = [], gap = 0 } = settings;
		const key = [
			digestOf([programme]),
			digestOfNumbers([ties?.near ?? [], ties?.weight ?? [], priced, [gap, Number(ties?.inside)]])
		].join();
		const known = this.#answers.get(key);
		const answer = known ?? solve(solver, programme, { ...settings, bases: this.#near(places) });
		if (answer.status === 'optimal' && answer.bases) this.#bases.set(places[0]!, answer.bases);
		// What took too long may be found at the next attempt.
		if (answer.status === 'optimal' || answer.status === 'infeasible') this.#keep(key, answer);
		return answer;
	}

	#near(places: readonly string[]): Bases | undefined {
		for (const place of places) {
			const bases = this.#bases.get(place);
			if (bases) return bases;
		}
		return undefined;
	}

	/** The newest last; the oldest are given up. */
	#keep(key: string, answer: SolveOutcome): void {
		this.#answers.delete(key);
		this.#answers.set(key, answer);
		for (const oldest of this.#answers.keys()) {
			if (this.#answers.size <= MOST_ANSWERS) return;
			this.#answers.delete(oldest);
		}
	}
}
