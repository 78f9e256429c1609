/**
 * A scenario that is decided becomes a case that is followed: a member of the picture's set of cases, whose promise reads the
 * frozen copy of that day. Commands only; the copy is made by whoever has the results.
 */
import type { Command } from './commands/command';
import { findQuantity, findSet, namesTaken } from './lookup';
import type { Picture, Workbook } from './schema';

export type AuditPicture = Extract<Picture, { readonly kind: 'audit' }>;

export interface Decided {
	/** What the case is called, and the frozen copy that holds its promise. */
	readonly title: string;
	readonly copy: string;
	/** The day of the decision, "2028-03-14". */
	readonly date: string;
}

export function followCase(
	workbook: Workbook,
	picture: AuditPicture,
	{ title, copy, date }: Decided
): Command[] {
	const id = caseId(workbook, title, copy);
	const member = { id, ...(id !== title && { label: title }) };
	const index = findSet(workbook, picture.case)?.members.length ?? 0;
	const rules = picture.takes.flatMap(({ promise, reads }): Command[] => {
		const quantity = findQuantity(workbook, promise);
		if (!quantity || typeof quantity.formula !== 'object') return [];
		const { by, cases } = quantity.formula;
		const formula = { by, cases: { ...cases, [id]: `${reads}[${copy}]` } };
		return [{ kind: 'replace_quantity', name: promise, quantity: { ...quantity, formula } }];
	});
	const month = monthOf(workbook, picture, date);
	return [
		{ kind: 'add_member', set: picture.case, index, member },
		...rules,
		...(month === null
			? []
			: [
					{
						...{ kind: 'set_inputs' as const, scenario: workbook.scenarios[0]!.id },
						entries: [{ quantity: picture.decided, at: [id], value: month }]
					}
				])
	];
}

/** The month of a day among those of the picture; null where they do not hold it, so that it is asked for. */
function monthOf(workbook: Workbook, { month }: AuditPicture, date: string): string | null {
	const id = date.slice(0, 7);
	return findSet(workbook, month)?.members.some((one) => one.id === id) ? id : null;
}

/** The title as the id of a member that no other case has, and that is no name of a formula. */
function caseId(workbook: Workbook, title: string, copy: string): string {
	const plain =
		title
			.replace(/['"\p{Cc}]/gu, ' ')
			.replace(/\s+/g, ' ')
			.trim()
			.slice(0, 56) || 'Case';
	const taken = namesTaken(workbook).add(copy);
	for (let n = 1; ; n++) {
		const id = n === 1 ? plain : `${plain} ${n}`;
		if (!taken.has(id)) return id;
	}
}
