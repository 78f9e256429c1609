/** First open: when the base's numbers are there, and when those of all scenarios, in fresh processes. */
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { median } from './measure';
import { heading, line, ratio } from './print';
import type { Opening } from './size-figures';

const TIMES = 5;

const openings = Array.from({ length: TIMES }, () => {
	const child = spawnSync(
		process.execPath,
		[join(dirname(process.argv[1] ?? ''), 'one-opening.js')],
		{
			encoding: 'utf8',
			stdio: ['ignore', 'pipe', 'inherit']
		}
	);
	if (child.status !== 0) throw new Error('The demo did not open.');
	return JSON.parse(child.stdout) as Opening;
});
const middle = (part: (opening: Opening) => number) => median(openings.map(part));
const [plan, base, all] = [
	middle((opening) => opening.plan),
	middle((opening) => opening.plan + opening.base),
	middle((opening) => opening.plan + opening.base + opening.rest)
];
heading(`First open, the middle of ${TIMES} fresh processes`);
line('plan', `${plan.toFixed(0)} ms`);
line("the base's numbers", `after ${base.toFixed(0)} ms`);
line('all scenarios', `after ${all.toFixed(0)} ms: ${ratio(all / base)} the base's`);
