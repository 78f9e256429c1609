/**
 * Gathers what comes within one frame and hands it on together, just before the page is drawn: however
 * many answers an edit brings, the page is derived anew once for all of them.
 */
export class FrameBatch {
	#waiting: (() => void)[] = [];
	readonly #nextFrame: (done: () => void) => void;

	constructor(nextFrame: (done: () => void) => void = beforeDrawing) {
		this.#nextFrame = nextFrame;
	}

	add(act: () => void): void {
		this.#waiting.push(act);
		if (this.#waiting.length === 1) this.#nextFrame(() => this.handOn());
	}

	/** Without waiting for the frame. */
	handOn(): void {
		const acts = this.#waiting;
		this.#waiting = [];
		for (const act of acts) act();
	}
}

/** Calls back once what stands in the page now has been drawn, so that no other work delays the picture. */
export function afterDrawing(done: () => void): void {
	beforeDrawing(() => setTimeout(done));
}

/** A page that is not seen, or is hidden before its next frame, has no frames: then soon instead. */
function beforeDrawing(done: () => void): void {
	let called = false;
	const once = () => {
		if (called) return;
		called = true;
		done();
	};
	if (!document.hidden) requestAnimationFrame(once);
	setTimeout(once, document.hidden ? 0 : LONGEST_FRAME);
}

/** In milliseconds: several frames of a slow screen. */
const LONGEST_FRAME = 100;
