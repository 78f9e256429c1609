/**
 * The second engine, off the page's thread: follows every edit in cells of its own and says how many of
 * the first engine's values it finds too. Its work is cut into steps, so that a newer workbook ends an
 * older one's.
 */
import { buildPlan } from '$lib/engine/planner/plan';
import type { Agreement } from '$lib/engine/results';
import { Verifier } from '$lib/engine/second/verifier';
import { applyCommand } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';
import type { FromVerifier, ToVerifier } from './engine-messages';

let verifier: Verifier | null = null;
let workbook: Workbook | null = null;
/** What is still to be done, oldest first. */
let queue: ToVerifier[] = [];
let working = false;

const say = (message: FromVerifier) => self.postMessage(message);
const BUSY: Agreement = {
	compared: 0,
	agreeing: 0,
	notCompared: [],
	sample: null,
	disagreements: [],
	busy: true
};

const pause = () => new Promise((resume) => setTimeout(resume));
/** How long it may work before it looks for messages. */
const TIME_SLICE_MS = 40;

/** Runs to the end, with pauses; gives up when another workbook is waiting. */
async function run(steps: Generator<void>): Promise<boolean> {
	let since = performance.now();
	while (!steps.next().done) {
		if (performance.now() - since < TIME_SLICE_MS) continue;
		await pause();
		since = performance.now();
		if (queue.some((message) => message.kind === 'open')) return false;
	}
	return true;
}

async function take(message: ToVerifier): Promise<void> {
	if (message.kind === 'open') {
		verifier?.destroy();
		verifier = null;
		say({ kind: 'agreement', revision: message.revision, agreement: BUSY });
		workbook = message.workbook;
		const opened = Verifier.open(workbook, buildPlan(workbook));
		if (await run(opened.build())) verifier = opened;
		else opened.destroy();
	} else if (message.kind === 'apply') {
		if (!workbook || !verifier) return;
		for (const command of message.commands) {
			const applied = applyCommand(workbook, command);
			if (applied.ok) workbook = applied.workbook;
		}
		if (!(await run(verifier.update(workbook)))) verifier = null;
	} else if (verifier) {
		// A comparison with values of before an edit would report a difference that is none.
		if (queue.some((later) => later.kind !== 'compare')) return;
		const agreement = verifier.compare(message.results);
		say({ kind: 'agreement', revision: message.revision, agreement });
	}
}

async function work(): Promise<void> {
	if (working) return;
	working = true;
	for (let next = queue.shift(); next; next = queue.shift()) {
		try {
			await take(next);
		} catch (error) {
			verifier = null;
			const why = error instanceof Error ? error.message : String(error);
			say({
				kind: 'failed',
				message: `The second engine stopped (${why}). Numbers on screen come from the first alone until the page is loaded again.`
			});
		}
	}
	working = false;
}

self.onmessage = ({ data }: MessageEvent<ToVerifier>) => {
	// Nothing that was asked of an older workbook matters any more.
	if (data.kind === 'open') queue = [];
	queue.push(data);
	void work();
};
