/**
 * What pictures need of the open workbook, so that they can be fed by the session or by a test.
 */
import type { Fault } from '$lib/browser/engine-messages';
import type { Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import type { UnitSystem } from '$lib/units/system';
import { quotesStandOn, scenarioTitle } from '$lib/workbook/lookup';
import type { Picture } from '$lib/workbook/schema';
import type { Source } from './read';
import { texts } from './texts';

export interface Open {
	readonly layout: Layout;
	readonly results: ReadonlyMap<string, Results>;
	readonly faults: ReadonlyMap<string, readonly Fault[]>;
	readonly units: UnitSystem;
	readonly locale: string;
	readonly base: string;
	readonly selectedScenario: string;
}

/** What a session holds; its workbook may still be on its way. */
export interface SessionLike {
	readonly layout: Layout | null;
	readonly results: ReadonlyMap<string, Results>;
	readonly faults: ReadonlyMap<string, readonly Fault[]>;
	readonly units: UnitSystem;
	readonly locale: string;
	readonly baseId: string;
	readonly view: { readonly selectedScenario: string };
}

export function openOf(session: SessionLike): Open | null {
	const { layout, results, faults, units, locale } = session;
	if (!layout) return null;
	return {
		...{ layout, results, faults, units, locale },
		base: session.baseId,
		selectedScenario: session.view.selectedScenario
	};
}

export function sourceOf(open: Open, id: string): Source {
	return { layout: open.layout, results: open.results.get(id), faults: open.faults.get(id) };
}

/** As pictures of quotes see it: they stand on a scenario of their own, whichever is shown. */
export const openForQuotes = (open: Open): Open => ({
	...open,
	selectedScenario: quotesStandOn(open.layout.workbook)
});

/** Words for whose figures a picture shows, "In Base"; empty where there is one scenario alone. */
export function whose({ layout }: Pick<Open, 'layout'>, id: string): string {
	const { workbook } = layout;
	return workbook.scenarios.length < 2 ? '' : texts.inScenario(scenarioTitle(workbook, id));
}

/** The line under a picture's finding: whose figures, and what else is to be said. */
export const lineOf = (open: Pick<Open, 'layout'>, id: string, line: string): string =>
	[whose(open, id), line].filter(Boolean).join('. ');

/** The scenario in hand with its title; null where that is the base. */
export function handOf(open: Open): { title: string; source: Source } | null {
	if (open.selectedScenario === open.base) return null;
	const scenario = open.layout.workbook.scenarios.find(
		(scenario) => scenario.id === open.selectedScenario
	);
	return scenario ? { title: scenario.title, source: sourceOf(open, scenario.id) } : null;
}

/** The workbook's pictures of one kind. */
export function picturesOf<K extends Picture['kind']>(
	open: Open,
	kind: K
): Extract<Picture, { kind: K }>[] {
	return (open.layout.workbook.pictures ?? []).filter(
		(picture): picture is Extract<Picture, { kind: K }> => picture.kind === kind
	);
}
