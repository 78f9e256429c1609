/** What a component needs to be drawn in a test where nothing is computed and no size ever changes. */
import type { Engine } from '$lib/browser/engine-client';

/** Hears everything and answers nothing. */
export const quietEngine: Engine = {
	open: () => {},
	apply: () => {},
	why: () => Promise.resolve(null),
	tryQuantity: () => Promise.resolve(null),
	lend: () => {},
	close: () => {}
};

/** Without a layout no size ever changes. */
export class StillObserver implements ResizeObserver {
	observe() {}
	unobserve() {}
	disconnect() {}
}
