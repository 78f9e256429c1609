/** A command in words, as undo names it, and what of it a list of changes keeps as data. */
import type { Command, InputEntry } from './commands/command';
import type { QuantityChange } from './compare/change';
import { quantityChangeWords } from './compare/quantity-change-words';
import { listed } from './commands/lists';
import { findFrozen } from './frozen';
import { findQuote, quoteName } from './quotes';
import { findQuantity, findScenario, scenarioTitle, findSet } from './lookup';
import { monthLabel, pathsOf } from './paths';
import { inputAt } from './scenario';
import { QUANTITY_FIELDS } from './quantity-words';
import type { Calibration, Quantity, Workbook } from './schema';

/** `workbook` is the one before the command. */
export function describeCommand(workbook: Workbook, command: Command): string {
	const quantity = (name: string) => findQuantity(workbook, name)?.label ?? name;
	const scenario = (id: string) => scenarioTitle(workbook, id);
	const study = (name: string) =>
		workbook.studies?.find((study) => study.name === name)?.title ?? name;
	const programme = (name: string) =>
		workbook.programmes?.find((each) => each.name === name)?.title ?? name;
	const sheet = (index: number) => workbook.sheets[index]?.title ?? `sheet ${index + 1}`;
	switch (command.kind) {
		case 'set_inputs':
			return quantityChangeWords(entriesChange(workbook, command.scenario, command.entries));
		case 'note_change':
			return `${quantity(command.quantity)}, ${scenario(command.scenario)}: note`;
		case 'add_quantity':
			return `add ${command.quantity.label} to ${sheet(command.sheet)}`;
		case 'replace_quantity':
			return quantityChangeWords(quantityChange(workbook, command.name, command.quantity));
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
		case 'add_set':
			return `add list ${command.set.plural ?? command.set.label}`;
		case 'describe_set':
			return command.label === findSet(workbook, command.set)?.label
				? `describe list ${command.plural ?? command.label}`
				: `list ${setWord(workbook, command.set)}: renamed to ${command.label}`;
		case 'remove_set': {
			const set = findSet(workbook, command.set);
			return `remove list ${set?.plural ?? set?.label ?? command.set}`;
		}
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
			return (
				`make ${scenario(command.id)} the ${workbook.scenarios[0]?.title ?? 'base'}` +
				(command.hold && command.hold.length > 0
					? `, with ${listed(command.hold.map(scenario))} as before`
					: '')
			);
		case 'quote_on':
			return `quotes stand on ${scenario(command.id)}`;
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
			return programmeWords(workbook, command);
		case 'remove_programme':
			return `remove programme ${programme(command.name)}`;
		case 'set_plans': {
			const [plan, ...more] = command.plans;
			if (!plan || more.length > 0) return 'plan anew';
			const isKept = 'kept' in plan && plan.kept !== undefined;
			return `${isKept ? 'keep the plan of' : 'plan'} ${scenario(plan.scenario)}`;
		}
		case 'put_table': {
			const { table, title } = command;
			if (title === undefined) return `keep the matches of ${table.title}`;
			return table.title === title
				? `change the matches of ${title}`
				: `matches of ${title}: renamed to ${table.title}`;
		}
		case 'remove_table':
			return `remove the matches of ${command.title}`;
		case 'put_calibration': {
			const { calibration, name } = command;
			if (name === undefined) return `add the fit ${calibration.title}`;
			const was = workbook.calibrations?.find((one) => one.name === name);
			const more = points(calibration) - points(was);
			if (more > 0) return `${calibration.title}: ${more} points added`;
			if (more < 0) return `${calibration.title}: ${-more} points taken out`;
			return `change the fit ${calibration.title}`;
		}
		case 'remove_calibration': {
			const was = workbook.calibrations?.find((one) => one.name === command.name);
			return `remove the fit ${was?.title ?? command.name}`;
		}
		case 'add_frozen':
			return `freeze ${command.frozen.of} as ${command.frozen.title}`;
		case 'describe_frozen': {
			const was = findFrozen(workbook, command.id)?.title ?? command.id;
			return was === command.title
				? `describe the frozen copy ${was}`
				: `frozen copy ${was}: renamed to ${command.title}`;
		}
		case 'remove_frozen':
			return `remove the frozen copy ${findFrozen(workbook, command.id)?.title ?? command.id}`;
		case 'put_quote': {
			const { quote } = command;
			const was = findQuote(workbook, quote.id);
			if (!was) return `add quote ${quoteName(quote)}`;
			if (was.state !== quote.state) return `quote ${quoteName(quote)}: ${quote.state}`;
			if ((was.filed ?? false) !== (quote.filed ?? false))
				return `${quote.filed ? 'put away' : 'bring back'} quote ${quoteName(quote)}`;
			return `change quote ${quoteName(quote)}`;
		}
		case 'remove_quote': {
			const was = findQuote(workbook, command.id);
			return `remove quote ${was ? quoteName(was) : command.id}`;
		}
		case 'set_letterhead':
			return 'change the letterhead of offers';
		case 'set_ticks':
			return ticksWords(command.ticks);
		case 'set_title':
			return `title: ${workbook.title} to ${command.title}`;
		case 'set_about':
			return 'describe the workbook';
		case 'set_invented':
			return command.invented ? 'figures are invented' : 'figures are no longer invented';
		case 'patch':
			return 'take a change back';
		case 'several':
			return severalWords(workbook, command.commands);
	}
}

