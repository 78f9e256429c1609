/**
 * `ranges`: usual ranges for entered quantities that have none, suggested from what stands; `--accept FILE` writes a copy of
 * the workbook with them, `--quantity NAME` takes only these.
 */
import { writeFileSync } from 'node:fs';
import { rangeText } from '$lib/engine/number-words';
import { suggestions, withSuggestions, type Suggestion } from '$lib/review/suggest';
import { columnsOf } from '$lib/studies/told';
import { applyCommand } from '$lib/workbook/commands';
import { saveWorkbook } from '$lib/workbook/save';
import { readWords } from './arguments';
import type { CommandOutput } from './command-output';
import { readWorkbookFile } from './files';

const problem = (message: string): CommandOutput => ({ out: '', err: message, code: 2 });

export function rangesCommand(args: readonly string[]): CommandOutput {
	const read = readWords(args, ['accept', 'quantity'], ['json']);
	if (!read.ok) return problem(read.message);
	const { files, options, switches } = read.words;
	const [file] = files;
	if (file === undefined || files.length > 1)
		return problem('ranges takes one workbook file: metrewright ranges FILE.');
	const loaded = readWorkbookFile(file);
	if (!loaded.ok) return problem(loaded.message);
	const { workbook } = loaded;
	const all = suggestions(workbook);
	const wanted = options.get('quantity');
	const strange = wanted?.find((name) => !all.some(({ quantity }) => quantity.name === name));
	if (strange !== undefined)
		return problem(
			`${file}: there is no usual range to suggest for "${strange}": it has one, is no entered number, or there is none of that name.`
		);
	const chosen = wanted ? all.filter(({ quantity }) => wanted.includes(quantity.name)) : all;
	const to = options.get('accept')?.at(-1);
	if (to !== undefined) {
		const accepted = applyCommand(workbook, withSuggestions(chosen));
		if (!accepted.ok) return problem(`${file}: ${accepted.problem.message}`);
		writeFileSync(to, saveWorkbook(accepted.workbook));
	}
	if (switches.has('json')) return { out: `${JSON.stringify(chosen.map(asJson))}\n`, code: 0 };
	const verb = to === undefined ? 'suggested' : `accepted, written to ${to}`;
	return {
		out: `${workbook.title}\n${chosen.length} usual ${chosen.length === 1 ? 'range' : 'ranges'} ${verb}\n${asText(chosen)}`,
		code: 0
	};
}

const asText = (chosen: readonly Suggestion[]): string =>
	columnsOf(
		chosen.map(({ quantity: { name, label, unit }, usual }) => [
			name,
			rangeText(usual, unit === '1' ? '' : (unit ?? '')),
			label
		])
	);

const asJson = ({ quantity, usual }: Suggestion) => ({
	quantity: quantity.name,
	unit: quantity.unit ?? '1',
	usual
});
