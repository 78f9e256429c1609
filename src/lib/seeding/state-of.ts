/** What a person would see of a workbook: values, errors, checks that fail, cautions, the review list. */
import { checkVerdict, isCaution, isUnusual } from '$lib/engine/check-verdict';
import { membersOf } from '$lib/engine/layout';
import type { Model } from '$lib/engine/model';
import { isError, OK, OUT_OF_RANGE } from '$lib/engine/state';
import { marksOf, reviewLines } from '$lib/review/review';
import { headlinesOf } from '$lib/workbook/headlines';

/** Everything is keyed by words, so that two workbooks of another structure can be held against each other. */
export interface Seen {
	readonly errors: ReadonlySet<string>;
	readonly outOfRange: ReadonlySet<string>;
	readonly failing: ReadonlySet<string>;
	readonly cautions: ReadonlySet<string>;
	readonly review: ReadonlyMap<string, string>;
	/** Single results, by quantity, place and scenario. */
	readonly headlines: ReadonlyMap<string, number>;
	/** Every value by scenario, by which one is told that nothing moved. */
	readonly columns: readonly { readonly values: Float64Array; readonly states: Uint8Array }[];
}

/** Whose name stands for another's: a new scenario, or a copy of a member, says nothing new by what the one before it says. */
export interface Known {
	readonly scenario: (id: string) => string;
	readonly member: (id: string) => string;
}
const ITSELF: Known = { scenario: (id) => id, member: (id) => id };

export function seenOf(model: Model, known: Known = ITSELF): Seen {
	const { workbook, layout } = model;
	const errors = new Set<string>();
	const outOfRange = new Set<string>();
	const failing = new Set<string>();
	const cautions = new Set<string>();
	const headlines = new Map<string, number>();
	const isHeadline = new Set(headlinesOf(workbook));
	const columns = workbook.scenarios.map(({ id }) => model.column(id));
	workbook.scenarios.forEach(({ id }, s) => {
		const { values, states } = columns[s]!;
		const scenario = known.scenario(id);
		// By members and not by places, which move where another member comes.
		const at = (cell: number) => membersOf(layout, cell).map(known.member).join();
		for (const laid of layout.quantities) {
			const { quantity, base, count } = laid;
			const { check, caution, usual, name } = quantity;
			const isTold = isHeadline.has(name) && (quantity.type ?? 'number') === 'number';
			for (let cell = base; cell < base + count; cell++) {
				const [value, state] = [values[cell]!, states[cell]!];
				if (state === OUT_OF_RANGE) outOfRange.add(`${scenario} ${name}`);
				else if (isError(state)) errors.add(`${scenario} ${name}`);
				if (check && checkVerdict(quantity, value, state) === 'fails')
					failing.add(`${scenario} ${name} ${at(cell)}`);
				if (caution && isCaution(quantity, value, state, { workbook, scenario: id }))
					cautions.add(`${scenario} ${name} ${at(cell)}`);
				if (usual && isUnusual(layout, laid, cell, value, state))
					cautions.add(`usual ${scenario} ${name} ${at(cell)}`);
				if (isTold && state === OK)
					headlines.set(`${name} ${membersOf(layout, cell).join()} ${id}`, value);
			}
		}
	});
	return {
		...{ errors, outOfRange, failing, cautions, headlines, columns },
		review: marksOf(reviewLines(workbook))
	};
}
