/** The workbook's own cautions on the sheet of a quote, as they hold in the scenario in hand. */
import { OK } from '$lib/engine/state';
import type { Open } from '../figure/open';
import type { Caution } from '../pictures/payback/payback-cautions';

export function sheetCautions(
	{ layout, results, selectedScenario }: Open,
	quantity: string,
	title: string
) {
	const sheet = layout.byName.get(quantity)?.sheet;
	const own = results.get(selectedScenario);
	const cautions = layout.quantities.flatMap(
		({ quantity: one, base, count, sheet: at }): Caution[] => {
			if (!one.caution || at !== sheet || !own) return [];
			for (let cell = base; cell < base + count; cell++)
				if (own.states[cell] === OK && own.values[cell] === 1)
					return [{ about: `${title}:`, text: one.caution.message }];
			return [];
		}
	);
	const estimate =
		'Floor and target follow from the figures entered, the values of hours among them. Who prices an order decides on it; the tool does not.';
	return [...cautions, { about: 'A quote is worked out, not advised.', text: estimate }];
}
