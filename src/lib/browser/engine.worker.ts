/**
 * The first engine, off the page's thread: holds the model, answers scenario by scenario, the base first.
 * What a message says is in `engine-messages.ts`; what is computed, in `$lib/engine`.
 */
import { Model } from '$lib/engine/model';
import type { Workbook } from '$lib/workbook/schema';
import type { FromEngine, ToEngine } from './engine-messages';

let model: Model | null = null;
/** The scenarios still to be answered, for the last edit. */
let waiting: { revision: number; order: readonly string[]; next: number } | null = null;

const say = (message: FromEngine, transfer: Transferable[] = []) =>
	self.postMessage(message, { transfer });

/** Answers one scenario, then lets other messages in. */
function answerNext(): void {
	if (!model || !waiting) return;
	const { revision, order, next } = waiting;
	const scenario = order[next];
	if (scenario === undefined) {
		waiting = null;
		say({ kind: 'settled', revision });
		return;
	}
	const results = model.results(scenario);
	say({ kind: 'results', revision, results }, [results.values.buffer, results.states.buffer]);
	say({ kind: 'faults', revision, scenario, faults: model.faults(scenario) });
	waiting.next++;
	setTimeout(answerNext);
}

function begin(revision: number, order: readonly string[]): void {
	const idle = waiting === null;
	waiting = { revision, order, next: 0 };
	if (idle) answerNext();
}

function open(workbook: Workbook, revision: number, order: readonly string[]): void {
	waiting = null;
	model = Model.open(workbook);
	say({ kind: 'problems', revision, problems: model.problems });
	begin(revision, order);
}

function hear(message: ToEngine): void {
	if (message.kind === 'open') return open(message.workbook, message.revision, message.order);
	if (!model) return;
	switch (message.kind) {
		case 'apply': {
			let all = waiting !== null;
			const changed = new Set<string>();
			for (const command of message.commands) {
				const applied = model.apply(command);
				if (applied.ok) applied.changed.forEach((id) => changed.add(id));
				else all = true;
			}
			// What an edit before this one left unanswered is answered with it.
			begin(
				message.revision,
				message.order.filter((id) => all || changed.has(id))
			);
			break;
		}
		case 'why':
			say({
				kind: 'why',
				question: message.question,
				why: model.why(message.scenario, message.cell)
			});
			break;
		case 'try':
			say({
				kind: 'trial',
				question: message.question,
				trial: model.tryQuantity(message.quantity, message.replaces ?? undefined)
			});
	}
}

self.onmessage = ({ data }: MessageEvent<ToEngine>) => {
	try {
		hear(data);
	} catch (error) {
		const why = error instanceof Error ? error.message : String(error);
		say({
			kind: 'failed',
			message: `The engine stopped (${why}). Undo the last edit or load the page again; the work is kept.`
		});
	}
};
