/**
 * Plans the programmes of a workbook off the page's thread: follows every edit by its command, and solves what
 * changed. A newer edit ends the planning of an older one.
 */
import { Model } from '$lib/engine/model';
import { Solver } from '$lib/programmes/highs';
import { Memory } from '$lib/programmes/memory';
import { planAll, planningOrder } from '$lib/programmes/plan-all';
import type { Planned } from '$lib/programmes/planning';
import { ownPlan } from '$lib/workbook/plans';
import type { LentPlan } from './engine-messages';
import type { FromSolver, KeptShort, ToSolver, Unplanned } from './solver-messages';

let opened: Promise<{ model: Model; solver: Solver }> | null = null;
/** What is still to be heard, oldest first; planning looks here between two scenarios. */
const queue: ToSolver[] = [];
let working = false;
const memory = new Memory();

const say = (message: FromSolver) => self.postMessage(message);
const pause = () => new Promise((resume) => setTimeout(resume));

async function open(port: MessagePort, wasmUrl: string): Promise<{ model: Model; solver: Solver }> {
	const lent = new Promise<LentPlan>((resolve) => {
		port.onmessage = ({ data }: MessageEvent<LentPlan>) => resolve(data);
	});
	const solver = await Solver.load(wasmUrl);
	const { workbook, plan } = await lent;
	port.close();
	return { model: Model.open(workbook, plan), solver };
}

async function plan(model: Model, solver: Solver, revision: number): Promise<void> {
	const before = model.workbook;
	const made: Planned[] = [];
	for (const planned of planAll(solver, model, undefined, { staleOnly: true, memory })) {
		made.push(planned);
		await pause();
		// The next edit plans again, and says what came of both.
		if (queue.length > 0) break;
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

const unplanned = ({ programme, scenario, plan, problems }: Planned): Unplanned => ({
	programme,
	scenario,
	message: plan ? 'The plan could not be proven best; take it with care.' : problems.join(' ')
});

function keptShort(model: Model, { programme, scenario, plan }: Planned): KeptShort[] {
	const stands = ownPlan(model.workbook, programme, scenario);
	if (!plan || stands?.kept === undefined) return [];
	return [{ programme, scenario, best: plan.objective, kept: stands.objective }];
}

async function take(message: ToSolver): Promise<void> {
	if (message.kind === 'open') {
		opened = open(message.port, message.wasmUrl);
		await opened;
		return;
	}
	if (!opened) return;
	const { model, solver } = await opened;
	if (message.kind === 'apply') {
		const applied = model.apply(message.command);
		if (!applied.ok) throw new Error(applied.problem.message);
	} else if (queue.length === 0) await plan(model, solver, message.revision);
}

async function work(): Promise<void> {
	if (working) return;
	working = true;
	for (let next = queue.shift(); next; next = queue.shift()) {
		try {
			await take(next);
		} catch (error) {
			opened = null;
			const why = error instanceof Error ? error.message : String(error);
			say({
				kind: 'failed',
				message: `Planning stopped (${why}). The plans on screen are those of before the last edit; load the page again to plan anew.`
			});
		}
	}
	working = false;
}

self.onmessage = ({ data }: MessageEvent<ToSolver>) => {
	queue.push(data);
	void work();
};
