/** Rows derived from the formulas of random workbooks, against what both engines find when decisions are moved. */
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { Verifier } from '$lib/engine/second/verifier';
import { derive } from '$lib/programmes/derive';
import { objectiveOf, rowValues } from '$lib/programmes/linear';
import type { Workbook } from '$lib/workbook/schema';
import { withQuantity } from './small-plant';
import { choiceBook, USED } from './choice-book';

/** Linear in x, each in another way. */
const FORMULAS = [
	USED,
	'SUM(x / (2 + takes) over choice) - 3',
	'SUM(IF(takes > 0; x * takes; 3 * x) over choice)',
	'SUM(x * takes over choice where takes > 0)',
	'AVERAGE(x - takes over choice) * 4 - -x[c1]',
	'IFERROR(SUM(x over choice) / 0; x[c2] * 2) + (x[c1] - x[c2]) / 4',
	'x[c1] * MAX(takes over choice) + ABS(MIN(takes over choice)) * SUM(x over choice)'
];

/** Park and Miller's generator, so that a failure comes again. */
function generator(seed: number): () => number {
	let state = seed;
	return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

describe.each(FORMULAS)('what is used as %s', (used) => {
	it('moves with the decisions as the rows say, in both engines', () => {
		const next = generator(used.length + 1);
		for (let turn = 0; turn < 5; turn++) {
			const sizes = { choices: 2 + Math.floor(next() * 5), limits: 1 + Math.floor(next() * 4) };
			const list = (count: number) => Array.from({ length: count }, () => next() * 20 - 8);
			const book = choiceBook({
				maximise: next() < 0.5,
				gain: list(sizes.choices),
				takes: Array.from({ length: sizes.limits }, () => list(sizes.choices)),
				limit: list(sizes.limits),
				compared: Array.from({ length: sizes.limits }, () => (next() < 0.5 ? '<=' : '>=')),
				used
			});
			const moved = list(sizes.choices).map(Math.abs);
			expectAlike(book, moved);
		}
	});
});

function expectAlike(book: Workbook, moved: readonly number[]): void {
	const model = Model.open(book);
	expect(model.problems).toEqual([]);
	const derivation = derive(model, book.programmes![0]!, 'base');
	if (!derivation.ok) throw new Error(derivation.problems.join(' '));
	const [part] = derivation.derived.parts;
	const { programme, rows } = part!;
	const entered = Object.fromEntries(moved.map((value, i) => [`c${i + 1}`, value]));
	const there = Model.open(withQuantity('x', { value: entered })(book));
	const at = (name: string, place = 0) =>
		there.column('base').values[there.layout.byName.get(name)!.base + place]!;
	expect(at('total')).toBeCloseTo(objectiveOf(programme, Float64Array.from(moved)), 9);
	const sums = rowValues(programme, Float64Array.from(moved));
	expect(rows.length).toBe(book.sets[1]!.members.length);
	rows.forEach(({ cell }, row) => {
		const { base } = model.layout.quantities[model.layout.quantityOfCell[cell]!]!;
		const limit = cell - base;
		const bound = Number.isFinite(programme.rowUpper[row]!)
			? programme.rowUpper[row]!
			: programme.rowLower[row]!;
		expect(at('used', limit) - at('bound', limit)).toBeCloseTo(sums[row]! - bound, 9);
	});
	const verifier = Verifier.open(there.workbook, there.plan);
	for (const step of verifier.build()) void step;
	const agreement = verifier.compare([there.results('base')]);
	verifier.destroy();
	expect(agreement.disagreements).toEqual([]);
	expect(agreement.agreeing).toBe(agreement.compared);
}
