/** Rolling months forward from the page of lists: what the month that leaves held in the base is kept as a frozen copy. */
import { monthLeft } from '$lib/engine/month-left';
import { dayText } from '$lib/workbook/date-text';
import { rollForward } from '$lib/workbook/roll';
import { copyId } from '../frozen/copy-id';
import { texts as frozenTexts } from '../frozen/texts';
import type { Session } from '../session.svelte';
import { texts } from './texts';

/** Rolls on, or gives the sentence that says why not. */
export function roll(session: Session, set: string, today: Date): string | null {
	const { workbook, layout, base, stale } = session;
	if (!workbook || !layout || !base || !session.isSettled) return frozenTexts.notSettled;
	const title = session.titleOf(session.baseId);
	if (stale?.inScenario(session.baseId)) return frozenTexts.outOfDate(title);
	const rolled = rollForward(workbook, set);
	if (!rolled.ok) return rolled.message;
	const { left, come } = rolled;
	const month = left.label ?? left.id;
	const frozen = monthLeft(layout, base, {
		...{ set, month: left.id },
		head: {
			...{ id: copyId(workbook, month), title: month, of: title, date: dayText(today) },
			note: texts.leftMonth(month)
		}
	});
	const refused = session.apply(
		...(frozen ? [{ kind: 'add_frozen' as const, frozen }] : []),
		...rolled.commands
	);
	if (refused) return refused;
	session.said = texts.rolled(month, come.label ?? come.id);
	return null;
}
