/** From nothing to a total, step by step: each bar begins where the one before it ends. */
import type { Drawing, Mark } from './paper';

export interface Step {
	readonly label: string;
	readonly value: number;
	/** As it is written. */
	readonly text: string;
}

const FRAME = { width: 480, left: 150, right: 60, row: 16 };

export function waterfall(steps: readonly Step[], total: Step): Drawing {
	const ends: number[] = [0];
	for (const { value } of steps) ends.push(ends.at(-1)! + value);
	const [low, high] = [Math.min(...ends, total.value), Math.max(...ends, total.value)];
	const x = (value: number) =>
		FRAME.left + ((value - low) / (high - low || 1)) * (FRAME.width - FRAME.left - FRAME.right);
	const row = (
		at: number,
		from: number,
		to: number,
		{ label, text }: Step,
		isTotal: boolean
	): Mark[] => [
		{ kind: 'text', x: FRAME.left - 8, y: at * FRAME.row + 11, text: label, at: 'end' },
		{
			...{ kind: 'bar', x: Math.min(x(from), x(to)), y: at * FRAME.row + 3 },
			...{ width: Math.max(0.5, Math.abs(x(to) - x(from))), height: FRAME.row - 6 },
			ink: isTotal ? 'ink' : to < from ? 'bad' : 'good'
		},
		{ kind: 'text', x: Math.max(x(from), x(to)) + 5, y: at * FRAME.row + 11, text }
	];
	const joins = steps.map((_, at): Mark => ({
		kind: 'line',
		ink: 'soft',
		width: 0.5,
		points: [
			[x(ends[at + 1]!), (at + 1) * FRAME.row - 3],
			[x(ends[at + 1]!), (at + 1) * FRAME.row + 3]
		]
	}));
	const zero: Mark = {
		kind: 'line',
		ink: 'ink',
		width: 0.8,
		points: [
			[x(0), 0],
			[x(0), (steps.length + 1) * FRAME.row]
		]
	};
	return {
		width: FRAME.width,
		height: (steps.length + 1) * FRAME.row + 4,
		marks: [
			zero,
			...steps.flatMap((step, at) => row(at, ends[at]!, ends[at + 1]!, step, false)),
			...joins,
			...row(steps.length, 0, total.value, total, true)
		]
	};
}
