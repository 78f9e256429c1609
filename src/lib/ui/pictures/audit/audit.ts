/** What became of a decided case: as promised, so far, with the rest as planned, and what lies between. Words stand in `audit-words.ts`. */
import type { AuditPicture } from '$lib/workbook/decided-case';
import { read, type Reading, type Source } from '../../figure/read';
import { waterfallOf, type Waterfall } from '../waterfall/waterfall';

export interface DecidedCase {
	readonly id: string;
	readonly label: string;
}

export interface Audit {
	readonly decided: DecidedCase;
	/** From the promise to what is likely, the largest cause first. */
	readonly waterfall: Waterfall;
	readonly promised: Reading;
	readonly soFar: Reading;
	readonly rest: Reading;
	readonly likely: Reading;
	readonly paybackPromised: Reading;
	readonly payback: Reading;
	/** The month of the decision, and the last one booked; empty where there is none. */
	readonly decidedIn: string;
	readonly lastBooked: string;
}

export const casesOf = (picture: AuditPicture, { layout }: Source): DecidedCase[] =>
	(layout.sets.get(picture.case)?.members ?? []).map(({ id, label }) => ({
		id,
		label: label ?? id
	}));

export function auditOf(picture: AuditPicture, source: Source, id: string): Audit | null {
	const cases = casesOf(picture, source);
	const at = cases.findIndex((one) => one.id === id);
	const decided = cases[at];
	if (!decided) return null;
	const { from, steps, to } = picture;
	const waterfall = waterfallOf(
		// A case is read as the close reads a month; nothing of it is open or closed.
		{
			kind: 'waterfall',
			title: '',
			month: picture.case,
			closed: to,
			entered: [to],
			from,
			steps,
			to
		},
		source,
		id,
		false
	);
	if (!waterfall) return null;
	const of = (name: string) => read(source, name, { [picture.case]: at });
	const month = (name: string) => {
		const { kind, value } = of(name);
		const member = kind === 'value' ? source.layout.sets.get(picture.month)?.members[value] : null;
		return member?.label ?? member?.id ?? '';
	};
	return {
		...{ decided, waterfall },
		...{ promised: of(from), likely: of(to), soFar: of(picture.to_date), rest: of(picture.rest) },
		...{ paybackPromised: of(picture.payback_promised), payback: of(picture.payback) },
		...{ decidedIn: month(picture.decided), lastBooked: month(picture.last) }
	};
}
