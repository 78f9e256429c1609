/**
 * Reads the words of a command: one file or none, options that repeat, switches. Anything unknown is
 * a problem with a remedy; nothing is guessed.
 */
import { readDate } from '$lib/workbook/date-text';

export interface Words {
	readonly files: readonly string[];
	readonly options: ReadonlyMap<string, readonly string[]>;
	readonly switches: ReadonlySet<string>;
}

/** Whether an option names a day, as 2027-03-31. */
export const isDay = (text: string): boolean =>
	/^\d{4}-\d\d-\d\d$/.test(text) && readDate(text) !== null;

export type WordsResult =
	{ readonly ok: true; readonly words: Words } | { readonly ok: false; readonly message: string };

/** `takes` are options with a value, `flags` those without. */
export function readWords(
	args: readonly string[],
	takes: readonly string[],
	flags: readonly string[]
): WordsResult {
	const files: string[] = [];
	const options = new Map<string, string[]>();
	const switches = new Set<string>();
	for (let i = 0; i < args.length; i++) {
		const word = args[i]!;
		if (!word.startsWith('--')) {
			files.push(word);
			continue;
		}
		const [name, inline] = splitAtFirst(word.slice(2), '=');
		if (flags.includes(name) && inline === null) switches.add(name);
		else if (takes.includes(name)) {
			const value = inline ?? args[++i];
			if (value === undefined || value.startsWith('--'))
				return { ok: false, message: `--${name} needs a value after it.` };
			options.set(name, [...(options.get(name) ?? []), value]);
		} else {
			const known = [...takes, ...flags].map((option) => `--${option}`).join(', ') || 'no options';
			return { ok: false, message: `${word} is not known here. This command takes ${known}.` };
		}
	}
	return { ok: true, words: { files, options, switches } };
}

function splitAtFirst(text: string, mark: string): [string, string | null] {
	const at = text.indexOf(mark);
	return at < 0 ? [text, null] : [text.slice(0, at), text.slice(at + 1)];
}
