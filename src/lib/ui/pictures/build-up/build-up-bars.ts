/**
 * Where the bars of the cost build-up stand: data for Chart.js on a vertical axis in pixels, so that
 * bars and the rows of the table beside them meet. A part without a value is left out, never drawn as 0.
 */
import type { BuildUp, Cost, PartRole } from './build-up';
import type { Reading } from '../../figure/read';

/** Heights in pixels: of a row, from its top to the middle of each bar, and of the bars. */
export interface BarFrame {
	readonly row: number;
	readonly base: number;
	readonly hand: number;
	readonly baseBar: number;
	readonly handBar: number;
}

export interface BarSet {
	readonly label: string;
	readonly role: PartRole;
	readonly stack: 'base' | 'hand';
	readonly thickness: number;
	readonly points: { readonly x: number; readonly y: number }[];
}

/** Names stand at the side where there is room, else above the bar. */
export function barFrame(wide: boolean, withHand: boolean): BarFrame {
	const top = wide ? 0 : 46;
	if (!withHand) return { row: 34 + top, base: 17 + top, hand: 17 + top, baseBar: 18, handBar: 0 };
	return { row: 44 + top, base: 15 + top, hand: 31 + top, baseBar: 17, handBar: 10 };
}

export function barSets(buildUp: BuildUp, frame: BarFrame): BarSet[] {
	const stacks = buildUp.handTitle === null ? (['base'] as const) : (['base', 'hand'] as const);
	return stacks.flatMap((stack) =>
		buildUp.parts.map(({ label, role }, part) => ({
			...{ label, role, stack },
			thickness: stack === 'base' ? frame.baseBar : frame.handBar,
			points: buildUp.rows.flatMap((row, i) => {
				const cost: Cost | null = row[stack];
				const reading = cost?.parts[part];
				if (!cost || gapOf(cost) || reading?.kind !== 'value') return [];
				return [{ x: reading.value, y: i * frame.row + frame[stack] }];
			})
		}))
	);
}

/** From the lowest to the highest end of a bar; parts that give money back reach below zero. */
export function barRange(buildUp: BuildUp): { low: number; high: number } {
	let low = 0;
	let high = 0;
	for (const row of buildUp.rows)
		for (const cost of [row.base, row.hand]) {
			if (!cost || gapOf(cost)) continue;
			const values = cost.parts.flatMap((part) => (part.kind === 'value' ? [part.value] : []));
			const sum = (sign: number) =>
				values.filter((value) => value * sign > 0).reduce((so, value) => so + value, 0);
			low = Math.min(low, sum(-1));
			high = Math.max(high, sum(1));
		}
	return { low, high };
}

/** The row that a height belongs to. */
export const rowAt = (frame: BarFrame, y: number) => Math.floor(y / frame.row);

/** The part or total for want of which a bar would say too little, so that none is drawn. */
export function gapOf({ parts, total }: Cost): Reading | undefined {
	return [...parts, total].find((reading) => reading.kind !== 'value' && reading.kind !== 'absent');
}

/** Instead of a bar. */
export function gapText(cost: Cost): string {
	const gap = gapOf(cost);
	if (!gap || gap.kind === 'pending') return '';
	return `no bar: ${gap.because || 'a part is not entered'}`;
}
