/** `evaluate`: the values of some or all quantities in some or all scenarios, as text or as JSON. */
import { Model } from '$lib/engine/model';
import { nearest } from '$lib/formula/names';
import { dateText } from '$lib/workbook/date-text';
import { holdsDates } from '$lib/workbook/file-dates';
import type { Workbook } from '$lib/workbook/schema';
import { readWords } from './arguments';
import { readWorkbookFile } from './files';
import type { CommandOutput } from './command-output';
import {
	quantityAsJson,
	type JsonQuantity,
	type JsonValue,
	type JsonValues
} from '$lib/engine/json-values';

interface JsonScenario {
	readonly id: string;
	readonly quantities: Record<string, JsonQuantity>;
}

export function evaluateCommand(args: readonly string[]): CommandOutput {
	const read = readWords(args, ['scenario', 'quantity'], ['json']);
	if (!read.ok) return problem(read.message);
	const { files, options, switches } = read.words;
	const [file] = files;
	if (file === undefined || files.length > 1)
		return problem('evaluate takes one workbook file: metrewright evaluate FILE.');
	const loaded = readWorkbookFile(file);
	if (!loaded.ok) return problem(loaded.message);

	const model = Model.open(loaded.workbook);
	const known = model.workbook.scenarios.map(({ id }) => id);
	const scenarios = options.get('scenario') ?? known;
	const names = options.get('quantity') ?? [...model.layout.byName.keys()];
	const strange =
		unknown('scenario', scenarios, known, file) ??
		unknown('quantity', names, [...model.layout.byName.keys()], file);
	if (strange) return problem(strange);

	const answers: JsonScenario[] = scenarios.map((id) => {
		const results = model.results(id);
		const quantities = Object.create(null) as Record<string, JsonQuantity>;
		for (const name of names) {
			const place = model.layout.byName.get(name)!;
			quantities[name] = quantityAsJson(model.layout, place, results, (cell) =>
				model.origin(id, cell)
			);
		}
		return { id, quantities };
	});
	const { title } = model.workbook;
	const out = switches.has('json')
		? `${JSON.stringify({ workbook: title, scenarios: answers })}\n`
		: asText(title, answers, datesOf(model.workbook));
	return { out, code: 0 };
}

const problem = (message: string): CommandOutput => ({ out: '', err: message, code: 2 });

function unknown(kind: string, asked: readonly string[], known: readonly string[], file: string) {
	const strange = asked.find((name) => !known.includes(name));
	if (strange === undefined) return null;
	const near = nearest(strange, known);
	const hint = near ? `did you mean ${near}?` : `known are ${known.slice(0, 12).join(', ')}.`;
	return `${file}: there is no ${kind} "${strange}"; ${hint}`;
}

/** The quantities whose values are printed as dates. */
const datesOf = ({ sheets }: Workbook): ReadonlySet<string> =>
	new Set(
		sheets.flatMap(({ quantities }) => quantities.filter(holdsDates)).map(({ name }) => name)
	);

function asText(
	title: string,
	scenarios: readonly JsonScenario[],
	dates: ReadonlySet<string>
): string {
	const lines = [title];
	for (const { id, quantities } of scenarios) {
		lines.push('', `scenario ${id}`);
		for (const [name, quantity] of Object.entries(quantities)) {
			const unit = quantity.unit === '1' ? '' : quantity.unit;
			const print = (value: JsonValue) =>
				typeof value === 'number' && dates.has(name) ? dateText(value) : said(value, unit);
			if (quantity.value !== undefined) lines.push(`  ${name}: ${print(quantity.value)}`);
			else {
				lines.push(`  ${name}:`);
				for (const [members, value] of flat(quantity.values ?? {}))
					lines.push(`    ${members.join(', ')}: ${print(value)}`);
			}
		}
	}
	return `${lines.join('\n')}\n`;
}

const WORDS = ['member', 'nothing', 'error'] as const;

function isValue(values: JsonValues): values is JsonValue {
	return (
		typeof values !== 'object' || WORDS.some((word) => typeof values[word as never] === 'string')
	);
}

function* flat(values: JsonValues, before: string[] = []): Generator<[string[], JsonValue]> {
	if (isValue(values)) yield [before, values];
	else
		for (const [member, inner] of Object.entries(values)) yield* flat(inner, [...before, member]);
}

function said(value: JsonValue, unit: string): string {
	if (typeof value === 'number') return unit ? `${value} ${unit}` : String(value);
	if (typeof value === 'boolean') return value ? 'yes' : 'no';
	if ('member' in value) return value.member;
	if ('nothing' in value) return `nothing (${value.nothing}): ${value.reason}`;
	return `no value (${value.error}): ${value.reason}`;
}
