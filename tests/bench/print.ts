/** The bench's report: headings, and lines with the figure after its name. */

export function heading(text: string): void {
	console.log(`\n${text}`);
}

export function line(name: string, figures: string): void {
	console.log(`  ${name.padEnd(28)} ${figures}`);
}

/** "8.4 times". */
export const ratio = (value: number): string => `${value.toFixed(1)} times`;
