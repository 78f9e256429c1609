/** A map of two inputs: its heads, its cells with their shade, its finding and its table. */
import type { PlainTable } from '$lib/exchange/csv/write';
import type { MapResult } from '$lib/studies/map';
import { OK } from '$lib/engine/state';
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { MapAxis, StudyOf } from '$lib/workbook/study-schema';
import type { KindWords } from '../../kind-words';
import { inSentence, nameOf, titleOf } from '../../names';
import { movedText, movedUnit, movedWhole } from '../../range-words';
import type { Shown } from '../../shown';

export const kind: KindWords<'map'> = {
	name: 'Two-way table',
	asks: 'What a result is over the ranges of two inputs',
	atEach: 'in every field of the table',
	points: 'fields',
	fresh: ({ selected, ranges: [across, down] }) => ({
		scenario: selected,
		across: { ...across, steps: 9 },
		down: { ...down, steps: 9 }
	}),
	figures: ({ values }) => [...values],
	said(workbook, study, result, shown) {
		const title = mapTitle(workbook, study, result, shown);
		return {
			...{ title, summary: title, line: mapLine(workbook, study, shown) },
			table: mapTable(workbook, study, result, shown)
		};
	},
	headline: ({ base }, unit) => [{ label: 'As it stands', value: base.value, unit }]
};

type MapStudy = StudyOf<'map'>;

export interface MapCell {
	readonly text: string;
	/** 0 lowest to 4 highest; null without a value. */
	readonly shade: number | null;
	/** The one nearest to where the inputs stand. */
	readonly isToday: boolean;
}

export interface MapPicture {
	readonly heads: readonly string[];
	readonly rows: readonly { readonly head: string; readonly cells: readonly MapCell[] }[];
	/** The unit behind the heads; empty for factors. */
	readonly acrossUnit: string;
	readonly downUnit: string;
}

const SHADES = 5;

export function mapPicture(
	workbook: Workbook,
	study: MapStudy,
	result: MapResult,
	shown: Shown
): MapPicture {
	const columns = result.across.length;
	const known = [...result.values].filter(
		(value, i) => result.states[i] === OK && !Number.isNaN(value)
	);
	const [low, high] = [Math.min(...known), Math.max(...known)];
	const shadeOf = (value: number) =>
		high > low ? Math.min(SHADES - 1, Math.floor(((value - low) / (high - low)) * SHADES)) : 2;
	const today = {
		across: nearest(result.across, result.today.across),
		down: nearest(result.down, result.today.down)
	};
	return {
		heads: result.across.map((value) => movedText(study.across, value, shown.locale)),
		rows: result.down.map((value, row) => ({
			head: movedText(study.down, value, shown.locale),
			cells: result.across.map((_, column) => {
				const place = row * columns + column;
				const has = result.states[place] === OK;
				return {
					text: has ? shown.number(result.values[place]!) : 'none',
					shade: has ? shadeOf(result.values[place]!) : null,
					isToday: row === today.down && column === today.across
				};
			})
		})),
		acrossUnit: movedUnit(workbook, study.across),
		downUnit: movedUnit(workbook, study.down)
	};
}

/** −1 where the wanted value lies outside the range. */
function nearest(values: readonly number[], wanted: number): number {
	const [low, high] = [Math.min(...values), Math.max(...values)];
	if (!(wanted >= low && wanted <= high)) return -1;
	let best = 0;
	values.forEach((value, i) => {
		if (Math.abs(value - wanted) < Math.abs(values[best]! - wanted)) best = i;
	});
	return best;
}

export function mapTitle(workbook: Workbook, study: MapStudy, result: MapResult, shown: Shown) {
	const known = [...result.values].flatMap((value, i) =>
		result.states[i] === OK ? [{ value, i }] : []
	);
	const name = nameOf(workbook, study);
	const [first] = known;
	if (!first) return `${name} has no answer anywhere on this map`;
	const [low, high] = known.reduce(
		([least, most], one) => [
			one.value < least.value ? one : least,
			one.value > most.value ? one : most
		],
		[first, first]
	);
	const at = (i: number) => {
		const columns = result.across.length;
		const { locale } = shown;
		return `${inSentence(axisName(workbook, study.across))} ${movedWhole(workbook, study.across, result.across[i % columns]!, locale)} and ${inSentence(axisName(workbook, study.down))} ${movedWhole(workbook, study.down, result.down[Math.floor(i / columns)]!, locale)}`;
	};
	return `${name} goes from ${shown.number(low.value)} to ${shown.whole(high.value)}, highest at ${at(high.i)}`;
}

export const axisName = (workbook: Workbook, axis: MapAxis): string =>
	axis.label ?? nameOf(workbook, axis);

export const mapLine = (workbook: Workbook, study: MapStudy, shown: Shown): string =>
	`${titleOf(workbook, study.scenario)}${shown.unit ? `, ${shown.unit}` : ''}; the ring marks where the inputs stand`;

export function mapTable(
	workbook: Workbook,
	study: MapStudy,
	result: MapResult,
	{ locale }: Pick<Shown, 'locale'>
): PlainTable {
	const unit = findQuantity(workbook, study.quantity)?.unit ?? '1';
	return {
		caption: `${nameOf(workbook, study)} [${unit}] by ${axisName(workbook, study.down)} (down) and ${axisName(workbook, study.across)} (across)`,
		columns: [
			axisName(workbook, study.down),
			...result.across.map((value) => movedText(study.across, value, locale))
		],
		rows: result.down.map((down, row) => [
			movedText(study.down, down, locale),
			...result.across.map((_, column) => {
				const place = row * result.across.length + column;
				return result.states[place] === OK ? result.values[place]! : null;
			})
		])
	};
}