const points = (calibration: Calibration | undefined): number =>
	(calibration?.data ?? []).reduce((all, batch) => all + batch.points.length, 0);

/** Pairs told one by one; more of one relation are told by their number. */
const MOST_PAIRS = 4;

function severalWords(workbook: Workbook, commands: readonly Command[]): string {
	const pairs = commands.filter((each) => each.kind === 'set_relation_pair');
	if (pairs.length <= MOST_PAIRS)
		return commands.map((each) => describeCommand(workbook, each)).join('; ');
	const others = commands.filter((each) => each.kind !== 'set_relation_pair');
	const counts = [...new Set(pairs.map(({ relation }) => relation))].map((name) => {
		const word = workbook.relations?.find((one) => one.name === name)?.label ?? name;
		return `${word}: ${pairs.filter(({ relation }) => relation === name).length} pairs`;
	});
	return [...others.map((each) => describeCommand(workbook, each)), ...counts].join('; ');
}

function programmeWords(
	workbook: Workbook,
	{ name, programme }: Extract<Command, { kind: 'put_programme' }>
): string {
	if (name === undefined) return `add programme ${programme.title}`;
	const was = workbook.programmes?.find((each) => each.name === name)?.off ?? false;
	const is = programme.off ?? false;
	return `${was === is ? 'change programme' : is ? 'switch off' : 'switch on'} ${programme.title}`;
}

function ticksWords(ticks: Extract<Command, { kind: 'set_ticks' }>['ticks']): string {
	const done = ticks.some((tick) => 'of' in tick) ? 'tick off' : 'open again';
	return ticks.length === 1
		? `${done} a line to review`
		: `${done} ${ticks.length} lines to review`;
}

function setWord(workbook: Workbook, name: string): string {
	return findSet(workbook, name)?.label ?? name;
}

/** Entries of one scenario: as one value, or as how many of which quantities. */
export function entriesChange(
	workbook: Workbook,
	scenario: string,
	entries: readonly InputEntry[]
): QuantityChange {
	const isBase = workbook.scenarios[0]?.id === scenario;
	const where = isBase ? {} : { scenario: scenarioTitle(workbook, scenario) };
	const [first] = entries;
	const quantity = first && findQuantity(workbook, first.quantity);
	if (!first || !quantity || entries.length > 1) {
		const names = new Set(entries.map((entry) => entry.quantity));
		const labels = [...names].map((name) => {
			const path = pathsOf(workbook).byInput.get(name);
			return (path?.quantity ?? findQuantity(workbook, name))?.label ?? name;
		});
		return { kind: 'values', labels: [...new Set(labels)], count: entries.length, ...where };
	}
	const { unit, shown } = quantity;
	const path = pathsOf(workbook).byInput.get(quantity.name);
	const month = path && first.at.at(-1);
	return {
		kind: 'value',
		label: (path?.quantity ?? quantity).label,
		at: path ? first.at.slice(0, -1) : first.at,
		...(path &&
			month !== undefined && {
				step: {
					from: monthLabel(workbook, path.quantity, month),
					...(path.moved === quantity && { isShare: true as const })
				}
			}),
		...where,
		was: inputAt(workbook, scenario, first.quantity, first.at).value,
		now: first.value ?? null,
		...(unit !== undefined && unit !== '1' && { unit }),
		...(shown !== undefined && { shown }),
		...(first.value === undefined && !isBase && { inherits: true })
	};
}

export function quantityChange(workbook: Workbook, name: string, next: Quantity): QuantityChange {
	const old = findQuantity(workbook, name);
	if (!old) return { kind: 'quantity_changed', label: name, fields: [] };
	if (next.name !== name) return { kind: 'quantity_renamed', from: name, to: next.name };
	if (next.label !== old.label)
		return { kind: 'quantity_renamed', from: old.label, to: next.label };
	const fields = QUANTITY_FIELDS.filter(
		(field) => JSON.stringify(old[field]) !== JSON.stringify(next[field])
	);
	return { kind: 'quantity_changed', label: old.label, fields };
}
