/** What a person would see of a workbook: values, errors, checks that fail, cautions, the review list. */
import { checkVerdict, isCaution, isUnusual } from '$lib/engine/check-verdict';
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

export function seenOf(model: Model): Seen {
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
		for (const { quantity, base, count } of layout.quantities) {
			const { check, caution, usual, name } = quantity;
			const isTold = isHeadline.has(name) && (quantity.type ?? 'number') === 'number';
			for (let cell = base; cell < base + count; cell++) {
				const [value, state] = [values[cell]!, states[cell]!];
				if (state === OUT_OF_RANGE) outOfRange.add(`${id} ${name}`);
				else if (isError(state)) errors.add(`${id} ${name}`);
				if (check && checkVerdict(quantity, value, state) === 'fails')
					failing.add(`${id} ${name} ${cell - base}`);
				if (caution && isCaution(quantity, value, state))
					cautions.add(`${id} ${name} ${cell - base}`);
				if (usual && isUnusual(quantity, value, state))
					cautions.add(`usual ${id} ${name} ${cell - base}`);
				if (isTold && state === OK) headlines.set(`${name} ${cell - base} ${id}`, value);
			}
		}
	});
	return {
		...{ errors, outOfRange, failing, cautions, headlines, columns },
		review: marksOf(reviewLines(workbook))
	};
}
