/** What is made in a plan year, and how full that keeps lines, chambers and rewinders over the year. */
import { productOf, products, sum } from './plant';
import {
	batchHours,
	chamberHours,
	chamberHoursByMonth,
	hoursByMonth,
	netLineHours,
	rewindHours
} from './time';
import { at, type Works } from './works';

/** Good metres in the year. */
export interface Made {
	readonly line: string;
	readonly product: string;
	readonly metres: number;
}

export interface Year {
	readonly made: readonly Made[];
	/** Hours taken over hours on offer. */
	readonly lineLoad: ReadonlyMap<string, number>;
	readonly chamberLoad: number;
	readonly rewinderLoad: number;
}

export function rewinderHoursByMonth(works: Works): readonly number[] {
	const each = works.setting.rewinders.map(({ roster }) => hoursByMonth(roster, () => 1));
	return Array.from({ length: 12 }, (_, month) => sum(each.map((hours) => hours[month] ?? NaN)));
}

export const rewinderHoursOffered = (works: Works): number => sum(rewinderHoursByMonth(works));

/** On offer, by month. */
export function chamberHoursOf(works: Works): readonly number[] {
	const batches = products
		.filter(({ crosslink }) => crosslink)
		.map(({ id }) => batchHours(at(works.pipes, id).wallSetPoint));
	return chamberHoursByMonth(works.setting.chambers, sum(batches) / batches.length);
}

export function yearOf(works: Works, made: readonly Made[]): Year {
	const load = (hours: (one: Made) => number | null, offered: number) =>
		sum(made.map((one) => one.metres * (hours(one) ?? 0))) / offered;
	const lineLoad = (line: string, offered: number) =>
		load(
			(one) => (one.line === line ? at(at(works.runs, one.line), one.product).hoursPerMetre : null),
			offered
		);
	return {
		made,
		lineLoad: new Map(
			works.setting.lines.map((line) => [line.id, lineLoad(line.id, netLineHours(line))])
		),
		chamberLoad: load(
			({ product }) => chamberHours(productOf(product), at(works.pipes, product).wallSetPoint),
			sum(chamberHoursOf(works))
		),
		rewinderLoad: load(
			({ product }) => rewindHours(productOf(product)),
			rewinderHoursOffered(works)
		)
	};
}
