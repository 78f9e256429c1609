/**
 * Changes of the calendar as commands: a year, a holiday, a shut-down. Each is one step that one undo takes back.
 * All are made in the base: a calendar is one for all scenarios.
 */
import type { Layout } from '$lib/engine/layout';
import type { Command, InputEntry } from '$lib/workbook/commands';
import type { Scalar } from '$lib/workbook/schema';
import type { CalendarPicture } from './calendar';

export interface HolidayDraft {
	readonly label: string;
	readonly counted: boolean;
	/** Ordinals of the month and the day, from 0; used on a date. */
	readonly month: number;
	readonly day: number;
	/** Used from Easter. */
	readonly daysAfter: number;
}

export interface ShutDownDraft {
	readonly label: string;
	readonly fromMonth: number;
	readonly fromDay: number;
	readonly toMonth: number;
	readonly toDay: number;
}

export interface CalendarEdit {
	readonly picture: CalendarPicture;
	readonly layout: Layout;
	readonly base: string;
}

export function yearCommand({ picture, base }: CalendarEdit, year: number): Command {
	return inputs(base, [{ quantity: picture.of_year, at: [], value: year }]);
}

/** A new holiday where `id` is null. */
export function holidayCommands(
	edit: CalendarEdit,
	id: string | null,
	draft: HolidayDraft
): Command[] {
	const { picture, layout, base } = edit;
	const member = id ?? draft.label;
	const rules = layout.byName.get(picture.rule)?.quantity.type;
	const rule =
		typeof rules === 'object' ? memberAt(layout, rules.member_of, draft.counted ? 1 : 0) : null;
	const month = memberAt(layout, picture.month, draft.month);
	const values: readonly (readonly [string, Scalar])[] = [
		[picture.rule, rule],
		[picture.holiday_month, draft.counted ? null : month],
		[picture.holiday_day, draft.counted ? null : draft.day + 1],
		[picture.days_after, draft.counted ? draft.daysAfter : null]
	];
	return [...named(edit, picture.holiday, id, draft.label), inputsOf(base, member, values)];
}

export function shutDownCommands(
	edit: CalendarEdit,
	id: string | null,
	draft: ShutDownDraft
): Command[] {
	const { picture, layout, base } = edit;
	const member = id ?? draft.label;
	const month = (ordinal: number) => memberAt(layout, picture.month, ordinal);
	const values: readonly (readonly [string, Scalar])[] = [
		[picture.from_month, month(draft.fromMonth)],
		[picture.from_day, draft.fromDay + 1],
		[picture.to_month, month(draft.toMonth)],
		[picture.to_day, draft.toDay + 1]
	];
	return [...named(edit, picture.shut_down, id, draft.label), inputsOf(base, member, values)];
}

/** The member added, or its label changed; nothing where it is the same. */
function named({ layout }: CalendarEdit, set: string, id: string | null, label: string): Command[] {
	const members = layout.sets.get(set)?.members ?? [];
	if (id === null)
		return [{ kind: 'add_member', set, index: members.length, member: { id: label } }];
	const member = members.find((member) => member.id === id);
	if (!member || (member.label ?? member.id) === label) return [];
	return [{ kind: 'replace_member', set, id, member: { ...member, label } }];
}

const memberAt = (layout: Layout, set: string, ordinal: number): string | null =>
	layout.sets.get(set)?.members[ordinal]?.id ?? null;

const inputs = (scenario: string, entries: readonly InputEntry[]): Command => ({
	kind: 'set_inputs',
	scenario,
	entries
});

const inputsOf = (
	base: string,
	member: string,
	values: readonly (readonly [string, Scalar])[]
): Command =>
	inputs(
		base,
		values.map(([quantity, value]) => ({ quantity, at: [member], value }))
	);
