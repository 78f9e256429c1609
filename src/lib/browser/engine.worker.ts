/**
 * The first engine, off the page's thread: follows every edit and answers at once, scenario by scenario.
 * What each message says is in `engine-messages.ts`; what is computed, in `$lib/engine`.
 */
import { Model } from '$lib/engine/model';
import type { Command } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';
import type { FromEngine, ToEngine } from './engine-messages';
import { Handover, lentPlan } from './handover';

let model: Model | null = null;
let handover = new Handover();
/** How many plans were made. */
let plans = 0;
/** Where the second engine listens. */
let verifier: MessagePort | null = null;
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
		say({ kind: 'settled', revision, plan: plans });
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
	handover = new Handover();
	plans++;
	say({ kind: 'problems', revision, problems: model.problems });
	begin(revision, order);
}

function apply(to: Model, command: Command, revision: number, order: readonly string[]): void {
	const before = to.workbook;
	const applied = to.apply(command);
	// The page has made the same edit in the same workbook.
	if (!applied.ok) throw new Error(applied.problem.message);
	handover.note(command, applied, before, to.workbook);
	if (applied.structural) {
		plans++;
		say({ kind: 'problems', revision, problems: to.problems });
	}
	// What an edit before this one left unanswered is answered with it.
	const all = waiting !== null;
	begin(
		revision,
		order.filter((id) => all || applied.changed.includes(id))
	);
}

function check(of: Model, revision: number): void {
	const message = handover.next(of, revision);
	say({ kind: 'handed', revision, isNew: message !== null });
	if (!message) return;
	const buffers = message.results.flatMap(({ values, states }) => [values.buffer, states.buffer]);
	verifier?.postMessage(message, buffers);
}

/** What quotes are computed by is fetched with the first of them. */
async function quote({ question, entries, keep }: Extract<ToEngine, { kind: 'quote' }>) {
	const { quoteOver } = await import('$lib/engine/quote-over');
	const quoted = model && quoteOver(model, entries, keep);
	say(
		{ kind: 'quoted', question, quoted },
		quoted ? [quoted.results.values.buffer, quoted.results.states.buffer] : []
	);
}

async function figures({ question, asked }: Extract<ToEngine, { kind: 'figures' }>) {
	const { orderFigures } = await import('$lib/engine/quote-figures');
	say({ kind: 'figures', question, figures: model && orderFigures(model, asked) });
}

function hear(message: ToEngine): void {
	if (message.kind === 'open') return open(message.workbook, message.revision, message.order);
	if (message.kind === 'connect') {
		verifier = message.port;
		return;
	}
	if (!model) {
		if (message.kind === 'apply') say({ kind: 'lost' });
		return;
	}
	switch (message.kind) {
		case 'apply':
			return apply(model, message.command, message.revision, message.order);
		case 'check':
			return check(model, message.revision);
		case 'lend':
			return message.port.postMessage(lentPlan(model));
		case 'why':
			return say({
				kind: 'why',
				question: message.question,
				why: model.why(message.scenario, message.cell, message.from)
			});
		case 'quote':
			return void quote(message).catch(() =>
				say({ kind: 'quoted', question: message.question, quoted: null })
			);
		case 'figures':
			return void figures(message).catch(() =>
				say({ kind: 'figures', question: message.question, figures: null })
			);
		case 'try':
			return say({
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
		// It may have stopped half way: the next edit has the workbook opened anew.
		if (data.kind === 'open' || data.kind === 'apply') model = waiting = null;
		const why = error instanceof Error ? error.message : String(error);
		say({
			kind: 'failed',
			message: `The engine stopped (${why}). Undo the last edit or load the page again; the work is kept.`
		});
	}
};
