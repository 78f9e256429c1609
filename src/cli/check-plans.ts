/** The part of `check` that proves every plan of a programme the best. The solver is read only where there is one. */
import type { Model } from '$lib/engine/model';
import { withUnit } from '$lib/engine/naming';
import { planningOrder } from '$lib/programmes/plan-all';
import type { Standing } from '$lib/programmes/standing';
import type { ReportedProblem } from './check';

export interface Plans {
	/** One for each programme, scenario and member of `each`; those kept as they stand are not among them. */
	readonly of: number;
	readonly best: number;
	readonly kept: readonly KeptPlan[];
	readonly problems: readonly ReportedProblem[];
}

interface KeptPlan {
	readonly programme: string;
	readonly scenario: string;
	readonly since: string;
	/** In the objective's unit; null where there is no best plan or the workbook does not allow to tell. */
	readonly short: number | null;
}

export async function plansOf(model: Model): Promise<Plans> {
	const wanted = planningOrder(model);
	if (wanted.length === 0) return { of: 0, best: 0, kept: [], problems: [] };
	const [{ Solver }, { standingOf }] = await Promise.all([
		import('$lib/programmes/highs'),
		import('$lib/programmes/standing')
	]);
	const solver = await Solver.load();
	const found = wanted.map(({ programme, scenario }) => ({
		objective: programme.maximise ?? programme.minimise ?? programme.name,
		standing: standingOf(solver, model, programme, scenario)
	}));
	solver.dispose();
	const judged = found.filter(({ standing }) => standing.kept === null);
	const parts = judged.flatMap(({ standing }) => standing.parts);
	return {
		of: parts.length + judged.filter(({ standing }) => standing.problem !== null).length,
		best: parts.filter(({ isBest }) => isBest).length,
		kept: found.flatMap(({ standing }) => keptPlan(standing)),
		problems: judged.flatMap(({ objective, standing }) => problemsOf(objective, standing))
	};
}

function keptPlan({ programme, scenario, kept, parts }: Standing): KeptPlan[] {
	if (kept === null) return [];
	const short = parts.length === 0 ? NaN : parts.reduce((sum, part) => sum + part.short, 0);
	return [{ programme, scenario, since: kept, short: Number.isFinite(short) ? short : null }];
}

function problemsOf(quantity: string, { scenario, parts, problem }: Standing): ReportedProblem[] {
	const line = (member: string | null, message: string) => ({
		kind: 'plan' as const,
		quantity,
		member,
		scenario,
		message
	});
	if (problem !== null) return [line(null, problem)];
	return parts.flatMap(({ members, problem }) =>
		problem === null ? [] : [line(members.join(', ') || null, problem)]
	);
}

export const keptLines = (model: Model, kept: readonly KeptPlan[]): string[] =>
	kept.map(({ programme, scenario, since, short }) => {
		const cost =
			short === null ? 'an amount that cannot be told' : withUnit(short, unitOf(model, programme));
		return `${programme}, ${scenario}: the plan is kept as it stands since ${since}; short of the best by ${cost}`;
	});

function unitOf({ workbook, layout }: Model, name: string): string | undefined {
	const programme = workbook.programmes?.find((one) => one.name === name);
	return layout.byName.get(programme?.maximise ?? programme?.minimise ?? '')?.quantity.unit;
}
