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
	return sum(works.setting.rewinders.map((rewinder) => scheduledHours(rewinder.roster)));
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
			const own = planned.filter((made) => made.line === line.id);
			const hours = own.map((made) => made.planned * hoursPerMetre(works, made));
			return [line.id, sum(hours) / netLineHours(line.roster)];
		})
	);
	// Lines first; chambers and rewinders then get what the lines can deliver. None of the shipped
	// plans is cut, so the order does not show in any figure.
	const chamber = (made: Made) =>
		chamberHours(productOf(made.product), at(works.pipes, made.product).wallSetPoint);
	const rewinder = (made: Made) => rewindHours(productOf(made.product));
	const byLine = planned.map((made) => cut(made, at(lineLoad, made.line)));
	const chamberLoad = loadOf(byLine, chamber, chamberHoursOffered());
	const byChamber = byLine.map((made) => (chamber(made) === null ? made : cut(made, chamberLoad)));
	const rewinderLoad = loadOf(byChamber, rewinder, rewinderHoursOffered(works));
	const made = byChamber.map((made) => (rewinder(made) === null ? made : cut(made, rewinderLoad)));
	return { made, lineLoad, chamberLoad, rewinderLoad };
}

function loadOf(made: readonly Made[], hours: (made: Made) => number | null, offered: number) {
	return sum(made.map((made) => made.metres * (hours(made) ?? 0))) / offered;
}

const cut = (made: Made, load: number): Made =>
	load > 1 + TOLERANCE ? { ...made, metres: made.metres / load } : made;

function hoursPerMetre(works: Works, made: Made): number {
	return at(at(works.runs, made.line), made.product).hoursPerMetre;
}
