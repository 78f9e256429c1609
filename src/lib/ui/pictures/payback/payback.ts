/**
 * The case of every scenario that has an outlay: its running totals year by year, when it pays back, and
 * what it is worth. Read from results; sentences are in `payback-words.ts`.
 */
import type { Results } from '$lib/engine/results';
import { scenarioTitle } from '$lib/workbook/lookup';
import type { Picture, Scenario, Workbook } from '$lib/workbook/schema';
import type { Fault } from '$lib/browser/engine-messages';
import type { Layout } from '$lib/engine/layout';
import { read, type Reading, type Source } from '../../figure/read';
import { coloured, type Colouring } from '../../figure/scenario-colours';
import { doubtOf } from '../../said-beside';

export type PaybackPicture = Extract<Picture, { kind: 'payback' }>;

export interface Point {
	/** Years from the start, as the years' numbers say. */
	readonly x: number;
	readonly y: number;
}

export interface Line {
	readonly points: readonly Point[];
	/** The first year without a value, other than years after the end of life. */
	readonly broken: Reading | null;
}

export interface Case {
	readonly id: string;
	readonly title: string;
	/** "on Base", "on New line, against Base". */
	readonly on: string;
	readonly parent: string | null;
	readonly simple: Line;
	readonly discounted: Line;
	readonly payback: Reading;
	readonly discountedPayback: Reading;
	readonly outlay: Reading;
	readonly npv: Reading;
	readonly irr: Reading;
	readonly annualValue: Reading;
	readonly life: Reading;
	readonly selectedScenario: boolean;
	/** Why its figures are not to be read as a case, as the workbook cautions; empty where they are. */
	readonly doubt: string;
	/** Its place among the looks of lines. */
	readonly colour: number;
}

export interface PaybackInput {
	readonly picture: PaybackPicture;
	readonly layout: Layout;
	readonly results: ReadonlyMap<string, Results>;
	readonly faults: ReadonlyMap<string, readonly Fault[]>;
	readonly selectedScenario: string;
	/** The colours that scenarios have had so far. */
	readonly colours?: Colouring;
}

export interface Cases {
	readonly cases: readonly Case[];
	/** With those of cases that are new. */
	readonly colours: Colouring;
	/** Titles of scenarios that have no outlay, the base among them. */
	readonly without: readonly string[];
	/** The scenario in hand, where it has no case and the workbook says why. */
	readonly lacking: { readonly title: string; readonly doubt: string } | null;
	/** How many scenarios are not computed yet. */
	readonly pending: number;
}

export function casesOf(input: PaybackInput): Cases {
	const { layout, picture, results, faults, selectedScenario } = input;
	const { scenarios } = layout.workbook;
	const sourceOf = (id: string): Source => ({
		...{ layout, results: results.get(id), faults: faults.get(id) }
	});
	const outlays = new Map(
		scenarios.map(({ id }) => [id, read(sourceOf(id), picture.outlay)] as const)
	);
	const hasCase = ({ id }: Scenario) => {
		const outlay = outlays.get(id);
		return outlay?.kind === 'error' || (outlay?.kind === 'value' && outlay.value !== 0);
	};
	const names = new Set([picture.payback]);
	const shown = scenarios.filter(hasCase);
	const colours = coloured(
		input.colours ?? {},
		shown.map(({ id }) => id)
	);
	const cases = shown.map((scenario) => ({
		...caseOf(scenario, sourceOf(scenario.id), picture, layout.workbook),
		selectedScenario: scenario.id === selectedScenario,
		doubt: doubtOf(layout, results.get(scenario.id), names),
		colour: colours[scenario.id]!
	}));
	const pending = scenarios.filter(({ id }) => outlays.get(id)?.kind === 'pending');
	const hand = scenarios.find(
		(scenario) => scenario.id === selectedScenario && !shown.includes(scenario)
	);
	const doubt = hand ? doubtOf(layout, results.get(hand.id), names) : '';
	return {
		cases,
		colours,
		lacking: hand && doubt ? { title: hand.title, doubt } : null,
		without: scenarios
			.filter((scenario) => !shown.includes(scenario) && !pending.includes(scenario))
			.map((scenario) => scenario.title),
		pending: pending.length
	};
}

