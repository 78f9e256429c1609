/** Hundreds of random programmes, answered by two solvers. */
import { describe, expect, it } from 'vitest';
import { Solver } from '$lib/programmes/highs';
import { solve } from '$lib/programmes/solve';
import { tieWeights } from '$lib/programmes/ties';
import { columnCount, rowCount, type LinearProgramme } from '$lib/programmes/linear';
import { randomFrom, randomProgramme, type Shape } from './random-programme';
import { solveBySecond } from './second-solver';

const solver = await Solver.load();
const COUNT = 150;

const SHAPES: [string, Shape][] = [
	['plain', { whole: false, degenerate: false, boxed: true }],
	['degenerate', { whole: false, degenerate: true, boxed: true }],
	['often without an end', { whole: false, degenerate: false, boxed: false }],
	['degenerate and often without an end', { whole: false, degenerate: true, boxed: false }],
	['with whole numbers', { whole: true, degenerate: false, boxed: true }],
	['degenerate with whole numbers', { whole: true, degenerate: true, boxed: true }]
];

const everyRow = (programme: LinearProgramme) =>
	Array.from({ length: rowCount(programme) }, (_, row) => row);

describe.each(SHAPES)('random programmes, %s', (name, shape) => {
	it('have the same status and the same best objective in both solvers, and every best plan is proven', async () => {
		const random = randomFrom(name.length);
		const seen = new Map<string, number>();
		for (let round = 0; round < COUNT; round++) {
			const programme = randomProgramme(random, shape);
			const ties = {
				near: new Float64Array(columnCount(programme)),
				weight: tieWeights(new Uint8Array(columnCount(programme)))
			};
			const answer = solve(solver, programme, { ties, gap: 0, priced: everyRow(programme) });
			const second = await solveBySecond(programme);
			seen.set(answer.status, (seen.get(answer.status) ?? 0) + 1);
			expect(answer.status, `round ${round}`).toBe(second.status);
			if (answer.status !== 'optimal') continue;
			expect(answer.objective, `round ${round}`).toBeCloseTo(second.objective, 6);
			expect(answer.certificate, `round ${round}`).toMatchObject({ holds: true });
		}
		expect(seen.get('optimal')).toBeGreaterThan(20);
		if (!shape.boxed) expect(seen.get('unbounded')).toBeGreaterThan(5);
		expect(seen.get('infeasible') ?? 0).toBeGreaterThan(0);
	});
});

describe('what the next unit is worth', () => {
	it.each(SHAPES.slice(0, 4))(
		'is found on both sides of every kink: %s programmes, solved again by the second solver with a little more and less',
		async (_name, shape) => {
			const random = randomFrom(77);
			let kinks = 0;
			let compared = 0;
			for (let round = 0; round < COUNT; round++) {
				const programme = randomProgramme(random, shape);
				const answer = solve(solver, programme, { priced: everyRow(programme) });
				if (answer.status !== 'optimal') continue;
				for (const { row, more, less } of answer.prices) {
					for (const [slope, way] of [
						[more, 1],
						[less, -1]
					] as const) {
						const step = Math.min(1e-3, (slope?.until ?? 1) / 2) || 1e-3;
						const moved = await solveBySecond(withRoom(programme, row, way * step));
						if (slope === null) {
							expect(moved.status, `round ${round}, row ${row}`).toBe('infeasible');
							continue;
						}
						expect(moved.status, `round ${round}, row ${row}`).toBe('optimal');
						const found = (moved.objective - answer.objective) / step;
						expect(slope.price, `round ${round}, row ${row}, ${way}`).toBeCloseTo(found, 4);
						compared++;
					}
					if (more && less && Math.abs(more.price + less.price) > 1e-6) kinks++;
				}
			}
			expect(compared).toBeGreaterThan(200);
			if (shape.degenerate) expect(kinks).toBeGreaterThan(5);
		}
	);
});

describe('unique prices', () => {
	it('are the same in both solvers', async () => {
		const random = randomFrom(5);
		let compared = 0;
		for (let round = 0; round < COUNT; round++) {
			const programme = randomProgramme(random, { whole: false, degenerate: false, boxed: true });
			const answer = solve(solver, programme, { priced: everyRow(programme) });
			if (answer.status !== 'optimal') continue;
			const second = await solveBySecond(programme);
			for (const { row, more, less } of answer.prices) {
				if (!more || !less || Math.abs(more.price + less.price) > 1e-9) continue;
				expect(answer.rowDual[row], `round ${round}, row ${row}`).toBeCloseTo(second.dual[row]!, 6);
				compared++;
			}
		}
		expect(compared).toBeGreaterThan(200);
	});
});

/** More room: a higher "at most", a lower "at least", a higher right side of "equal". */
function withRoom(programme: LinearProgramme, row: number, by: number): LinearProgramme {
	const rowLower = programme.rowLower.slice();
	const rowUpper = programme.rowUpper.slice();
	if (rowUpper[row] === Infinity) rowLower[row]! -= by;
	else if (rowLower[row] === rowUpper[row]) {
		rowLower[row]! += by;
		rowUpper[row]! += by;
	} else rowUpper[row]! += by;
	return { ...programme, rowLower, rowUpper };
}
