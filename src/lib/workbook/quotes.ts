/** The scenario that quotes stand on: one for all of them, whatever scenario is shown. */
import type { Workbook } from './schema';

/** The base where the workbook names no other, or one that is not there. */
export function quotesStandOn({ pictures, scenarios }: Workbook): string {
	const named = pictures?.find((picture) => picture.kind === 'quote')?.scenario;
	return (scenarios.find(({ id }) => id === named) ?? scenarios[0])?.id ?? 'base';
}

/** The workbook whose quotes stand on the scenario that `by` gives for theirs; on the base where it gives none. */
export function withQuotesOn(
	workbook: Workbook,
	by: (named: string | undefined) => string | undefined
): Workbook {
	if (!workbook.pictures?.some((one) => one.kind === 'quote' && by(one.scenario) !== one.scenario))
		return workbook;
	return {
		...workbook,
		pictures: workbook.pictures.map((picture) => {
			if (picture.kind !== 'quote') return picture;
			const { scenario, ...rest } = picture;
			const next = by(scenario);
			return next === undefined || next === workbook.scenarios[0]?.id
				? rest
				: { ...rest, scenario: next };
		})
	};
}
