/** A piece on its way over the board: by pointer, by touch after a moment's hold, or by keys. */
import type { Piece, Spot } from './moving';

/** Pixels that a pointer goes before it drags; milliseconds that a finger rests before it does. */
const FAR = 5;
const RESTING = 350;

interface Host {
	/** The place on the board under a point; null outside. */
	spotAt(x: number, y: number): Spot | null;
	drop(piece: Piece, to: Spot): void;
}

export class Carrying {
	readonly #host: Host;
	/** What is on its way; null where nothing is. */
	piece = $state.raw<Piece | null>(null);
	over = $state.raw<Spot | null>(null);
	/** Where the pointer is; null with keys. */
	point = $state.raw<{ readonly x: number; readonly y: number } | null>(null);
	/** Whether a click that follows is the end of a drag. */
	hasDragged = false;

	constructor(host: Host) {
		this.#host = host;
	}

	/** A pointer goes down on a piece. */
	press(event: PointerEvent, piece: Piece): void {
		if (event.button !== 0) return;
		this.hasDragged = false;
		const { clientX, clientY, pointerId, pointerType } = event;
		const isTouch = pointerType === 'touch';
		const begin = (x: number, y: number) => {
			this.piece = piece;
			this.hasDragged = true;
			go(x, y);
		};
		const go = (x: number, y: number) => {
			this.point = { x, y };
			this.over = this.#host.spotAt(x, y);
		};
		const timer = isTouch ? setTimeout(() => begin(clientX, clientY), RESTING) : undefined;
		const end = (event: PointerEvent | KeyboardEvent | null) => {
			clearTimeout(timer);
			for (const [name, listener] of listeners) window.removeEventListener(name, listener);
			const { piece: carried, over } = this;
			this.leave();
			// The click that ends a drag comes before any timer.
			setTimeout(() => (this.hasDragged = false));
			if (event?.type === 'pointerup' && carried && over) this.#host.drop(carried, over);
		};
		const listeners = [
			[
				'pointermove',
				(event: PointerEvent) => {
					if (event.pointerId !== pointerId) return;
					const { clientX: x, clientY: y } = event;
					if (this.piece) return go(x, y);
					if (Math.hypot(x - clientX, y - clientY) < FAR) return;
					// A finger that moves at once scrolls the page.
					if (isTouch) end(null);
					else begin(x, y);
				}
			],
			['pointerup', (event: PointerEvent) => event.pointerId === pointerId && end(event)],
			['pointercancel', (event: PointerEvent) => event.pointerId === pointerId && end(event)],
			['keydown', (event: KeyboardEvent) => event.key === 'Escape' && end(event)],
			// While something is carried the page stays where it is.
			['touchmove', (event: TouchEvent) => this.piece && event.preventDefault()]
		] as unknown as [string, EventListener][];
		for (const [name, listener] of listeners)
			window.addEventListener(name, listener, { passive: false });
	}

	/** Taken up with a key. */
	take(piece: Piece): void {
		this.piece = piece;
		this.over = piece.from;
	}

	leave(): void {
		this.piece = this.over = this.point = null;
	}

	putDown(): void {
		const { piece, over } = this;
		this.leave();
		if (piece && over) this.#host.drop(piece, over);
	}
}
