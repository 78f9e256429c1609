/** The checks that a workbook declares, held or failed, and its cautions, in one scenario. */
import type { Workbook } from '$lib/workbook/schema';
import { checkVerdict, isCaution, isUnusual } from './check-verdict';
import type { Answers } from './root-cause';
import { placeOf } from './layout';
import { originOf } from './reason';
import type { Place } from './results';
import { OK, type State } from './state';
import { unusualWords } from './unusual-words';

export interface Finding {
	readonly place: Place;
	readonly message: string;
}

export interface Checks {
	/** Cells of checks that hold. */
	readonly hold: number;
	readonly fail: readonly Finding[];
	readonly cautions: readonly Finding[];
}

/** A check that has no value cannot hold; one that is absent in the scenario is not asked. */
export function checksOf(answers: Answers, workbook: Workbook, scenario: string): Checks {
	const { layout } = answers;
	const { values, states } = answers.column(scenario);
	const fail: Finding[] = [];
	const cautions: Finding[] = [];
	let hold = 0;
	for (const laid of layout.quantities) {
		const { quantity, base, count } = laid;
		const { check, caution, usual } = quantity;
		for (let cell = base; (check || caution || usual) && cell < base + count; cell++) {
			const state = states[cell]! as State;
			const value = values[cell]!;
			if (usual && isUnusual(layout, laid, cell, value, state))
				cautions.push({
					place: placeOf(layout, cell),
					message: unusualWords(layout, cell, value)
				});
			if (!check && !caution) continue;
			const place = placeOf(layout, cell);
			if (caution && isCaution(quantity, value, state, { workbook, scenario }))
				cautions.push({ place, message: caution.message });
			const verdict = checkVerdict(quantity, value, state);
			if (verdict === 'holds') hold++;
			if (verdict !== 'fails' || !check) continue;
			const reason =
				state === OK ? null : (originOf(answers, workbook, scenario, cell)?.reason ?? '');
			fail.push({
				place,
				message: reason === null ? check.message : `${check.message} (${reason})`
			});
		}
	}
	return { hold, fail, cautions };
}
