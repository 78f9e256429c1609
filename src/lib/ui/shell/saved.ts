/**
 * When the work was last written down, in words: "saved 14:02", and for a shared workbook "saved 14:02, revision 41".
 */
import { sharedWords, type SharedState } from '../shared/words';

interface Saving {
	readonly savedAt: number | null;
	readonly keepingProblem: string;
	readonly unsaved: boolean;
	readonly sharing: SharedState;
}
interface Reading {
	readonly readOnly: boolean;
	readonly readOnlyFor: 'tab' | 'role';
	readonly locale: string;
}

export function savedWords(saving: Saving, reading: Reading): string {
	if (reading.readOnly && reading.readOnlyFor === 'tab') return 'read only here';
	if (saving.keepingProblem) return 'not kept';
	if (saving.unsaved) return 'saving';
	const time = new Intl.DateTimeFormat(reading.locale, {
		hour: '2-digit',
		minute: '2-digit',
		hourCycle: 'h23'
	});
	const shared = sharedWords(saving.sharing, (at) => time.format(at));
	if (shared !== null) return shared;
	return saving.savedAt === null ? '' : `saved ${time.format(saving.savedAt)}`;
}
