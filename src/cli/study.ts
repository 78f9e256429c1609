/**
 * `study`: lists the studies of a workbook, or runs one and prints its answer as a table or as JSON.
 * Exit 1 where the study cannot be answered, 2 where the command or the file cannot be read.
 */
import { Memory } from '$lib/programmes/memory';
import { askStudy } from '$lib/studies/ask-study';
import { freshnessOf } from '$lib/studies/fingerprint';
import { asksForPlans, type Replanning } from '$lib/studies/following';
import { kindOf } from '$lib/studies/kinds';
import { aboutStudy, columnsOf } from '$lib/studies/told';
import { nearest } from '$lib/formula/names';
import type { Workbook } from '$lib/workbook/schema';
import type { Study } from '$lib/workbook/study-schema';
import { STUDY_LIMITS } from '$lib/workbook/study-shapes';
import { readWords } from './arguments';
import type { CommandOutput } from './command-output';
import { readWorkbookFile } from './files';

export async function studyCommand(args: readonly string[]): Promise<CommandOutput> {
	const read = readWords(args, ['draws', 'seed'], ['json']);
	if (!read.ok) return problem(read.message);
	const { files, options, switches } = read.words;
	const [file, name] = files;
	if (file === undefined || files.length > 2)
		return problem(
			'study takes one workbook file and the name of a study: metrewright study FILE [NAME].'
		);
	const loaded = readWorkbookFile(file);
	if (!loaded.ok) return problem(loaded.message);
	const { workbook } = loaded;
	const json = switches.has('json');
	const studies = workbook.studies ?? [];
	if (name === undefined)
		return { out: json ? listAsJson(studies) : listAsText(workbook), code: 0 };
	const study = studies.find((study) => study.name === name);
	if (!study) return problem(unknown(file, name, studies));
	const settings = withOptions(study, options);
	if ('message' in settings) return problem(settings.message);
	const replanning = await replanningFor(workbook, settings.study);
	const found = askStudy(workbook, settings.study, { replanning });
	replanning?.solver.dispose();
	if (!found.ok) return { out: '', err: `${study.title}: ${found.problem.message}`, code: 1 };
	const { kind, title, quantity, members = [] } = settings.study;
	const { data, text } = kindOf(settings.study);
	const about = aboutStudy(workbook, settings.study);
	const result = { quantity, members, label: about.name, unit: about.unit.trim() || '1' };
	const out = json
		? `${JSON.stringify({ kind, title, ...result, ...data(settings.study, found.value, about) })}\n`
		: `${title}\n${text(settings.study, found.value, about)}`;
	return { out, code: 0 };
}

/** The solver is read for a study that asks for plans alone. */
async function replanningFor(workbook: Workbook, study: Study): Promise<Replanning | undefined> {
	if (!asksForPlans(workbook, study)) return undefined;
	const { Solver } = await import('$lib/programmes/highs');
	return { solver: await Solver.load(), memory: new Memory() };
}

const problem = (message: string): CommandOutput => ({ out: '', err: message, code: 2 });

const listAsJson = (studies: readonly Study[]) =>
	`${JSON.stringify(studies.map(({ name, kind }) => ({ name, kind })))}\n`;

const SAID = {
	'never-run': 'never run',
	'up-to-date': 'up to date',
	'out-of-date': 'out of date'
} as const;

function listAsText(workbook: Workbook): string {
	const studies = workbook.studies ?? [];
	if (studies.length === 0) return `${workbook.title}\nNo studies.\n`;
	const rows = studies.map((study) => [
		study.name,
		study.kind,
		study.title,
		SAID[freshnessOf(workbook, study)]
	]);
	return `${workbook.title}\n${columnsOf(rows)}`;
}

function unknown(file: string, name: string, studies: readonly Study[]): string {
	const known = studies.map((study) => study.name);
	const near = nearest(name, known);
	if (near) return `${file}: there is no study "${name}"; did you mean ${near}?`;
	return known.length === 0
		? `${file}: there is no study "${name}"; the workbook has none.`
		: `${file}: there is no study "${name}"; known are ${known.slice(0, 12).join(', ')}.`;
}

/** The study with the draws and the seed that the command line asks for. */
function withOptions(
	study: Study,
	options: ReadonlyMap<string, readonly string[]>
): { study: Study } | { message: string } {
	const draws = options.get('draws')?.at(-1);
	const seed = options.get('seed')?.at(-1);
	if (draws === undefined && seed === undefined) return { study };
	const { withDraws } = kindOf(study);
	if (!withDraws)
		return {
			message: `${study.name} draws nothing: --draws and --seed are for studies of risk, and for bridges of many changes.`
		};
	const { draws: most } = STUDY_LIMITS;
	const counts = { draws: whole(draws, 1, most), seed: whole(seed, 0, 4294967295) };
	if (Number.isNaN(counts.draws))
		return { message: `--draws takes a whole number from 1 to ${most}, not "${draws}".` };
	if (Number.isNaN(counts.seed))
		return { message: `--seed takes a whole number from 0 to 4294967295, not "${seed}".` };
	return {
		study: withDraws(study, {
			...(counts.draws === undefined ? {} : { draws: counts.draws }),
			...(counts.seed === undefined ? {} : { seed: counts.seed })
		})
	};
}

function whole(text: string | undefined, least: number, most: number): number | undefined {
	if (text === undefined) return undefined;
	const value = /^\d+$/.test(text) ? Number(text) : NaN;
	return value >= least && value <= most ? value : NaN;
}
