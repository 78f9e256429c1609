/** What options together are worth beyond each alone, as a finding. */
import { formatNumber, formatUnit } from '../../format';
import type { Interaction } from './interaction';
import type { Scale } from '../../figure/scale';

/** Of the combination that differs most from its sum. */
export function interactionTitle(
	interactions: readonly Interaction[],
	scale: Scale,
	locale: string
): string {
	const [most] = [...interactions].sort((a, b) => Math.abs(b.beyond) - Math.abs(a.beyond));
	if (!most) return '';
	const decimals = scale.factor === 1 ? 2 : 0;
	const size = formatNumber(Math.abs(most.beyond) * scale.factor, decimals, locale);
	const word = most.beyond < 0 ? 'less' : 'more';
	return `${most.together.title} would be worth ${size}\u00a0${scale.unit} ${word} than each alone adds up to`;
}

/** "EUR/year" in thousands of EUR is "kEUR/year"; as it is where it does not begin with the money of the picture. */
export function annualUnit(
	annual: string | undefined,
	money: string | undefined,
	scale: Scale
): string {
	if (annual === undefined || money === undefined || !annual.startsWith(money))
		return annual === undefined ? scale.unit : formatUnit(annual);
	return scale.unit + formatUnit(annual.slice(money.length));
}
