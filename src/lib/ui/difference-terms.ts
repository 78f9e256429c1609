/** The quantities that a formula adds and subtracts: what a difference is small beside. */

const INDEX = /\[[^[\]]*\]/g;
/** Names with signs between them, and nothing else: a product or a quotient is no difference. */
const SUM_OF_NAMES = /^[\s(]*-?[\s(]*[\p{L}_]\w*[\s)]*([+-][\s(]*[\p{L}_]\w*[\s)]*)+$/u;

/** Empty where the formula is anything but a sum of named quantities with a minus in it. */
export function differenceTerms(formula: string): string[] {
	let text = formula;
	for (let before = ''; before !== text;) {
		before = text;
		text = text.replace(INDEX, '');
	}
	if (!text.includes('-') || !SUM_OF_NAMES.test(text)) return [];
	return [...new Set(text.match(/[\p{L}_]\w*/gu))];
}
