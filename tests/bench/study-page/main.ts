/** A page that runs a study as the app's screens do, shows how far it is, and notes the longest task of its own thread. */
import { runStudy } from '$lib/browser/run-study';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';

export interface Watched {
	readonly ms: number;
	/** Milliseconds of the longest task over 50 ms on the page's own thread; 0: there was none. */
	readonly longest: number;
	readonly reports: number;
	/** Null: it ran; else why not. */
	readonly problem: string | null;
	readonly errors: number;
	/** The processor cores that the browser names. */
	readonly cores: number;
}

/** Tasks beyond 50 ms, as the browser itself reports them. */
const long: number[] = [];
new PerformanceObserver((list) => {
	for (const entry of list.getEntries()) long.push(entry.duration);
}).observe({ type: 'longtask' });

async function watchStudy(workbook: Workbook, study: Study): Promise<Watched> {
	long.length = 0;
	let reports = 0;
	const start = performance.now();
	const answer = await runStudy(study, workbook, {
		onprogress: ({ phase, done, of }) => {
			reports++;
			document.querySelector('#progress')!.textContent = `${phase} ${done} of ${of}`;
		}
	});
	const ms = performance.now() - start;
	await new Promise((resume) => setTimeout(resume, 100));
	return {
		ms,
		longest: Math.max(0, ...long),
		reports,
		problem: answer.ok ? null : answer.problem.message,
		errors: answer.ok && answer.value.kind === 'risk' ? answer.value.errors : 0,
		cores: navigator.hardwareConcurrency
	};
}

Object.assign(window, { watchStudy });
