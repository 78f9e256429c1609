/** What a quantity says of a log that its values came from: file, digest, dates, rows; and the edit that enters it all. */
import type { Command } from '$lib/workbook/commands';
import { baseOf, changesOf, findQuantity, findScenario } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import { sourceWith } from '$lib/workbook/source-words';
import { dateText } from '$lib/workbook/date-text';
import { commandsOf, type Brought } from '../table/settle';
import type { Period } from './covered';
import type { LogLook } from './look';

export interface LogSource {
	readonly file: string;
	readonly digest: string;
}

/** `of` is how many of its values come from the log, `all` how many it has. */
export function sourceWords(
	{ file, digest }: LogSource,
	look: Pick<LogLook, 'rows' | 'used' | 'period' | 'covered'>,
	values: { readonly of: number; readonly all: number }
): string {
	const days = ({ from, to }: Period) => `${dateText(from)} to ${dateText(to)}`;
	const { period, covered } = look;
	return [
		file,
		`SHA-256 ${digest}`,
		...(period ? [`rows of ${days(period)}`] : []),
		...(period && covered && days(covered) !== days(period) ? [`covering ${days(covered)}`] : []),
		`${look.used} of ${look.rows} rows used`,
		...(values.of < values.all ? [`${values.of} of ${values.all} values`] : [])
	].join(', ');
}

export interface SourceChange {
	readonly quantity: string;
	readonly label: string;
	readonly before: string;
	readonly after: string;
}

/** What each quantity would say of its source. Where other values stay, what was said of them stays behind it. */
export function sourceChanges(
	source: LogSource,
	look: LogLook,
	accepted: readonly Brought[],
	counts: (quantity: string) => number,
	workbook: Workbook
): SourceChange[] {
	const scenario = accepted[0]?.scenario ?? baseOf(workbook).id;
	return [...new Set(accepted.map(({ quantity }) => quantity.name))].map((name) => {
		const quantity = findQuantity(workbook, name)!;
		const fresh = accepted.filter((change) => change.quantity.name === name).length;
		const of = fresh + (look.sameOf.get(name) ?? 0);
		const all = counts(name);
		const before = saidOfSource(workbook, scenario, name);
		const words = sourceWords(source, look, { of, all });
		return {
			quantity: name,
			label: quantity.label,
			before,
			// The same file once more says nothing new.
			after: sourceWith(words, of < all ? before : '', (said) => said.includes(source.digest))
		};
	});
}

function saidOfSource(workbook: Workbook, scenario: string, name: string): string {
	if (scenario === baseOf(workbook).id) return findQuantity(workbook, name)?.source ?? '';
	const found = findScenario(workbook, scenario);
	return (found && changesOf(found).get(name)?.note) ?? '';
}

/** One edit: values, and what is said of them. In a scenario it is the note of its change. */
export function logCommands(
	accepted: readonly Brought[],
	sources: readonly SourceChange[],
	look: Pick<LogLook, 'covered' | 'period'>,
	workbook: Workbook
): Command[] {
	const scenario = accepted[0]?.scenario ?? baseOf(workbook).id;
	const until = look.covered ?? look.period;
	const entries = commandsOf(accepted);
	if (scenario !== baseOf(workbook).id)
		return [
			...entries,
			...sources.map(({ quantity, after }) => ({
				kind: 'note_change' as const,
				scenario,
				quantity,
				note: after
			}))
		];
	// What is said comes first: it brings the quantity whole, with the values that stand until then.
	return [
		...sources.map(({ quantity: name, after }) => ({
			kind: 'replace_quantity' as const,
			name,
			quantity: {
				...findQuantity(workbook, name)!,
				source: after,
				...(until && { date: dateText(until.to) })
			}
		})),
		...entries
	];
}
