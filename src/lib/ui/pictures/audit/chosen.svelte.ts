/** Which decided case is looked at: the picture and what is entered below it show the same. */
import type { DecidedCase } from './audit';

class ChosenCase {
	#id = $state('');

	choose(id: string): void {
		this.#id = id;
	}

	/** The one chosen, else the last that was decided. */
	of(cases: readonly DecidedCase[]): string {
		return (cases.find(({ id }) => id === this.#id) ?? cases.at(-1))?.id ?? '';
	}
}
export const chosenCase = new ChosenCase();
