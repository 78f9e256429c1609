/** `review`: the review list of a workbook, what nobody has ticked off yet; `--all` with what somebody has. */
import { KINDS, KIND_NAMES } from '$lib/review/line';
import { reviewLines } from '$lib/review/review';
import { asksOfTemplate } from '$lib/review/template';
import { withTicks, type Reviewed } from '$lib/review/ticks';
import type { Workbook } from '$lib/workbook/schema';
import { readWords } from './arguments';
import type { CommandOutput } from './command-output';
import { readWorkbookFile } from './files';

export function reviewCommand(args: readonly string[]): CommandOutput {
	const read = readWords(args, ['template'], ['json', 'all']);
	if (!read.ok) return { out: '', err: read.message, code: 2 };
	const { files, switches, options } = read.words;
	const [file] = files;
	if (file === undefined || files.length > 1)
		return { out: '', err: 'review takes one workbook file: metrewright review FILE.', code: 2 };
	const loaded = readWorkbookFile(file);
	if (!loaded.ok) return { out: '', err: loaded.message, code: 2 };
	const { workbook } = loaded;
	const from = options.get('template')?.at(-1);
	const template = from === undefined ? null : readWorkbookFile(from);
	if (template && !template.ok) return { out: '', err: template.message, code: 2 };
	const reviewed = withTicks(workbook, reviewLines(workbook, template?.workbook ?? null));
	const shown = switches.has('all') ? reviewed : reviewed.filter(({ tick }) => tick === null);
	if (switches.has('json')) return { out: `${JSON.stringify(shown.map(asJson))}\n`, code: 0 };
	const hint = template || !asksOfTemplate(workbook) ? '' : `\n${NEEDS_TEMPLATE}\n`;
	return { out: `${asText(workbook, shown, countOf(reviewed))}${hint}`, code: 0 };
}

const NEEDS_TEMPLATE =
	'It was begun from a shipped workbook: --template FILE names that one, and its entries that still stand are listed too.';

export const openCount = (workbook: Workbook): number =>
	withTicks(workbook, reviewLines(workbook)).filter(({ tick }) => tick === null).length;

const countOf = (reviewed: readonly Reviewed[]) => {
	const done = reviewed.filter(({ tick }) => tick !== null).length;
	return `${reviewed.length - done} lines to review, ${done} ticked off`;
};

function asText(workbook: Workbook, shown: readonly Reviewed[], count: string): string {
	const out = [workbook.title, count];
	for (const kind of KIND_NAMES) {
		const some = shown.filter(({ line }) => line.kind === kind);
		if (some.length === 0) continue;
		const { title, why, remedy } = KINDS[kind];
		out.push('', `${title} (${some.length})`, `  ${why} ${remedy}`);
		out.push(...some.map((one) => `  ${placeOf(one)}: ${one.line.what}${aside(one)}`));
	}
	return `${out.join('\n')}\n`;
}

function placeOf({ line: { quantity, at, scenario } }: Reviewed): string {
	const cell = [quantity?.name, at.join(', ')].filter(Boolean).join(' of ');
	return [cell, scenario].filter(Boolean).join(', ');
}

const aside = ({ tick, isBack }: Reviewed): string =>
	tick
		? ` (ticked off by ${tick.by}: ${tick.reason})`
		: isBack
			? ' (changed since it was ticked off)'
			: '';

const asJson = ({ line, id, tick, isBack }: Reviewed) => ({
	id,
	kind: line.kind,
	quantity: line.quantity?.name ?? null,
	members: line.at,
	scenario: line.scenario,
	what: line.what,
	ticked: tick && { by: tick.by, reason: tick.reason },
	changed_since: isBack
});
