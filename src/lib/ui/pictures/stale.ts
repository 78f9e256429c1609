/** Whether what a picture draws rests on a plan that does not answer the workbook. */
import type { StaleCells } from '$lib/engine/stale';
import type { StaleBecause } from '$lib/engine/stale-words';
import type { Picture } from '$lib/workbook/schema';
import type { Open } from '../figure/open';

/** Pictures that set all scenarios beside each other; the others show the one in hand, and the base. */
const OF_ALL: ReadonlySet<Picture['kind']> = new Set(['payback', 'ways_out', 'bridge']);

/** The scenarios whose figures a picture shows. */
export const scenariosIn = (
	{ kind }: Picture,
	{ layout, base, selectedScenario }: Pick<Open, 'layout' | 'base' | 'selectedScenario'>
): string[] =>
	OF_ALL.has(kind)
		? layout.workbook.scenarios.map(({ id }) => id)
		: [...new Set([selectedScenario, base])];

export function staleIn(
	stale: Pick<StaleCells, 'of'>,
	picture: Picture,
	open: Pick<Open, 'layout' | 'base' | 'selectedScenario'>
): StaleBecause | null {
	const { layout } = open;
	const scenarios = scenariosIn(picture, open);
	for (const name of textsIn(picture)) {
		const quantity = layout.byName.get(name);
		if (!quantity) continue;
		for (const scenario of scenarios) {
			const because = stale.of(scenario, quantity.base, quantity.base + quantity.count);
			if (because) return because;
		}
	}
	return null;
}

/** Every text in a picture; those that name a quantity are what it draws. */
function textsIn(part: unknown): string[] {
	if (typeof part === 'string') return [part];
	if (typeof part !== 'object' || part === null) return [];
	return Object.values(part).flatMap(textsIn);
}