function caseOf(scenario: Scenario, source: Source, picture: PaybackPicture, workbook: Workbook) {
	const titleOf = (id: string) => scenarioTitle(workbook, id);
	const against = scenario.against === undefined ? '' : `, against ${titleOf(scenario.against)}`;
	const of = (name: string) => read(source, name);
	return {
		...{ id: scenario.id, title: scenario.title, parent: scenario.parent },
		on: scenario.parent === null ? '' : `on ${titleOf(scenario.parent)}${against}`,
		simple: lineOf(source, picture, picture.cumulative),
		discounted: lineOf(source, picture, picture.cumulative_discounted),
		payback: of(picture.payback),
		discountedPayback: of(picture.discounted_payback),
		outlay: of(picture.outlay),
		npv: of(picture.npv),
		irr: of(picture.irr),
		annualValue: of(picture.annual_value),
		life: of(picture.life)
	};
}

/** Up to the first year without a value; a line does not jump over a gap. */
function lineOf(source: Source, picture: PaybackPicture, name: string): Line {
	const points: Point[] = [];
	const years = source.layout.sets.get(picture.year)?.members ?? [];
	for (const [ordinal, year] of years.entries()) {
		const reading = read(source, name, { [picture.year]: ordinal });
		if (reading.kind === 'value') points.push({ x: year.number ?? ordinal, y: reading.value });
		else return { points, broken: reading.kind === 'absent' ? null : reading };
	}
	return { points, broken: null };
}

/** How a case stands with paying back. */
export type PaybackVerdict = 'pays' | 'never' | 'nothing-to-pay' | 'unknown' | 'doubtful';

export function outcomeOf({
	payback,
	simple,
	doubt
}: Pick<Case, 'payback' | 'simple' | 'doubt'>): PaybackVerdict {
	if (doubt) return 'doubtful';
	if (payback.kind === 'value') return 'pays';
	if (payback.kind !== 'no-answer') return 'unknown';
	return simple.points.every((point) => point.y >= 0) ? 'nothing-to-pay' : 'never';
}

/** The years that the axis shows: up to the longest line. */
export function yearsShown(cases: readonly Case[]): number {
	const last = cases.flatMap((case_) => case_.simple.points.map((point) => point.x));
	return Math.max(1, ...last);
}

/** From the lowest to the highest amount among the lines, zero included. */
export function cashRange(cases: readonly Case[]): { low: number; high: number } {
	const lines = cases.flatMap((case_) => [...case_.simple.points, ...case_.discounted.points]);
	const amounts = lines.map((point) => point.y);
	return { low: Math.min(0, ...amounts), high: Math.max(0, ...amounts) };
}

/** The largest amount among lines and outlays, without its sign. */
export function largestCash(cases: readonly Case[]): number {
	const { low, high } = cashRange(cases);
	const outlays = cases.map(({ outlay }) => (outlay.kind === 'value' ? Math.abs(outlay.value) : 0));
	return Math.max(-low, high, ...outlays);
}

/** The value for want of which no line can be drawn at all; null while one can. */
export function nothingDrawn(cases: readonly Case[]): Reading | null {
	if (cases.some((case_) => case_.simple.points.length > 0)) return null;
	return cases.find((case_) => case_.simple.broken)?.simple.broken ?? null;
}

/** Why a case has no rate of return, from the signs of its yearly cash. */
export function whyNoRate(simple: Line): string {
	let before = 0;
	const signs = simple.points.flatMap(({ y }) => {
		const cash = y - before;
		before = y;
		return cash === 0 ? [] : [Math.sign(cash)];
	});
	const turns = signs.filter((sign, i) => i > 0 && sign !== signs[i - 1]).length;
	if (turns === 0)
		return signs[0] === 1
			? 'no year costs money, so there is nothing that a rate could be of'
			: 'no year brings money back, so no rate fits';
	if (turns > 1)
		return `its yearly cash turns between in and out ${turns} times, so no single rate fits`;
	return 'what comes back is so little that no rate above −100 % fits';
}
