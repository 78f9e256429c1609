/** The name under which the matches of a file are offered to be kept: the file's own, without the month that ends it. */

const ENDING = /\.[a-z0-9]{1,5}$/i;
/** "2027-06", "06.2027", "2027_06_30", "(2)": what next month's file has otherwise. */
const NUMBERED = /[\s_.()-]*\b\d[\d\s_.()-]*$/;

export function keptName(file: string): string {
	const stem = file.replace(ENDING, '');
	const words = (stem.replaceAll('_', ' ').replace(NUMBERED, '') || stem)
		.replace(/[\s_-]+/g, ' ')
		.trim();
	return (words || file).slice(0, 200);
}
