/** What customers call a month of the year, 0 to 11: in full and short, in English and in the reader's language. */
export function monthsCalled(month: number, locale: string): string[] {
	const day = new Date(Date.UTC(2028, month, 1));
	return ['en', locale].flatMap((language) =>
		(['long', 'short'] as const).map((form) =>
			new Intl.DateTimeFormat(language, { month: form, timeZone: 'UTC' }).format(day)
		)
	);
}
