/** Ticking lines of the review list off, and opening them again. Nothing that is computed changes. */
import { tickSchema } from '../review-schema';
import type { Tick, Workbook } from '../schema';
import { edited, type Command, type Edit } from './command';
import { shapeRefusal } from './refusal';

type SetTicks = Extract<Command, { readonly kind: 'set_ticks' }>;

export function setTicks(workbook: Workbook, { ticks }: SetTicks): Edit {
	const { reviewed, ...rest } = workbook;
	const next = new Map<string, Tick>((reviewed ?? []).map((tick) => [tick.id, tick]));
	for (const tick of ticks) {
		if (!('of' in tick)) next.delete(tick.id);
		else {
			const bad = shapeRefusal(tickSchema, tick, 'The line');
			if (bad) return bad;
			next.set(tick.id, tick);
		}
	}
	// The list goes with its last line, so that opening the only one leaves the file as it was.
	return edited(next.size > 0 ? { ...rest, reviewed: [...next.values()] } : rest);
}
