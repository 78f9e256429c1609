/**
 * The second engine, off the page's thread: follows in cells of its own what the first engine hands to it, and says
 * how many of the first engine's values it finds too. Its work is cut into steps, so that a newer plan ends the
 * work for an older one.
 */
import type { Agreement } from '$lib/engine/results';
import { limitOf } from '$lib/engine/second/sample';
import { Verifier } from '$lib/engine/second/verifier';
import { applyCommand } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';
import type { Check, FromVerifier, ToVerifier } from './engine-messages';
import { pause, WorkQueue } from './work-queue';

let verifier: Verifier | null = null;
let workbook: Workbook | null = null;
const queue = new WorkQueue<Check>(take, (why) => {
	verifier = null;
	say({
		kind: 'failed',
		message: `The second engine stopped (${why}). Numbers on screen come from the first alone until the page is loaded again.`
	});
});
/** The plan that is worked for stands no more. */
let stopped = false;

const say = (message: FromVerifier) => self.postMessage(message);
const NOTHING_YET: Agreement = {
	compared: 0,
	agreeing: 0,
	notCompared: [],
	sample: null,
	disagreements: [],
	busy: true
};

/** How long it may work before it looks for messages. */
const TIME_SLICE_MS = 40;
/** How often the page hears how far it is. */
const REPORT_MS = 250;

/** Runs to the end, with pauses; gives up when its plan stands no more. */
async function run(steps: Generator<number>, revision: number): Promise<boolean> {
	let since = performance.now();
	let reported = since;
	for (let step = steps.next(); !step.done; step = steps.next()) {
		const now = performance.now();
		if (now - since < TIME_SLICE_MS) continue;
		if (now - reported > REPORT_MS) {
			reported = now;
			say({ kind: 'agreement', revision, agreement: { ...NOTHING_YET, done: step.value } });
		}
		await pause();
		if (stopped) return false;
		since = performance.now();
	}
	return true;
}

/** What the machine says of its memory; not every browser tells. */
const gigabytes = (navigator as Navigator & { readonly deviceMemory?: number }).deviceMemory;

async function take({ revision, fresh, commands, results }: Check): Promise<void> {
	let isWhole = true;
	if (fresh) {
		stopped = false;
		verifier?.destroy();
		say({ kind: 'agreement', revision, agreement: NOTHING_YET });
		workbook = fresh.workbook;
		verifier = Verifier.open(workbook, fresh.plan, limitOf(gigabytes));
		isWhole = await run(verifier.build(), revision);
	} else if (workbook && verifier) {
		for (const command of commands) {
			const applied = applyCommand(workbook, command);
			if (applied.ok) workbook = applied.workbook;
		}
		isWhole = await run(verifier.update(workbook), revision);
	}
	if (!isWhole) {
		verifier?.destroy();
		verifier = null;
	}
	// A comparison with values of before an edit would report a difference that is none.
	if (!verifier || queue.hasMore) return;
	say({ kind: 'agreement', revision, agreement: verifier.compare(results) });
}

function hear({ data }: MessageEvent<Check>): void {
	// Nothing that was asked of an older plan matters any more.
	if (data.fresh) queue.clear();
	stopped ||= data.fresh !== null;
	queue.push(data);
}

self.onmessage = ({ data }: MessageEvent<ToVerifier>) => {
	if (data.kind === 'stop') stopped = true;
	else data.port.onmessage = hear;
};
