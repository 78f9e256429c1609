/** What is made in each plan year: the plan, cut in proportion where a resource is over-full. */
import { productOf, sum } from './plant';
import {
	chamberHours,
	chamberHoursOffered,
	netLineHours,
	rewindHours,
	scheduledHours
} from './time';
import { at, type Works } from './works';

/** Loads up to this much above 1 count as full. */
const TOLERANCE = 1e-6;

export interface Made {
	readonly line: string;
	readonly product: string;
	readonly planned: number;
	readonly metres: number;
}

export interface Year {
	readonly made: readonly Made[];
	/** Planned hours over hours on offer. */
	readonly lineLoad: ReadonlyMap<string, number>;
	readonly chamberLoad: number;
	readonly rewinderLoad: number;
}

export function yearsOf(works: Works): readonly Year[] {
	return works.setting.plan.map((_, year) => yearOf(works, year));
}

export function rewinderHoursOffered(works: Works): number {
	return sum(works.setting.rewinders.map((one) => scheduledHours(one.roster)));
}

function yearOf(works: Works, year: number): Year {
	const plan = works.setting.plan[year] ?? {};
	const planned: Made[] = works.setting.lines.flatMap((line) =>
		Object.entries(plan[line.id] ?? {}).map(([product, metres]) => ({
			line: line.id,
			product,
			planned: metres,
			metres
		}))
	);
	const lineLoad = new Map(
		works.setting.lines.map((line) => {
			const own = planned.filter((one) => one.line === line.id);
			const hours = own.map((one) => one.planned * hoursPerMetre(works, one));
			return [line.id, sum(hours) / netLineHours(line.roster)];
		})
	);
	// Lines first; chambers and rewinders then get what the lines can deliver. None of the shipped
	// plans is cut, so the order does not show in any figure.
	const chamber = (one: Made) =>
		chamberHours(productOf(one.product), at(works.pipes, one.product).wallSetPoint);
	const rewinder = (one: Made) => rewindHours(productOf(one.product));
	const byLine = planned.map((one) => cut(one, at(lineLoad, one.line)));
	const chamberLoad = loadOf(byLine, chamber, chamberHoursOffered());
	const byChamber = byLine.map((one) => (chamber(one) === null ? one : cut(one, chamberLoad)));
	const rewinderLoad = loadOf(byChamber, rewinder, rewinderHoursOffered(works));
	const made = byChamber.map((one) => (rewinder(one) === null ? one : cut(one, rewinderLoad)));
	return { made, lineLoad, chamberLoad, rewinderLoad };
}

function loadOf(made: readonly Made[], hours: (one: Made) => number | null, offered: number) {
	return sum(made.map((one) => one.metres * (hours(one) ?? 0))) / offered;
}

const cut = (one: Made, load: number): Made =>
	load > 1 + TOLERANCE ? { ...one, metres: one.metres / load } : one;

function hoursPerMetre(works: Works, one: Made): number {
	return at(at(works.runs, one.line), one.product).hoursPerMetre;
}
