/** What a component needs to be drawn in a test where nothing is computed and no size ever changes. */
import type { Engine, EngineEvents } from '$lib/browser/engine-client';
import { Session } from '$lib/ui/session.svelte';
import type { Workbook } from '$lib/workbook/schema';

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

/** A session with this workbook open, to be told by hand what an engine would tell it. */
export function toldSession(workbook: Workbook): {
	readonly session: Session;
	readonly engine: EngineEvents;
} {
	let engine: EngineEvents | null = null;
	const session = new Session((heard) => {
		engine = heard;
		return quietEngine;
	}, 'en');
	session.open(workbook);
	return { session, engine: engine! };
}
