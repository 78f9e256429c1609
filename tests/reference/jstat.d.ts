/** What the tests use of the jstat package, which brings no types. */
declare module 'jstat' {
	export const jStat: {
		readonly normal: {
			inv(p: number, mean: number, sd: number): number;
			cdf(x: number, mean: number, sd: number): number;
			pdf(x: number, mean: number, sd: number): number;
		};
		readonly beta: {
			inv(p: number, a: number, b: number): number;
			cdf(x: number, a: number, b: number): number;
		};
		readonly studentt: { inv(p: number, freedom: number): number };
		readonly chisquare: { inv(p: number, freedom: number): number };
		readonly triangular: { inv(p: number, min: number, max: number, mode: number): number };
		gammaln(x: number): number;
		spearmancoeff(x: readonly number[], y: readonly number[]): number;
		quantiles(
			values: readonly number[],
			shares: readonly number[],
			alpha: number,
			beta: number
		): number[];
	};
}
