/**
 * What the first engine hands to other threads, so that none of them makes the plan again: to the second engine
 * what is new since it was last told, to a study the plan as it stands.
 */
import type { Applied, Model } from '$lib/engine/model';
import type { Plan } from '$lib/engine/plan';
import type { Command } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';
import type { Check, LentPlan } from './engine-messages';

/** The plan with the words of the workbook as it is now. */
export const lentPlan = ({ workbook, plan, layout }: Model): LentPlan => ({
	workbook,
	plan: { ...plan, layout }
});

export class Handover {
	#handed: Plan | null = null;
	#commands: Command[] = [];
	#isNew = true;

	/** Notes an edit that the model has made. */
	note(
		command: Command,
		applied: Extract<Applied, { ok: true }>,
		before: Workbook,
		after: Workbook
	) {
		this.#commands.push(command);
		this.#isNew ||=
			applied.structural ||
			applied.changed.length > 0 ||
			scenariosOf(before) !== scenariosOf(after);
	}

	/** For the second engine; null where nothing that it computes has changed. */
	next(model: Model, revision: number): Check | null {
		if (!this.#isNew) return null;
		const isSamePlan = this.#handed === model.plan;
		const check: Check = {
			revision,
			fresh: isSamePlan ? null : lentPlan(model),
			commands: isSamePlan ? this.#commands : [],
			results: model.workbook.scenarios.map(({ id }) => model.results(id))
		};
		this.#handed = model.plan;
		this.#commands = [];
		this.#isNew = false;
		return check;
	}
}

const scenariosOf = ({ scenarios }: Workbook): string =>
	JSON.stringify(scenarios.map(({ id, parent, against }) => [id, parent, against]));
