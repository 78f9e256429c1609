/** By how much more of something a reader may want to ask: four round amounts up to about half of what is there. */
const STEPS = [1, 2, 5];
const SHARES = [0.01, 0.05, 0.2, 0.5];

export function amountsFor(there: number): number[] {
	const size = Math.abs(there) > 0 && Number.isFinite(there) ? Math.abs(there) : 100;
	return [...new Set(SHARES.map((share) => rounded(share * size)))];
}

/** To the nearest of 1, 2, 5, 10, 20 … */
function rounded(value: number): number {
	const power = 10 ** Math.floor(Math.log10(value));
	const candidates = [...STEPS, 10].map((step) => step * power);
	return candidates.reduce((best, each) =>
		Math.abs(each - value) < Math.abs(best - value) ? each : best
	);
}
