/** What a paper is made from: the open workbook with its results, what was chosen, and what only people know. */
import type { StudyResult } from '$lib/studies/kinds';
import type { PaperPicture } from '$lib/workbook/paper-schema';
import { referenceOf } from '$lib/workbook/scenario';
import { scenarioTitle } from '$lib/workbook/lookup';
import { sourceOf, type Open } from '$lib/ui/figure/open';
import type { Source } from '$lib/ui/figure/read';
import { isOfCases } from './named';

/** What somebody says of the paper; all of it may be left out. */
export interface Said {
	readonly question?: string;
	readonly author?: string;
	/** Points that are still open, and what the paper leaves out. */
	readonly openPoints?: readonly string[];
	readonly leftOut?: readonly string[];
}

export interface Making {
	readonly open: Open;
	readonly picture: PaperPicture;
	/** Ids of scenarios, in the order chosen. */
	readonly scenarios: readonly string[];
	readonly said: Said;
	/** ISO 8601 day. */
	readonly date: string;
	/** Null where the workbook is on no server. */
	readonly revision: number | null;
	/** Why figures are out of date, where they rest on a plan that does not answer; empty where none does. */
	readonly behind: string;
	/** What studies found, as far as they were run. */
	readonly found: ReadonlyMap<string, StudyResult>;
}

export interface Side {
	readonly id: string;
	readonly title: string;
	readonly source: Source;
}

const sideOf = ({ open }: Making, id: string): Side => ({
	id,
	title: scenarioTitle(open.layout.workbook, id),
	source: sourceOf(open, id)
});

/** What the chosen scenarios are compared with, each once, as far as it is none of them. */
export function references(making: Making): Side[] {
	const { workbook } = making.open.layout;
	if (!isOfCases(making.picture)) return [];
	const ids = making.scenarios.map((id) => referenceOf(workbook, id).id);
	return [...new Set(ids)]
		.filter((id) => !making.scenarios.includes(id))
		.map((id) => sideOf(making, id));
}

export const chosen = (making: Making): Side[] => making.scenarios.map((id) => sideOf(making, id));

/** References first, so that every figure stands beside what it is without. */
export const sidesOf = (making: Making): Side[] => [...references(making), ...chosen(making)];
