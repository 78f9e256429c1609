/**
 * Formula text as files of ISO/IEC 29500 hold it: without the leading "=", exponents in capitals, and the functions
 * that came after the first edition with the prefix that they are stored under.
 */
import type { Literals } from '$lib/engine/cells/literals';

/**
 * The kinds of nothing in a file. They need not all be told apart there, but `else` must find the two that it
 * catches, and an absent value must be text.
 */
export const IN_FILE: Literals = {
	absent: '"absent"',
	empty: '#NULL!',
	offEnd: 'NA()',
	noAnswer: 'NA()',
	fault: '#VALUE!',
	dividesByZero: '#DIV/0!',
	circular: '#REF!',
	notCompared: '#NUM!'
};

const LATER = /\b(IFNA|ISOWEEKNUM)\(/g;
const EXPONENT = /(?<![A-Za-z_$])(\d+(?:\.\d+)?)e([+-]?\d+)/g;

/** What a cell's content says after its "=". Texts and names in quotes stay as they are. */
export function fileFormula(content: string): string {
	return content
		.slice(1)
		.split(/("(?:[^"]|"")*"|'(?:[^']|'')*')/)
		.map((part, i) =>
			i % 2 === 1 ? part : part.replace(LATER, '_xlfn.$1(').replace(EXPONENT, '$1E$2')
		)
		.join('');
}

/** A text as a formula writes it. */
export const textLiteral = (text: string): string => `"${text.replaceAll('"', '""')}"`;
