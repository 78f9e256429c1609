import { setOfChoice } from '$lib/workbook/lookup';
import type { QuotePicture } from '$lib/workbook/quote-schema';
import type { Workbook } from '$lib/workbook/schema';

/** What customers call a month of the year, 0 to 11: in full and short, in English and in the reader's language. */
export function monthsCalled(month: number, locale: string): string[] {
	const day = new Date(Date.UTC(2028, month, 1));
	return ['en', locale].flatMap((language) =>
		(['long', 'short'] as const).map((form) =>
			new Intl.DateTimeFormat(language, { month: form, timeZone: 'UTC' }).format(day)
		)
	);
}

/** Of the months that an order is in, what each is called; none where they are not the twelve of the calendar, so that only dates written as 2028-03 are read. */
export function monthsOf(
	workbook: Workbook,
	picture: QuotePicture,
	locale: string
): readonly (readonly string[])[] {
	const members = setOfChoice(workbook, picture.hour_value?.chosen)?.members ?? [];
	return members.length === 12
		? members.map(({ id, label = id }, at) => [id, label, ...monthsCalled(at, locale)])
		: [];
}
