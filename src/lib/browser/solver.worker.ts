/**
 * Plans the programmes of a workbook off the page's thread: follows every edit by its command, and solves what
 * changed. A newer edit ends the planning of an older one.
 */
import { Model } from '$lib/engine/model';
import { restingOf } from '$lib/engine/resting';
import { Solver } from '$lib/programmes/highs';
import { Inquiry } from '$lib/programmes/inquiry/inquiry';
import { keptNow } from '$lib/programmes/kept';
import { Memory } from '$lib/programmes/memory';
import { planAll, planningOrder } from '$lib/programmes/plan-all';
import type { Planned } from '$lib/programmes/planning';
import { ownPlan } from '$lib/workbook/plans';
import type { LentPlan } from './engine-messages';
import type { FromSolver, KeptShort, ToSolver, Unplanned } from './solver-messages';
import { pause, WorkQueue } from './work-queue';

interface Opened {
	readonly model: Model;
	readonly solver: Solver;
	readonly inquiry: Inquiry;
}
type Ask = Extract<ToSolver, { kind: 'ask' }>;
type Order = Exclude<ToSolver, Ask>;

let opened: Promise<Opened> | null = null;
const memory = new Memory();
/** Milliseconds for deriving one programme: beyond, it was made to take for ever. */
const PATIENCE = 20_000;
/** Planning looks between two scenarios whether more is to be heard. */
const queue = new WorkQueue<ToSolver>(
	(message) => (message.kind === 'ask' ? reply(message) : take(message)),
	(why) => {
		opened = null;
		say({
			kind: 'failed',
			message: `Planning stopped (${why}). The plans on screen are those of before the last edit; load the page again to plan anew.`
		});
	}
);

const say = (message: FromSolver) => self.postMessage(message);

async function open(port: MessagePort, wasmUrl: string): Promise<Opened> {
	const lent = new Promise<LentPlan>((resolve) => {
		port.onmessage = ({ data }: MessageEvent<LentPlan>) => resolve(data);
	});
	const solver = await Solver.load(wasmUrl);
	const { workbook, plan } = await lent;
	port.close();
	const model = Model.open(workbook, plan);
	return { model, solver, inquiry: new Inquiry(model, solver) };
}

async function plan(model: Model, solver: Solver, revision: number): Promise<void> {
	const before = model.workbook;
	tellResting(model, revision);
	const made: Planned[] = [];
	let begun = performance.now();
	const isLate = () => performance.now() - begun > PATIENCE;
	for (const planned of planAll(solver, model, undefined, { staleOnly: true, memory, isLate })) {
		made.push(planned);
		await pause();
		begun = performance.now();
		// The next edit plans again, and says what came of both.
		if (queue.hasMore) break;
	}
	const changed = (model.workbook.plans ?? []).filter(
		(each) => ownPlan(before, each.programme, each.scenario) !== each
	);
	const without = made.filter((planned) => !planned.plan || !planned.proven);
	const of = planningOrder(model).length;
	say({
		kind: 'planned',
		revision,
		command: changed.length > 0 ? { kind: 'set_plans', plans: changed } : null,
		report: {
			proven: of - without.length,
			of,
			unplanned: without.map(unplanned),
			kept: made.flatMap((planned) => keptShort(model, planned))
		}
	});
}

/** What it was found from, when it was last told. */
let toldFor: readonly unknown[] = [];

function tellResting({ plan, workbook }: Model, revision: number): void {
	const from = [plan, workbook.programmes];
	if (from.every((one, i) => one === toldFor[i])) return;
	toldFor = from;
	say({ kind: 'resting', revision, resting: restingOf(workbook, plan) });
}

const unplanned = ({ programme, scenario, plan, problems }: Planned): Unplanned => ({
	programme,
	scenario,
	message: plan ? 'The plan could not be proven best; take it with care.' : problems.join(' ')
});

function keptShort(model: Model, { programme, scenario, plan }: Planned): KeptShort[] {
	const stands = ownPlan(model.workbook, programme, scenario);
	if (!plan || stands?.kept === undefined) return [];
	const best = plan.objective;
	return [{ programme, scenario, best, ...keptNow(model, programme, scenario) }];
}

async function take(message: Order): Promise<void> {
	if (message.kind === 'open') {
		opened = open(message.port, message.wasmUrl);
		await opened;
		return;
	}
	if (!opened || message.kind === 'halt') return;
	const { model, solver, inquiry } = await opened;
	inquiry.forget();
	if (message.kind === 'apply') {
		const applied = model.apply(message.command);
		if (!applied.ok) throw new Error(applied.problem.message);
	} else if (!queue.hasMore) await plan(model, solver, message.revision);
}

async function reply({ id, question }: Ask): Promise<void> {
	const answer = opened
		? (await opened).inquiry.ask(question)
		: { ok: false as const, problems: ['Planning has stopped. Load the page again.'] };
	say({ kind: 'answered', id, answer });
}

self.onmessage = ({ data }: MessageEvent<ToSolver>) => {
	// What a reader asked is answered when nothing else is to be done.
	if (data.kind === 'ask') queue.pushLast(data);
	else queue.push(data);
};
