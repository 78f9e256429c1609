/** Which lines somebody has ticked off. A tick holds for what the line spoke of then, and for nothing else. */
import { hashOfText } from '$lib/workbook/hash';
import type { Tick, Workbook } from '$lib/workbook/schema';
import { lineId, type Line } from './line';

export interface Reviewed {
	readonly line: Line;
	readonly id: string;
	/** Null where it is open. */
	readonly tick: Tick | null;
	/** It was ticked off once, and what it speaks of is another thing now. */
	readonly isBack: boolean;
}

export function withTicks({ reviewed }: Workbook, lines: readonly Line[]): Reviewed[] {
	const ticks = new Map((reviewed ?? []).map((tick) => [tick.id, tick]));
	return lines.map((line) => {
		const id = lineId(line);
		const tick = ticks.get(id);
		const holds = tick !== undefined && tick.of === hashOfText(line.speaksOf);
		return { line, id, tick: holds ? tick : null, isBack: tick !== undefined && !holds };
	});
}

export const tickOf = (line: Line, by: string, reason: string): Tick => ({
	...{ id: lineId(line), of: hashOfText(line.speaksOf), by, reason }
});
