/**
 * When the work was last written down, in words: "saved 14:02".
 */
interface Saving {
	readonly savedAt: number | null;
	readonly keepingProblem: string;
	readonly unsaved: boolean;
}
interface Reading {
	readonly readOnly: boolean;
	readonly locale: string;
}

export function savedWords(saving: Saving, reading: Reading): string {
	if (reading.readOnly) return 'read only here';
	if (saving.keepingProblem) return 'not kept';
	if (saving.unsaved) return 'saving';
	if (saving.savedAt === null) return '';
	const time = new Intl.DateTimeFormat(reading.locale, {
		hour: '2-digit',
		minute: '2-digit',
		hourCycle: 'h23'
	});
	return `saved ${time.format(saving.savedAt)}`;
}
