/**
 * One pattern's week, hour by hour: which hours are worked, and what lies over them. Hours worked are read from
 * what is entered, so that a stroke shows at once; premiums, prices and costs from results. Shapes are
 * `week-drawing.ts`'s, sentences `week-words.ts`'s, strokes `week-stroke.ts`'s.
 */
import type { Layout } from '$lib/engine/layout';
import { inputValues } from '$lib/workbook/scenario';
import type { Picture } from '$lib/workbook/schema';
import { valueAt } from '$lib/workbook/values';
import { isInputCell } from '$lib/engine/input-cell';
import { read, type Reading, type Source } from '../../figure/read';

export type WeekPicture = Extract<Picture, { kind: 'week' }>;

export const HOURS = 24;
export const DAYS = 7;

export interface Hour {
	/** The member of the set of hours. */
	readonly id: string;
	/** 0 to 167. */
	readonly place: number;
	readonly worked: boolean;
	readonly night: boolean;
	/** Ordinal of the crew, 0 where the picture names none. */
	readonly crew: number;
	readonly premium: Reading | null;
	readonly price: Reading | null;
	/** Part by part, as the picture names them. */
	readonly costs: readonly Reading[];
}

export interface Day {
	readonly label: string;
	readonly short: string;
	readonly hours: readonly Hour[];
}

export interface Week {
	readonly pattern: string;
	readonly patternLabel: string;
	readonly days: readonly Day[];
	readonly hoursWorked: number;
	/** Labels of crews, by ordinal. */
	readonly crews: readonly string[];
	/** Whether hours can be painted: the quantity is entered, not computed. */
	readonly paintable: boolean;
}

/** Null where the sets are no week of seven days. */
export function weekOf(
	picture: WeekPicture,
	source: Source,
	scenario: string,
	pattern: string
): Week | null {
	const { layout } = source;
	const hours = layout.sets.get(picture.hour)?.members ?? [];
	const days = layout.sets.get(picture.weekday)?.members ?? [];
	const worked = layout.byName.get(picture.worked);
	const patterns = layout.sets.get(picture.pattern)?.members ?? [];
	const ordinal = patterns.findIndex(({ id }) => id === pattern);
	if (hours.length !== DAYS * HOURS || days.length !== DAYS || !worked || ordinal < 0) return null;
	const entered = inputValues(layout.workbook, scenario, picture.worked);
	const order = worked.axes.map(({ set }) => set === picture.hour);
	const paintable = isInputCell(layout.workbook, worked, worked.base);
	const hourOf = (place: number): Hour => {
		const id = hours[place]?.id ?? '';
		const at = { [picture.hour]: place, [picture.pattern]: ordinal };
		const of = (name: string | undefined) => (name === undefined ? null : read(source, name, at));
		const path = order.map((isHour) => (isHour ? id : pattern));
		return {
			...{ id, place },
			worked: paintable ? valueAt(entered, path) === true : of(picture.worked)?.value === 1,
			night: of(picture.night)?.value === 1,
			crew: Math.max(0, of(picture.crew)?.value || 0),
			premium: of(picture.premium),
			price: of(picture.price),
			costs: picture.costs.map((name) => read(source, name, at))
		};
	};
	const made = days.map(({ id, label }, day) => ({
		label: label ?? id,
		short: id,
		hours: Array.from({ length: HOURS }, (_, hour) => hourOf(day * HOURS + hour))
	}));
	return {
		pattern,
		patternLabel: patterns[ordinal]?.label ?? pattern,
		days: made,
		hoursWorked: made.reduce((sum, day) => sum + workedIn(day), 0),
		crews: crewsOf(layout, picture),
		paintable
	};
}

export const workedIn = (day: Day): number => day.hours.filter((hour) => hour.worked).length;

function crewsOf(layout: Layout, picture: WeekPicture): string[] {
	const type = layout.byName.get(picture.crew ?? '')?.quantity.type;
	const set = typeof type === 'object' ? layout.sets.get(type.member_of) : undefined;
	return (set?.members ?? []).map(({ id, label }) => label ?? id);
}

/** What the hour costs if it is worked; null where a part has no value. */
export function costOf(hour: Hour): number | null {
	if (hour.costs.some((cost) => cost.kind !== 'value')) return null;
	return hour.costs.reduce((sum, cost) => sum + cost.value, 0);
}

export interface DayCost {
	/** Of the hours worked; null where none is. */
	readonly least: number | null;
	readonly most: number | null;
	readonly total: number;
}

/** Null where the cost of an hour that is worked has no value. */
export function dayCost(day: Day): DayCost | null {
	const costs = day.hours.filter((hour) => hour.worked).map(costOf);
	if (costs.some((cost) => cost === null)) return null;
	const known = costs.filter((cost) => cost !== null);
	return {
		least: known.length > 0 ? Math.min(...known) : null,
		most: known.length > 0 ? Math.max(...known) : null,
		total: known.reduce((sum, cost) => sum + cost, 0)
	};
}

/** The mean of the hours worked in the week; null where there are none, or one has no cost. */
export function meanCost(week: Week): number | null {
	const days = week.days.map(dayCost);
	if (week.hoursWorked === 0 || days.some((day) => day === null)) return null;
	return days.reduce((sum, day) => sum + (day?.total ?? 0), 0) / week.hoursWorked;
}

/** Yes/no quantities of the pattern that say yes, with their cautions. */
export function weekCautions(
	picture: WeekPicture,
	source: Source,
	pattern: string
): { readonly about: string; readonly text: string }[] {
	const { layout } = source;
	const ordinal = layout.ordinals.get(picture.pattern)?.get(pattern) ?? -1;
	return picture.cautions.flatMap((name) => {
		const reading = read(source, name, { [picture.pattern]: ordinal });
		const quantity = reading.quantity?.quantity;
		if (reading.kind !== 'value' || reading.value === 0 || !quantity?.caution) return [];
		return [{ about: `${quantity.label}.`, text: quantity.caution.message }];
	});
}
