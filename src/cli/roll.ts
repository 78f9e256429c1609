/**
 * `roll`: moves dated months on by one. The first, which has to be closed, leaves as a frozen copy of its own cells; what its
 * steps said holds on in the next, and a month comes at the end. Without `--out` it only says what would happen.
 */
import { writeFileSync } from 'node:fs';
import { Model } from '$lib/engine/model';
import { monthLeft } from '$lib/engine/month-left';
import { copyId } from '$lib/ui/frozen/copy-id';
import { dayText } from '$lib/workbook/date-text';
import { baseOf } from '$lib/workbook/lookup';
import { rollForward } from '$lib/workbook/roll';
import { saveWorkbook } from '$lib/workbook/save';
import { isDay, readWords } from './arguments';
import type { CommandOutput } from './command-output';
import { readWorkbookFile } from './files';

export function rollCommand(args: readonly string[], today = new Date()): CommandOutput {
	const read = readWords(args, ['set', 'date', 'out'], ['json']);
	if (!read.ok) return problem(read.message);
	const { files, options, switches } = read.words;
	const [file] = files;
	if (file === undefined || files.length > 1) return problem('roll takes one workbook file.');
	const date = options.get('date')?.at(-1) ?? dayText(today);
	if (!isDay(date)) return problem(`--date ${date} is no day. Write it as 2027-05-03.`);
	const loaded = readWorkbookFile(file);
	if (!loaded.ok) return problem(loaded.message);
	const { workbook } = loaded;
	const timed = workbook.sets.filter(({ time }) => time !== undefined).map(({ name }) => name);
	const closed = timed.filter((set) =>
		workbook.pictures?.some((one) => one.kind === 'months' && one.period === set && one.closed)
	);
	const [only, ...more] = closed.length > 0 ? closed : timed;
	const wanted = options.get('set')?.at(-1);
	if (only === undefined) return problem(`${file}: the workbook has no list of dated months.`);
	if (wanted !== undefined && !timed.includes(wanted))
		return problem(`${file}: ${wanted} is no list of dated months. There is ${timed.join(', ')}.`);
	if (wanted === undefined && more.length > 0)
		return problem(
			`${file}: there are several lists of months. Say which by --set: ${timed.join(', ')}.`
		);
	const set = wanted ?? only;
	const rolled = rollForward(workbook, set);
	if (!rolled.ok) return problem(`${file}: ${rolled.message}`, 1);
	const { left, come, commands } = rolled;
	const month = left.label ?? left.id;
	const model = Model.open(workbook);
	const base = baseOf(workbook);
	const frozen = monthLeft(model.layout, model.results(base.id), {
		...{ set, month: left.id },
		head: {
			...{ id: copyId(workbook, month), title: month, of: base.title, date },
			note: `What ${month} held when the months moved on: its plan and what came.`
		}
	});
	const applied = model.apply({
		kind: 'several',
		commands: [...(frozen ? [{ kind: 'add_frozen' as const, frozen }] : []), ...commands]
	});
	if (!applied.ok) return problem(`${file}: ${applied.problem.message}`, 1);
	const out = options.get('out')?.at(-1);
	if (out !== undefined) writeFileSync(out, saveWorkbook(model.workbook));
	const told = {
		...{ set, left: left.id, come: come.id },
		...{ copy: frozen?.id ?? null, quantities: frozen?.quantities.length ?? 0 },
		written: out ?? null
	};
	if (switches.has('json')) return { out: `${JSON.stringify(told)}\n`, code: 0 };
	const lines = [
		frozen
			? `${month} leaves as the frozen copy ${frozen.id}, with ${frozen.quantities.length} quantities.`
			: `${month} leaves; it held nothing.`,
		`${come.label ?? come.id} comes at the end. What steps in time said in ${month} holds on.`,
		out === undefined ? 'Nothing is written: say --out FILE to keep it.' : `Written to ${out}.`
	];
	return { out: `${lines.join('\n')}\n`, code: 0 };
}

const problem = (err: string, code: 1 | 2 = 2): CommandOutput => ({ out: '', err, code });
