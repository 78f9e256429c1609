/**
 * Draws that go together: from wanted rank correlations of pairs of inputs to groups of inputs with a matrix that
 * is possible, and from a group to the strata that its draws fall in (Iman and Conover, Communications in
 * Statistics B11, 1982, 311).
 *
 * Normal scores with correlation r have the rank correlation 6/π · asin(r/2); the matrix is kept in terms of
 * the scores, and told in terms of ranks.
 */
import type { Correlation } from '$lib/workbook/study-schema';
import {
	choleskyOf,
	dividedBy,
	identity,
	isPossible,
	nearestPossible,
	rooted,
	type Square
} from './matrix';
import { orderOf } from '../ordering';
import { answer, refuse, type Answer } from '../problem';
import { normalQuantile } from '$lib/engine/normal';

export const scoreOfRank = (rank: number) => 2 * Math.sin((Math.PI * rank) / 6);
export const rankOfScore = (score: number) => (6 / Math.PI) * Math.asin(score / 2);

export interface CorrelatedGroup {
	/** Places among the study's inputs. */
	readonly inputs: readonly number[];
	/** Correlations of the normal scores. */
	readonly matrix: Square;
}

export interface Correlated {
	readonly groups: readonly CorrelatedGroup[];
	/** What had to be changed, and by how much. */
	readonly notices: readonly string[];
}

/** Numbers that are held at a time for correlated draws: four bytes each. */
export const MOST_CORRELATED = 64_000_000;

export function correlatedGroups(
	labels: readonly string[],
	correlations: readonly Correlation[]
): Answer<Correlated> {
	const places = new Map<string, number>();
	labels.forEach((label, place) => places.set(label, places.has(label) ? -1 : place));
	const wanted = new Map<string, number>();
	for (const { between, rank } of correlations) {
		const [a, b] = between.map((label) => places.get(label));
		const missing = between.find((label) => !places.has(label));
		if (missing !== undefined)
			return refuse(
				'bad-correlation',
				`A correlation names ${missing}, which is no input of the study. Choose another input, or take the correlation out.`
			);
		if (a === -1 || b === -1)
			return refuse(
				'bad-correlation',
				`Two inputs of the study are called ${between[a === -1 ? 0 : 1]}, so a correlation cannot say which it means. Give one of them another label.`
			);
		if (a === b)
			return refuse(
				'bad-correlation',
				`A correlation is of ${between[0]} with itself. Choose two inputs.`
			);
		if (!(rank >= -1 && rank <= 1))
			return refuse(
				'bad-correlation',
				`The correlation of ${between.join(' and ')} is ${rank}. Enter one from −1 to 1.`
			);
		const key = [a!, b!].sort((x, y) => x - y).join(' ');
		if (wanted.has(key) && wanted.get(key) !== rank)
			return refuse(
				'bad-correlation',
				`The correlation of ${between.join(' and ')} is given twice, as ${wanted.get(key)} and as ${rank}. Keep one of them.`
			);
		wanted.set(key, rank);
	}
	const notices: string[] = [];
	const groups = connected(labels.length, wanted).map((inputs) => {
		const matrix = identity(inputs.length);
		for (const [i, one] of inputs.entries())
			for (let j = 0; j < i; j++) {
				const rank = wanted.get([inputs[j]!, one].join(' ')) ?? 0;
				matrix.at[i * inputs.length + j] = matrix.at[j * inputs.length + i] = scoreOfRank(rank);
			}
		if (isPossible(matrix)) return { inputs, matrix: rooted(matrix) };
		const repaired = nearestPossible(matrix);
		notices.push(
			repairNotice(
				inputs.map((input) => labels[input]!),
				matrix,
				repaired
			)
		);
		return { inputs, matrix: repaired };
	});
	return answer({ groups, notices });
}

/** Inputs that correlations tie together, each group ascending. */
function connected(count: number, wanted: ReadonlyMap<string, number>): number[][] {
	const groupOf = Array.from({ length: count }, (_, place) => place);
	for (const key of wanted.keys()) {
		const [a, b] = key.split(' ').map((place) => groupOf[Number(place)]!);
		if (a !== b) groupOf.forEach((group, place) => group === b && (groupOf[place] = a!));
	}
	const groups = new Map<number, number[]>();
	groupOf.forEach((group, place) => groups.set(group, [...(groups.get(group) ?? []), place]));
	return [...groups.values()].filter(({ length }) => length > 1);
}

function repairNotice(labels: readonly string[], wanted: Square, used: Square): string {
	const { n } = wanted;
	let worst = 0;
	for (let place = 0; place < n * n; place++)
		if (change(wanted, used, place) > change(wanted, used, worst)) worst = place;
	const [i, j] = [Math.floor(worst / n), worst % n];
	const text = (matrix: Square) => rankOfScore(matrix.at[worst]!).toFixed(2);
	return `The correlations of ${labels.join(', ')} cannot all hold at once, so the nearest that can are used: the largest change is ${text(wanted)} to ${text(used)} between ${labels[j]} and ${labels[i]}.`;
}

const change = (a: Square, b: Square, place: number) => Math.abs(a.at[place]! - b.at[place]!);

/**
 * For each input of a group, the stratum of each draw. `strata` gives the strata of independent draws, which
 * are put in another order, so that each is still met once.
 */
export function correlatedStrata(
	group: CorrelatedGroup,
	draws: number,
	strata: (input: number, draw: number) => number
): Uint32Array[] {
	const n = group.inputs.length;
	const scores = new Float32Array(draws);
	for (let stratum = 0; stratum < draws; stratum++)
		scores[stratum] = normalQuantile((stratum + 1) / (draws + 1));
	const columns = group.inputs.map((input) => {
		const column = new Float32Array(draws);
		for (let draw = 0; draw < draws; draw++) column[draw] = scores[strata(input, draw)]!;
		return column;
	});
	// What the independent draws happen to have in common is taken out, then what is wanted put in.
	const mix = dividedBy(choleskyOf(group.matrix), choleskyOf(rooted(correlations(columns, draws))));
	const mixed = new Float64Array(draws);
	const result: Uint32Array[] = new Array<Uint32Array>(n);
	for (let i = n - 1; i >= 0; i--) {
		mixed.fill(0);
		for (let j = 0; j <= i; j++) {
			const factor = mix.at[i * n + j]!;
			const column = columns[j]!;
			for (let draw = 0; draw < draws; draw++) mixed[draw]! += factor * column[draw]!;
		}
		const order = orderOf(mixed);
		// Nobody reads this column any more: its room takes the strata.
		const own = new Uint32Array(columns[i]!.buffer);
		for (let stratum = 0; stratum < draws; stratum++) own[order[stratum]!] = stratum;
		result[i] = own;
	}
	return result;
}

/** Of scores whose mean is zero and whose squares all add up to the same. */
function correlations(columns: readonly Float32Array[], draws: number): Square {
	const n = columns.length;
	const matrix = identity(n);
	const product = (a: Float32Array, b: Float32Array) => {
		let sum = 0;
		for (let draw = 0; draw < draws; draw++) sum += a[draw]! * b[draw]!;
		return sum;
	};
	const square = product(columns[0]!, columns[0]!);
	for (let i = 0; i < n; i++)
		for (let j = 0; j < i; j++)
			matrix.at[i * n + j] = matrix.at[j * n + i] =
				square > 0 ? product(columns[i]!, columns[j]!) / square : 0;
	return matrix;
}
