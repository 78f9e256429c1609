/** A paper from a computed workbook, away from any page: the command line and the server ask here. */
import type { Model } from '$lib/engine/model';
import { OK } from '$lib/engine/state';
import { nearest } from '$lib/formula/names';
import type { StudyResult } from '$lib/studies/kinds';
import { UnitSystem } from '$lib/units/system';
import { baseOf, pictureOf } from '$lib/workbook/lookup';
import { referenceOf } from '$lib/workbook/scenario';
import type { PaperPicture } from '$lib/workbook/paper-schema';
import { makePaper, type Made } from './make';
import type { Said } from './making';
import { isOfCases, papersOf } from './named';
import { texts } from './texts';

export type Wanted =
	| {
			readonly ok: true;
			readonly picture: PaperPicture;
			readonly scenarios: readonly string[];
	  }
	| { readonly ok: false; readonly message: string };

/** The paper of that name, and the scenarios asked for: else all with an investment where it is of cases, else the base. */
export function wanted(model: Model, name: string, asked: readonly string[] | undefined): Wanted {
	const papers = papersOf(model.workbook);
	const picture = papers.find((one) => one.name === name);
	if (!picture) {
		const names = papers.map((one) => one.name);
		return { ok: false, message: unknown('paper', name, names) };
	}
	const known = model.workbook.scenarios.map(({ id }) => id);
	const strange = asked?.find((id) => !known.includes(id));
	if (strange !== undefined) return { ok: false, message: unknown('scenario', strange, known) };
	return { ok: true, picture, scenarios: asked ?? chosenFor(model, picture) };
}

function unknown(kind: string, name: string, known: readonly string[]): string {
	const near = nearest(name, known);
	const hint = near
		? `did you mean ${near}?`
		: known.length > 0
			? `known are ${known.slice(0, 12).join(', ')}.`
			: texts.noPapers;
	return `there is no ${kind} "${name}"; ${hint}`;
}

function chosenFor(model: Model, picture: PaperPicture): string[] {
	const payback = pictureOf(model.workbook, 'payback');
	const base = baseOf(model.workbook).id;
	const place = payback && model.layout.byName.get(payback.outlay);
	if (!isOfCases(picture) || !place) return [base];
	const hasCase = (id: string) => {
		const { values, states } = model.column(id);
		return states[place.base] === OK && values[place.base] !== 0;
	};
	const cases = model.workbook.scenarios.map(({ id }) => id).filter(hasCase);
	return cases.length > 0 ? cases : [base];
}

export interface Given {
	readonly said: Said;
	/** ISO 8601 day. */
	readonly date: string;
	readonly locale: string;
	readonly revision: number | null;
	readonly behind?: string;
	readonly found?: ReadonlyMap<string, StudyResult>;
}

/** Only the scenarios that it speaks of are computed. */
export function paperOf(
	model: Model,
	{ picture, scenarios }: Extract<Wanted, { ok: true }>,
	{ said, date, locale, revision, behind = '', found = new Map() }: Given
): Made {
	const { workbook, layout } = model;
	const base = baseOf(workbook).id;
	const needed = new Set([
		...[base, ...scenarios],
		...scenarios.map((id) => referenceOf(workbook, id).id)
	]);
	const isScenario = (id: string) => workbook.scenarios.some((one) => one.id === id);
	return makePaper({
		open: {
			...{ layout, locale, base, selectedScenario: base },
			results: new Map([...needed].map((id) => [id, model.results(id)])),
			faults: new Map([...needed].filter(isScenario).map((id) => [id, model.faults(id)])),
			units: UnitSystem.create(workbook.units ?? []).system
		},
		...{ picture, scenarios, said, date, revision, behind, found }
	});
}
