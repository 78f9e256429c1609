/** Answers what a reader asks about the plans of a workbook. What was derived and solved is kept until the next edit. */
import type { Model } from '$lib/engine/model';
import type { Programme } from '$lib/workbook/programme-schema';
import { derive } from '../derive';
import type { Solver } from '../highs';
import type { Derivation, Part } from '../part';
import { pricedRows, pricesOf, wrongUnits } from '../planning';
import { solve, worthOfMore, type SolveOutcome } from '../solve';
import { whyNoPlan } from '../words';
import { pinsOf } from './pins';
import type { AnyAnswer, Look, Question, Unanswered, Where } from './questions';
import { placingOf } from './placing';
import { reasonOf } from './reasons';
import { roomsOf } from './rooms';
import { settle, type Settled } from './settled';
import { statementOf } from './statement';
import { takingOf } from './taking';
import { unmetOf } from './unmet';

const refused = (...problems: readonly string[]): Unanswered => ({ ok: false, problems });

export class Inquiry {
	readonly #model: Model;
	readonly #solver: Solver;
	readonly #derived = new Map<string, Derivation>();
	readonly #settled = new Map<string, Settled | Unanswered>();

	constructor(model: Model, solver: Solver) {
		this.#model = model;
		this.#solver = solver;
	}

	/** The workbook has changed: what is known of it goes. */
	forget(): void {
		this.#derived.clear();
		this.#settled.clear();
	}

	ask(question: Question): AnyAnswer {
		if (question.kind === 'examine') return this.#examine(question.programme, question.scenario);
		const settled = this.#settle(question.where);
		if ('problems' in settled) return settled;
		switch (question.kind) {
			case 'look':
				return { ok: true, answer: this.#look(settled) };
			case 'curve':
				return this.#curve(settled, question.cell, question.amounts);
			case 'taking': {
				const answer = takingOf(this.#solver, settled, question.cell, question.amount);
				return answer
					? { ok: true, answer }
					: refused('Nothing is required there that could be taken of.');
			}
			case 'placing': {
				const place = this.#model.layout.byName.get(question.hours);
				const hours = new Set(
					Array.from({ length: place?.count ?? 0 }, (_, i) => (place?.base ?? 0) + i)
				);
				const answer = placingOf(this.#solver, settled, question.takes, hours);
				return answer
					? { ok: true, answer }
					: refused('Nothing is required there that could be taken of.');
			}
			case 'reason': {
				const answer = reasonOf(settled, question.cell);
				return answer
					? { ok: true, answer }
					: refused('The programme neither decides this nor requires anything of it.');
			}
		}
	}

	#look(settled: Settled): Look {
		const { programme, part, answer } = settled;
		const asked = pricedRows(this.#model, programme, part);
		return {
			best: answer.objective,
			gap: answer.wholeHeld ? answer.gap : null,
			rooms: roomsOf(settled),
			worth: pricesOf(this.#model, programme, part, answer),
			unmet: unmetOf(this.#solver, settled, new Set(asked.map((row) => part.rows[row]!.cell))),
			pins: pinsOf(this.#solver, settled)
		};
	}

	#curve(settled: Settled, cell: number, amounts: readonly number[]): AnyAnswer {
		const { part, answer, gain } = settled;
		const row = part.rows.findIndex((one) => one.cell === cell && one.left >= 0);
		if (row < 0) return refused('Nothing is required there that more could be had of.');
		const reached = worthOfMore(this.#solver, part.programme, row, amounts);
		return {
			ok: true,
			answer: reached.map((value) =>
				value === null ? null : Math.max(0, gain * (value - answer.objective))
			)
		};
	}

	#examine(programme: Programme, scenario: string): AnyAnswer {
		const derivation = derive(this.#model, programme, scenario);
		if (!derivation.ok) return refused(...derivation.problems);
		const unlike = wrongUnits(this.#model, programme);
		if (unlike.length > 0) return refused(...unlike);
		return { ok: true, answer: statementOf(this.#model.plan, derivation.derived) };
	}

	#settle(where: Where): Settled | Unanswered {
		const key = [where.programme, where.scenario, ...where.members].join(' ');
		let known = this.#settled.get(key);
		if (!known) this.#settled.set(key, (known = this.#solved(where)));
		return known;
	}

	#solved({ programme: name, scenario, members }: Where): Settled | Unanswered {
		const model = this.#model;
		const programme = model.workbook.programmes?.find((one) => one.name === name);
		if (!programme) return refused('The programme is not in the workbook any more.');
		const derivation = this.#derive(programme, scenario);
		if (!derivation.ok) return refused(...derivation.problems);
		const part = derivation.derived.parts.find((one) => one.members.join() === members.join());
		if (!part) return refused('Nothing is decided there.');
		const answer = this.#solve(programme, part);
		return answer.status === 'optimal'
			? settle(model, programme, scenario, part, answer)
			: refused(...whyNoPlan(model.plan, programme, part, answer));
	}

	#solve(programme: Programme, part: Part): SolveOutcome {
		return solve(this.#solver, part.programme, {
			priced: pricedRows(this.#model, programme, part)
		});
	}

	#derive(programme: Programme, scenario: string): Derivation {
		const key = `${programme.name} ${scenario}`;
		let known = this.#derived.get(key);
		if (!known) this.#derived.set(key, (known = derive(this.#model, programme, scenario)));
		return known;
	}
}
