/**
 * `functions` and `units`: what formulas may use, the whole table or one line of it. Exit 2 where there is nothing of the
 * name asked for, with what it may have been.
 */
import { findFunction } from '$lib/formula/functions';
import { exampleText, functionEntries, type FunctionEntry } from '$lib/formula/reference';
import { adviseOnFunction } from '$lib/formula/unknown-function';
import { factorText, unitEntries, type UnitEntry } from '$lib/units/reference';
import { UnitSystem } from '$lib/units/system';
import { columnsOf } from '$lib/studies/told';
import { readWords } from './arguments';
import type { CommandOutput } from './command-output';

export function functionsCommand(args: readonly string[]): CommandOutput {
	const all = functionEntries();
	return referenceOf('functions', args, all, functionText, {
		find: (name) => all.find((one) => one.name === findFunction(name)?.name),
		unknown: (name) => `There is no function ${name}. ${adviseOnFunction(name).message}`
	});
}

export function unitsCommand(args: readonly string[]): CommandOutput {
	const all = unitEntries();
	return referenceOf('units', args, all, unitsText, {
		find: (name) => all.find(({ symbol, aliases }) => symbol === name || aliases.includes(name)),
		unknown: (name) => {
			const read = UnitSystem.create([]).system.parse(name);
			return read.ok
				? `${name} is made of several symbols: ask for one of them.`
				: read.problem.message;
		}
	});
}

interface Looking<Entry> {
	readonly find: (name: string) => Entry | undefined;
	readonly unknown: (name: string) => string;
}

function referenceOf<Entry>(
	command: string,
	args: readonly string[],
	all: readonly Entry[],
	text: (entries: readonly Entry[]) => string,
	{ find, unknown }: Looking<Entry>
): CommandOutput {
	const read = readWords(args, [], ['json']);
	if (!read.ok) return { out: '', err: read.message, code: 2 };
	const { files: names, switches } = read.words;
	const [name] = names;
	if (names.length > 1)
		return { out: '', err: `${command} takes one name, or none for all of them.`, code: 2 };
	const json = (value: unknown) => `${JSON.stringify(value)}\n`;
	if (name === undefined) return { out: switches.has('json') ? json(all) : text(all), code: 0 };
	const found = find(name);
	if (!found) return { out: '', err: unknown(name), code: 2 };
	return { out: switches.has('json') ? json(found) : text([found]), code: 0 };
}

function functionText(entries: readonly FunctionEntry[]): string {
	return entries
		.map(({ signature, help, standard, example }) => {
			const own = standard ? '' : ' Not in OpenFormula.';
			return `${signature}\n    ${help}${own}\n    For example: ${exampleText(example)}\n`;
		})
		.join('');
}

function unitsText(entries: readonly UnitEntry[]): string {
	const head = ['unit', 'name', 'measures', 'one of it is', 'also written'];
	const rows = entries.map((entry) => [
		entry.symbol,
		entry.label,
		entry.measures,
		factorText(entry),
		entry.aliases.join(', ')
	]);
	return columnsOf([head, ...rows]);
}
