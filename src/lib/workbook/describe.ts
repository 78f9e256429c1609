/**
 * A command in words, as undo and the list of changes name it: "resin price: 1.95 to 2.10 EUR/kg".
 */
import type { Command, InputEntry } from './commands/command';
import { listed } from './commands/lists';
import { findQuantity, findScenario, findSet } from './lookup';
import { inputAt } from './scenario';
import { FIELD_WORDS, QUANTITY_FIELDS } from './quantity-words';
import type { Quantity, Scalar, Workbook } from './schema';

/** How numbers are written: the reader's locale is for the screen. */
export type ShowNumber = (value: number, quantity: Quantity) => string;

/** `workbook` is the one before the command. */
export function describeCommand(
	workbook: Workbook,
	command: Command,
	show: ShowNumber = (value) => String(value)
): string {
	const quantity = (name: string) => findQuantity(workbook, name)?.label ?? name;
	const scenario = (id: string) => findScenario(workbook, id)?.title ?? id;
	const study = (name: string) =>
		workbook.studies?.find((study) => study.name === name)?.title ?? name;
	const programme = (name: string) =>
		workbook.programmes?.find((each) => each.name === name)?.title ?? name;
	const sheet = (index: number) => workbook.sheets[index]?.title ?? `sheet ${index + 1}`;
	switch (command.kind) {
		case 'set_inputs':
			return describeInputs(workbook, command.scenario, command.entries, show);
		case 'add_quantity':
			return `add ${command.quantity.label} to ${sheet(command.sheet)}`;
		case 'replace_quantity':
			return describeReplaced(workbook, command.name, command.quantity);
		case 'remove_quantity':
			return `remove ${quantity(command.name)}`;
		case 'move_quantity':
			return `move ${quantity(command.name)}`;
		case 'add_sheet':
			return `add sheet ${command.sheet.title}`;
		case 'rename_sheet':
			return command.title === workbook.sheets[command.sheet]?.title
				? `describe sheet ${command.title}`
				: `sheet ${sheet(command.sheet)}: renamed to ${command.title}`;
		case 'remove_sheet':
			return `remove sheet ${sheet(command.sheet)}`;
		case 'move_sheet':
			return `move sheet ${sheet(command.sheet)}`;
		case 'add_member': {
			const word = setWord(workbook, command.set);
			const like = command.like === undefined ? '' : ` as a copy of ${command.like}`;
			return `add ${word} ${command.member.id}${like}`;
		}
		case 'remove_member':
			return `remove ${setWord(workbook, command.set)} ${command.id}`;
		case 'replace_member':
			return command.id === command.member.id
				? `describe ${setWord(workbook, command.set)} ${command.id}`
				: `${setWord(workbook, command.set)} ${command.id}: renamed to ${command.member.id}`;
		case 'move_member':
			return `move ${setWord(workbook, command.set)} ${command.id}`;
		case 'set_relation_pair': {
			const relation = workbook.relations?.find(({ name }) => name === command.relation);
			const word = relation?.label ?? command.relation;
			return `${word}: ${command.pair.join(', ')} ${command.exists ? 'added' : 'taken out'}`;
		}
		case 'add_scenario':
			return `add scenario ${command.scenario.title}`;
		case 'replace_scenario':
			return command.scenario.title === findScenario(workbook, command.id)?.title
				? `describe scenario ${command.scenario.title}`
				: `scenario ${scenario(command.id)}: renamed to ${command.scenario.title}`;
		case 'remove_scenario':
			return `remove scenario ${scenario(command.id)}`;
		case 'move_scenario':
			return `move scenario ${scenario(command.id)}`;
		case 'promote_scenario':
			return `make ${scenario(command.id)} the ${workbook.scenarios[0]?.title ?? 'base'}`;
		case 'put_study':
			if (command.name === undefined) return `add study ${command.study.title}`;
			return command.study.title === study(command.name)
				? `change study ${command.study.title}`
				: `study ${study(command.name)}: renamed to ${command.study.title}`;
		case 'remove_study':
			return `remove study ${study(command.name)}`;
		case 'set_ran':
			return `run study ${study(command.name)}`;
		case 'put_programme':
			return command.name === undefined
				? `add programme ${command.programme.title}`
				: `change programme ${command.programme.title}`;
		case 'remove_programme':
			return `remove programme ${programme(command.name)}`;
		case 'set_plans': {
			const [plan, ...more] = command.plans;
			if (!plan || more.length > 0) return 'plan anew';
			const isKept = 'kept' in plan && plan.kept !== undefined;
			return `${isKept ? 'keep the plan of' : 'plan'} ${scenario(plan.scenario)}`;
		}
		case 'set_title':
			return `title: ${workbook.title} to ${command.title}`;
		case 'set_about':
			return 'describe the workbook';
		case 'patch':
			return 'take a change back';
		case 'several':
			return command.commands.map((each) => describeCommand(workbook, each, show)).join('; ');
	}
}

function setWord(workbook: Workbook, name: string): string {
	return findSet(workbook, name)?.label ?? name;
}

function describeInputs(
	workbook: Workbook,
	scenario: string,
	entries: readonly InputEntry[],
	show: ShowNumber
): string {
	const isBase = workbook.scenarios[0]?.id === scenario;
	const where = isBase ? '' : ` (${findScenario(workbook, scenario)?.title ?? scenario})`;
	const [first] = entries;
	if (!first) return `no value changed${where}`;
	const quantity = findQuantity(workbook, first.quantity);
	const label = quantity?.label ?? first.quantity;
	if (entries.length > 1 || !quantity) {
		const labels = [...new Set(entries.map((entry) => entry.quantity))].map(
			(name) => findQuantity(workbook, name)?.label ?? name
		);
		return `${listed(labels)}: ${entries.length} values${where}`;
	}
	const at = first.at.length > 0 ? ` of ${first.at.join(', ')}` : '';
	const before = inputAt(workbook, scenario, first.quantity, first.at).value;
	if (first.value === undefined && !isBase)
		return `${label}${at}${where}: ${scalarWords(before, quantity, show)} back to that of the parent`;
	const from = scalarWords(before, quantity, show);
	const to = scalarWords(first.value ?? null, quantity, show);
	const hasNumber = [before, first.value].some((value) => typeof value === 'number');
	const unit =
		hasNumber && quantity.unit !== undefined && quantity.unit !== '1' ? ` ${quantity.unit}` : '';
	const last = typeof first.value === 'number' ? `${to}${unit}` : to;
	const start = typeof first.value === 'number' ? from : `${from}${unit}`;
	return `${label}${at}${where}: ${start} to ${last}`;
}

function scalarWords(value: Scalar, quantity: Quantity, show: ShowNumber): string {
	if (value === null) return 'nothing entered';
	if (typeof value === 'boolean') return value ? 'yes' : 'no';
	return typeof value === 'number' ? show(value, quantity) : value;
}

function describeReplaced(workbook: Workbook, name: string, next: Quantity): string {
	const old = findQuantity(workbook, name);
	if (!old) return `change ${name}`;
	if (next.name !== name) return `${name}: renamed to ${next.name}`;
	if (next.label !== old.label) return `${old.label}: renamed to ${next.label}`;
	const changed = QUANTITY_FIELDS.filter(
		(field) => JSON.stringify(old[field]) !== JSON.stringify(next[field])
	);
	return changed.length === 0
		? `describe ${old.label}`
		: `${old.label}: ${listed(changed.map((field) => FIELD_WORDS[field]))} changed`;
}
