/**
 * What a series of measurements comes to: its middle, its upper end, and the power with which one series
 * grows with another.
 */

/** The value below which the given share of the series lies, straight between neighbours. */
export function quantile(series: readonly number[], share: number): number {
	const ascending = [...series].sort((a, b) => a - b);
	const place = share * (ascending.length - 1);
	const low = ascending[Math.floor(place)] ?? NaN;
	const high = ascending[Math.ceil(place)] ?? NaN;
	return low + (high - low) * (place - Math.floor(place));
}

export const median = (series: readonly number[]): number => quantile(series, 0.5);

/** The exponent p of y ~ x^p: the slope of a straight line through the logarithms, by least squares. */
export function exponent(x: readonly number[], y: readonly number[]): number {
	const [u, v] = [x.map(Math.log), y.map(Math.log)];
	const mean = (series: readonly number[]) => series.reduce((sum, one) => sum + one, 0) / x.length;
	const [um, vm] = [mean(u), mean(v)];
	let above = 0;
	let below = 0;
	u.forEach((one, i) => {
		above += (one - um) * ((v[i] ?? NaN) - vm);
		below += (one - um) ** 2;
	});
	return above / below;
}

export interface Timed<T> {
	/** Milliseconds by the clock, and of the processor's work in this process. */
	readonly ms: number;
	readonly cpu: number;
	readonly result: T;
}

/** How long a piece of work took, and what came out. */
export function timed<T>(work: () => T): Timed<T> {
	const spent = process.cpuUsage();
	const start = performance.now();
	const result = work();
	const ms = performance.now() - start;
	const { user, system } = process.cpuUsage(spent);
	return { ms, cpu: (user + system) / 1000, result };
}
