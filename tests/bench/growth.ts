/**
 * How opening, editing and memory grow with the plant: 1, 10 and 100 times the demo's products, each in a
 * process of its own (`one-size.ts`). The exponents are of the processor's time against the values that
 * the work computes.
 */
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { exponent } from './measure';
import { heading, line } from './print';
import { EDITS } from './shipped';
import type { SizeFigures, Spent } from './size-figures';

const SIZES = [1, 10, 100];
const GOAL = 1.05;

const found = SIZES.map(figuresOf);

heading("Growth: the demo's products 1, 10 and 100 times, all scenarios");
for (const sizeFigures of found) {
	line(
		`${sizeFigures.times} times`,
		`${sizeFigures.values} values held, ${sizeFigures.nodes} nodes, ${sizeFigures.problems} problems; ${sizeFigures.second}`
	);
	line('', `${spent('plan', sizeFigures.plan)}, ${spent('first pass', sizeFigures.pass)}`);
	line('', sizeFigures.edits.map((edit, at) => spent(EDITS[at]?.title ?? '', edit)).join(', '));
	line('', `memory ${(sizeFigures.bytes / 1e6).toFixed(1)} MB`);
}
const values = found.map((sizeFigures) => sizeFigures.values);
fit('plan', values, (sizeFigures) => sizeFigures.plan.cpu);
fit('first pass', values, (sizeFigures) => sizeFigures.pass.cpu);
EDITS.forEach((edit, at) =>
	fit(
		`edit: ${edit.title}`,
		found.map((sizeFigures) => sizeFigures.edits[at]?.values ?? NaN),
		(sizeFigures) => sizeFigures.edits[at]?.cpu ?? NaN
	)
);
fit('memory', values, (sizeFigures) => sizeFigures.bytes);

function figuresOf(times: number): SizeFigures {
	const child = spawnSync(
		process.execPath,
		['--expose-gc', join(dirname(process.argv[1] ?? ''), 'one-size.js'), String(times)],
		{ encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] }
	);
	if (child.status !== 0) throw new Error(`The plant of ${times} times the products did not open.`);
	return JSON.parse(child.stdout) as SizeFigures;
}

function spent(what: string, { ms, cpu }: Spent): string {
	return `${what} ${ms.toFixed(1)} ms (processor ${cpu.toFixed(1)})`;
}

function fit(what: string, x: readonly number[], of: (sizeFigures: SizeFigures) => number): void {
	const power = exponent(x, found.map(of));
	const verdict = power <= GOAL ? '' : ': GROWS FASTER';
	line(what, `values^${power.toFixed(2)} (goal: ${GOAL} or less)${verdict}`);
}
