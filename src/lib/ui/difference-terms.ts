/** The quantities that a formula adds and subtracts: what a difference is small beside. */

const INDEX = /\[[^[\]]*\]/g;
/** Names with signs between them, and nothing else: a product or a quotient is no difference. */
const SUM_OF_NAMES = /^[\s(]*-?[\s(]*[\p{L}_]\w*[\s)]*([+-][\s(]*[\p{L}_]\w*[\s)]*)+$/u;

const ZERO = /^\s*0\s*(\[[^[\]]*\])?\s*$/;

/** What stands there where it is not nothing: the other branch of a choice between it and zero. */
function orNothing(formula: string): string {
	const inside = /^\s*IF\s*\(([^]*)\)\s*$/u.exec(formula)?.[1];
	const parts = inside === undefined ? [] : parted(inside);
	const branches = parts.slice(1).filter((part) => !ZERO.test(part));
	return parts.length === 3 && branches.length === 1 ? branches[0]! : formula;
}

/** At the semicolons that stand in no bracket; nothing where brackets do not pair. */
function parted(text: string): string[] {
	const parts = [''];
	let depth = 0;
	for (const sign of text) {
		if (sign === '(' || sign === '[') depth++;
		if (sign === ')' || sign === ']') depth--;
		if (depth < 0) return [];
		if (sign === ';' && depth === 0) parts.push('');
		else parts[parts.length - 1] += sign;
	}
	return parts;
}

/** Empty where the formula is anything but a sum of named quantities with a minus in it, or a choice between one and zero. */
export function differenceTerms(formula: string): string[] {
	let text = orNothing(formula);
	for (let before = ''; before !== text;) {
		before = text;
		text = text.replace(INDEX, '');
	}
	if (!text.includes('-') || !SUM_OF_NAMES.test(text)) return [];
	return [...new Set(text.match(/[\p{L}_]\w*/gu))];
}
