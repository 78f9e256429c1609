/** The checks that a workbook declares, held or failed, and its cautions, in one scenario. */
import type { Workbook } from '$lib/workbook/schema';
import type { Answers } from './root-cause';
import { placeOf } from './layout';
import { originOf } from './reason';
import type { Place } from './results';
import { ABSENT, OK } from './state';

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
	for (const { quantity, base, count } of layout.quantities) {
		const { check, caution, type } = quantity;
		for (let cell = base; (check || caution) && cell < base + count; cell++) {
			const state = states[cell]!;
			if (state === ABSENT) continue;
			const value = values[cell]!;
			const place = placeOf(layout, cell);
			if (caution && state === OK && value !== 0)
				cautions.push({ place, message: caution.message });
			if (!check) continue;
			if (state !== OK) {
				const reason = originOf(answers, workbook, scenario, cell)?.reason ?? '';
				fail.push({ place, message: `${check.message} (${reason})` });
			} else if (type === 'yes_no' ? value !== 0 : Math.abs(value) <= (check.tolerance ?? 0))
				hold++;
			else fail.push({ place, message: check.message });
		}
	}
	return { hold, fail, cautions };
}
