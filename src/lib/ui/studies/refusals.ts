/**
 * Fields of a study's settings whose value was refused: it stands in the form, but not in the study. They are
 * marked, and forgotten once they are changed, gone, or hold something else (after undo, say).
 */
export interface Field {
	readonly value: string;
	readonly isConnected: boolean;
	setAttribute(name: string, value: string): void;
}

export class Refusals<F extends Field> {
	/** With what was in it when it was refused. */
	readonly #refused = new Map<F, string>();
	#changing: F | null = null;

	/** A field that is being changed, or null where a button is pressed. */
	changes(field: F | null): void {
		this.#changing = field;
		if (field) this.#forget(field);
	}

	/** The change at hand is refused. */
	refuse(): void {
		if (!this.#changing) return;
		this.#refused.set(this.#changing, this.#changing.value);
		this.#changing.setAttribute('aria-invalid', 'true');
	}

	/** The fields whose refused value still stands, the oldest first. */
	standing(): F[] {
		for (const [field, value] of this.#refused)
			if (!field.isConnected || field.value !== value) this.#forget(field);
		return [...this.#refused.keys()];
	}

	#forget(field: F): void {
		if (this.#refused.delete(field)) field.setAttribute('aria-invalid', 'false');
	}
}
