/**
 * Rounding of numbers that people write as decimals. 0.7 and 0.1 are no binary fractions, and 0.7 / 0.1 is
 * 6.999999999999999: taken as it stands, FLOOR would give 0.6. The rule, here and in `cells/rounding.ts`: a
 * quotient within a few units in the last place of a whole number counts as that number, and for ROUND one as near to
 * a half as the half. Among whole numbers below 10^15 it changes nothing.
 */

/** Four to eight units in the last place: what a product, a sum and a division leave behind. */
export const NEAR = 2 ** -50;
/** Above 2^48 there is hardly a fraction left to speak of. */
export const NEAREST = 0.25;

const slack = (steps: number) => Math.min(steps * NEAR, NEAREST);

/** Of steps of zero or more. */
export const down = (steps: number) => Math.floor(steps + slack(steps));
export const up = (steps: number) => Math.ceil(steps - slack(steps));
/** The nearest; a half goes up. */
export function nearest(steps: number): number {
	const whole = Math.floor(steps);
	return steps - whole >= 0.5 - slack(steps) ? whole + 1 : whole;
}

/** `toWhole` works on the magnitude, so that a half goes away from zero on both sides: −2.5 gives −3. */
export function toDigits(x: number, digits: number, toWhole: (steps: number) => number): number {
	if (!Number.isInteger(digits)) return NaN;
	const magnitude = Math.abs(x);
	let rounded: number;
	if (digits >= 0) {
		const factor = Math.pow(10, digits);
		const scaled = magnitude * factor;
		// Beyond 2^53 there is no fraction left to round; an infinite factor would only lose the number.
		rounded = scaled < 9007199254740992 ? toWhole(scaled) / factor : magnitude;
	} else {
		const factor = Math.pow(10, -digits);
		const scaled = magnitude / factor;
		// Divided down to nothing, it is still more than none: rounded up it is one step.
		const steps = toWhole(scaled === 0 && magnitude > 0 ? Number.MIN_VALUE : scaled);
		rounded = steps === 0 ? 0 : steps * factor;
	}
	return x < 0 ? -rounded : rounded;
}

/**
 * The multiple of a step towards plus infinity (`ceiling`) or minus infinity. OpenFormula 6.17: zero on either side
 * gives zero, and a number above zero has no multiple of a step below it. It leaves open what a number below
 * zero and a step above it give; as without a step, they are rounded towards the same side as any.
 */
export function toMultiple(x: number, step: number, ceiling: boolean): number {
	if (x === 0 || step === 0) return 0;
	if (x > 0 && step < 0) return NaN;
	const steps = Math.abs(x / step);
	const whole = x > 0 === ceiling ? up(steps) : down(steps);
	if (whole === 0) return 0;
	const multiple = times(whole, Math.abs(step));
	return x < 0 ? -multiple : multiple;
}

/** Nine digits behind the point are no accident of binary fractions. */
const DIGITS = 9;

/** So many steps; a step written as a decimal is taken as one, so that seven steps of 0.1 are 0.7. */
function times(whole: number, step: number): number {
	let tens = 1;
	for (let digits = 0; digits <= DIGITS; digits++, tens *= 10) {
		const scaled = step * tens;
		const units = Math.round(scaled);
		if (units > 0 && Math.abs(scaled - units) <= slack(scaled)) return (whole * units) / tens;
	}
	return whole * step;
}

/** The remainder with the divisor's sign; none where the quotient counts as whole. */
export function remainder(x: number, divisor: number): number {
	const steps = Math.abs(x / divisor);
	const isWhole = Math.abs(steps - Math.round(steps)) <= slack(steps);
	if (isWhole && !(Number.isInteger(x) && Number.isInteger(divisor))) return 0;
	const rest = x % divisor;
	return rest !== 0 && rest < 0 !== divisor < 0 ? rest + divisor : rest;
}
