/**
 * Numbers in words, so that a thousand is not taken for one: "one thousand nine hundred fifty-five", and digit by digit
 * behind the point. Spelt as the rules of CLDR spell English cardinals (spellout-cardinal).
 */
const SMALL = [
	...['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'],
	...['eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen'],
	...['eighteen', 'nineteen']
];
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

function below1000(value: number): string {
	if (value < 20) return SMALL[value]!;
	if (value < 100) {
		const rest = value % 10;
		return TENS[Math.floor(value / 10)]! + (rest ? `-${SMALL[rest]}` : '');
	}
	const rest = value % 100;
	return `${SMALL[Math.floor(value / 100)]} hundred${rest ? ` ${below1000(rest)}` : ''}`;
}

/** Of a whole number below a million. */
function wholeWords(value: number): string {
	if (value < 1000) return below1000(value);
	const rest = value % 1000;
	return `${below1000(Math.floor(value / 1000))} thousand${rest ? ` ${below1000(rest)}` : ''}`;
}

/** Of digits as JavaScript reads them, "-1.950", with less than a million before the point. */
export function inWords(digits: string): string {
	const [whole = '0', decimals = ''] = digits.replace('-', '').split('.');
	const behind =
		decimals && ` point ${[...decimals].map((digit) => SMALL[Number(digit)]).join(' ')}`;
	return `${digits.startsWith('-') ? 'minus ' : ''}${wholeWords(Number(whole))}${behind}`;
}
