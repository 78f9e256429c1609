/** Computes the base of a workbook and freezes it, away from the page. Lives for one copy. */
import { freeze } from '$lib/engine/frozen';
import { Model } from '$lib/engine/model';
import { baseOf, findScenario } from '$lib/workbook/lookup';
import type { FreezeAnswer, FreezeRequest } from './freeze-messages';

const scope = self as unknown as {
	onmessage: ((event: MessageEvent<FreezeRequest>) => void) | null;
	postMessage(answer: FreezeAnswer): void;
};

scope.onmessage = ({ data: { workbook, head, scenario } }) => {
	try {
		const model = Model.open(workbook);
		const asked = scenario === undefined ? undefined : findScenario(workbook, scenario);
		const { id, title } = asked ?? baseOf(workbook);
		const frozen = freeze(model.layout, model.results(id), { ...head, of: title });
		scope.postMessage({ ok: true, frozen });
	} catch (error) {
		scope.postMessage({
			ok: false,
			message: error instanceof Error ? error.message : String(error)
		});
	}
};
