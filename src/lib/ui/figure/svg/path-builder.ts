/**
 * A path as a canvas builds it, kept as SVG path data. Each point goes through the transform that holds
 * when it is set, so arcs become curves that any transform leaves right.
 */
import { placeOf, through, turned, type Matrix } from './matrix';
import { short } from './xml';

const FULL = 2 * Math.PI;

export class PathBuilder {
	#data: string[] = [];
	#hasPoint = false;

	get data(): string {
		return this.#data.join('');
	}

	moveTo(matrix: Matrix, x: number, y: number): void {
		this.#add('M', matrix, x, y);
	}

	/** Without a point to start from, a line only sets one, as on a canvas. */
	lineTo(matrix: Matrix, x: number, y: number): void {
		this.#add(this.#hasPoint ? 'L' : 'M', matrix, x, y);
	}

	quadraticCurveTo(matrix: Matrix, ...points: [number, number, number, number]): void {
		if (!this.#hasPoint) this.moveTo(matrix, points[0], points[1]);
		this.#add('Q', matrix, ...points);
	}

	bezierCurveTo(matrix: Matrix, ...points: [number, number, number, number, number, number]): void {
		if (!this.#hasPoint) this.moveTo(matrix, points[0], points[1]);
		this.#add('C', matrix, ...points);
	}

	closePath(): void {
		if (this.#hasPoint) this.#data.push('Z');
	}

	rect(matrix: Matrix, x: number, y: number, width: number, height: number): void {
		if (![x, y, width, height].every(Number.isFinite)) return;
		this.moveTo(matrix, x, y);
		this.lineTo(matrix, x + width, y);
		this.lineTo(matrix, x + width, y + height);
		this.lineTo(matrix, x, y + height);
		this.closePath();
	}

	ellipse(
		matrix: Matrix,
		[x, y]: readonly [number, number],
		[radiusX, radiusY]: readonly [number, number],
		turn: number,
		[from, to]: readonly [number, number],
		backwards: boolean
	): void {
		if (![x, y, radiusX, radiusY, turn, from, to].every(Number.isFinite)) return;
		const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
		// From a circle of radius 1 about the origin to where the ellipse stands.
		const stand = through(matrix, [cos, sin, -sin, cos, x, y]);
		const circle = through(stand, [radiusX, 0, 0, radiusY, 0, 0]);
		const sweep = sweepOf(from, to, backwards);
		this.lineTo(circle, Math.cos(from), Math.sin(from));
		const parts = Math.ceil(Math.abs(sweep) / (Math.PI / 2));
		for (let part = 0; part < parts; part++)
			this.#quarter(through(circle, turned(from + (sweep * part) / parts)), sweep / parts);
	}

	/** At most a quarter of the circle from (1, 0); a curve is then within 0.03 % of it. */
	#quarter(circle: Matrix, angle: number): void {
		const reach = (4 / 3) * Math.tan(angle / 4);
		const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
		this.#add('C', circle, ...[1, reach, cos + reach * sin, sin - reach * cos, cos, sin]);
	}

	/** A point that is no number is passed over, as on a canvas. */
	#add(letter: string, matrix: Matrix, ...points: number[]): void {
		if (!points.every(Number.isFinite)) return;
		const places: string[] = [];
		for (let i = 0; i < points.length; i += 2)
			places.push(
				placeOf(matrix, points[i] ?? 0, points[i + 1] ?? 0)
					.map((number) => short(number))
					.join(' ')
			);
		this.#data.push(`${letter}${places.join(' ')}`);
		this.#hasPoint = true;
	}
}

/** How far an arc runs, with its sign: a whole turn at most, the short of one otherwise. */
function sweepOf(from: number, to: number, backwards: boolean): number {
	const span = backwards ? from - to : to - from;
	const size = span >= FULL ? FULL : ((span % FULL) + FULL) % FULL;
	return backwards ? -size : size;
}
