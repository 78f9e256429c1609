/** Moments as people read them. */

const formats = new Map<string, Intl.DateTimeFormat>();

/** "24 Nov 2026, 14:02" */
export function moment(at: number, locale: string): string {
	let format = formats.get(locale);
	if (!format) {
		format = new Intl.DateTimeFormat(locale, {
			dateStyle: 'medium',
			timeStyle: 'short',
			hourCycle: 'h23'
		});
		formats.set(locale, format);
	}
	return format.format(at);
}
