/**
 * What to know before deciding on a case: missing rates and values, the workbook's own cautions, lives
 * that differ. Facts with their reason, never a verdict.
 */
import type { Layout } from '$lib/engine/layout';
import type { Results } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { formatNumber } from '../../format';
import { whyNoRate, type Case, type Cases, type PaybackPicture } from './payback';
import { listed } from '../../figure/words';

export interface Caution {
	/** Whom it concerns; empty for all. */
	readonly about: string;
	readonly text: string;
}

export interface CautionInput {
	readonly layout: Layout;
	readonly picture: PaybackPicture;
	readonly results: ReadonlyMap<string, Results>;
	readonly locale: string;
}

/** What to know before deciding: missing rates, the workbook's own cautions on this sheet, unequal lives. */
export function cautionsOf({ cases }: Cases, input: CautionInput): Caution[] {
	const facts: Caution[] = [];
	for (const case_ of cases) {
		const { title: about, simple, irr, payback, npv } = case_;
		if (irr.kind === 'no-answer')
			facts.push({ about, text: `no rate of return: ${whyNoRate(simple)}.` });
		const bad = simple.broken ?? [payback, npv].find((of) => of.kind === 'error');
		if (bad)
			facts.push({
				about,
				text: `not drawn in full: ${bad.because || 'a year has no value'}. Fix that first.`
			});
	}
	const cautions = together(facts, cases.length);
	cautions.push(...workbookCautions(cases, input));
	const lives = cases.flatMap((case_) => (case_.life.kind === 'value' ? [case_.life.value] : []));
	const [short, long] = [Math.min(...lives), Math.max(...lives)];
	if (lives.length > 1 && short < long) {
		const show = (value: number) => formatNumber(value, 0, input.locale);
		cautions.push({
			about: '',
			text: `The lives differ, ${show(short)} to ${show(long)} years. A net present value over a longer life is not comparable; the annual value is.`
		});
	}
	return cautions;
}

/** What holds of several is said once. */
function together(facts: readonly Caution[], all: number): Caution[] {
	const titles = new Map<string, string[]>();
	for (const { about, text } of facts) titles.set(text, [...(titles.get(text) ?? []), about]);
	return [...titles].map(([text, about]) => ({
		about: about.length === all && all > 1 ? '' : `${listed(about)}:`,
		text
	}));
}

function workbookCautions(
	cases: readonly Case[],
	{ layout, picture, results }: CautionInput
): Caution[] {
	const sheet = layout.byName.get(picture.payback)?.sheet;
	return layout.quantities.flatMap(({ quantity, base, count: cells, sheet: own }) => {
		// Those that name their figures are said above the picture, of every scenario.
		if (!quantity.caution || quantity.caution.beside || own !== sheet) return [];
		const warned = cases.filter(({ id }) => {
			const one = results.get(id);
			for (let cell = base; one && cell < base + cells; cell++)
				if (one.states[cell] === OK && one.values[cell] === 1) return true;
			return false;
		});
		if (warned.length === 0) return [];
		const about =
			warned.length === cases.length ? '' : `${listed(warned.map((one) => one.title))}:`;
		return [{ about, text: quantity.caution.message }];
	});
}
