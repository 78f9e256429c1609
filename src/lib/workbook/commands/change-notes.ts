/** What is said of a scenario's change of a quantity: why it is made, or where its values come from. */
import { changesOf, findScenario } from '../lookup';
import { changeSchema, type Workbook } from '../schema';
import { edited, refused, type Command, type Edit } from './command';
import { shapeRefusal } from './refusal';

export function noteChange(
	workbook: Workbook,
	{ scenario: id, quantity, note }: Extract<Command, { kind: 'note_change' }>
): Edit {
	const scenario = findScenario(workbook, id);
	const change = scenario && changesOf(scenario).get(quantity);
	if (!change)
		return refused(
			'unknown-change',
			`${scenario?.title ?? id} does not change "${quantity}". Enter a value there first.`
		);
	const bad = shapeRefusal(changeSchema.shape.note, note, 'The note');
	if (bad) return bad;
	const { note: _note, ...rest } = change;
	const next = note === undefined ? rest : { ...rest, note };
	const changes = scenario.changes.map((one) => (one === change ? next : one));
	return edited({
		...workbook,
		scenarios: workbook.scenarios.map((one) => (one === scenario ? { ...one, changes } : one))
	});
}
