/**
 * `paper`: lists the papers that can be made of a workbook, or makes one as a tagged PDF.
 * Exit 1 where the paper cannot be made, 2 where the command or the file cannot be read.
 */
import { existsSync, writeFileSync } from 'node:fs';
import { Model } from '$lib/engine/model';
import { papersOf } from '$lib/papers/named';
import { paperOf, wanted } from '$lib/papers/of-model';
import { studiesOf } from '$lib/papers/kept-studies';
import { FORMAT_NAMES, type Format } from '$lib/papers/pdf/sheets';
import { texts } from '$lib/papers/texts';
import { Memory } from '$lib/programmes/memory';
import { askStudy } from '$lib/studies/ask-study';
import { asksForPlans } from '$lib/studies/following';
import type { StudyResult } from '$lib/studies/kinds';
import type { PaperPicture } from '$lib/workbook/paper-schema';
import type { Workbook } from '$lib/workbook/schema';
import { isDay, readWords } from './arguments';
import type { CommandOutput } from './command-output';
import { readWorkbookFile } from './files';

const USAGE =
	'paper takes one workbook file and the name of a paper: metrewright paper FILE [NAME --out FILE.pdf].';

export async function paperCommand(
	args: readonly string[],
	now = new Date()
): Promise<CommandOutput> {
	const read = readWords(
		args,
		['scenario', 'format', 'out', 'author', 'question', 'open', 'left-out', 'date', 'locale'],
		['studies', 'force']
	);
	if (!read.ok) return problem(read.message);
	const { files, options, switches } = read.words;
	const [file, name] = files;
	if (file === undefined || files.length > 2) return problem(USAGE);
	const loaded = readWorkbookFile(file);
	if (!loaded.ok) return problem(loaded.message);
	const { workbook } = loaded;
	const papers = papersOf(workbook);
	if (name === undefined) return listing(workbook, papers);
	if (!papers.some((one) => one.name === name)) {
		const none = wanted(Model.open(workbook), name, undefined);
		return problem(`${file}: ${none.ok ? '' : none.message}`);
	}
	const last = (option: string) => options.get(option)?.at(-1);
	const out = last('out');
	if (out === undefined) return problem(`Say where the paper goes: --out ${name}.pdf.`);
	if (existsSync(out) && !switches.has('force'))
		return problem(`${out} is there already; --force replaces it.`);
	const format = last('format') ?? 'a4';
	if (!isFormat(format))
		return problem(`--format takes ${FORMAT_NAMES.join(' or ')}, not "${format}".`);
	const date = last('date') ?? now.toISOString().slice(0, 10);
	if (!isDay(date)) return problem(`--date takes a day such as 2027-03-31, not "${date}".`);
	const locale = last('locale') ?? 'en';
	if (!isLocale(locale))
		return problem(`--locale takes a language such as en or de-DE, not "${locale}".`);
	const model = Model.open(workbook);
	const paper = wanted(model, name, options.get('scenario'));
	if (!paper.ok) return problem(`${file}: ${paper.message}`);
	const found = switches.has('studies')
		? await runStudies(workbook, paper.picture, paper.scenarios)
		: { results: new Map<string, StudyResult>(), notes: [] };
	const made = paperOf(model, paper, {
		...{ date, locale, revision: null, found: found.results },
		said: {
			...(last('author') !== undefined && { author: last('author')! }),
			...(last('question') !== undefined && { question: last('question')! }),
			...(options.get('open') && { openPoints: options.get('open')! }),
			...(options.get('left-out') && { leftOut: options.get('left-out')! })
		}
	});
	if (!made.ok) return { out: '', err: made.message, code: 1 };
	// Fonts and the library of PDFs are read for a paper alone.
	const [{ paperPdf }, { readFontFiles }] = await Promise.all([
		import('$lib/papers/pdf/pdf'),
		import('$lib/server/papers/font-files')
	]);
	const pdf = await paperPdf(made.paper, {
		...{ fonts: readFontFiles(), format },
		made: new Date(`${date}T00:00:00Z`)
	});
	try {
		writeFileSync(out, pdf.bytes);
	} catch (error) {
		return problem(
			`${out} cannot be written: ${error instanceof Error ? error.message : 'unknown'}.`
		);
	}
	const missing =
		pdf.missing.length > 0
			? [`The font has no sign for ${pdf.missing.join(' ')}; "?" stands in its place.`]
			: [];
	const err = [...found.notes, ...missing].join('\n');
	return {
		out: `${made.paper.title}\n${out}, ${Math.ceil(pdf.bytes.length / 1024)} kB\n`,
		...(err ? { err } : {}),
		code: 0
	};
}

const isFormat = (text: string): text is Format =>
	(FORMAT_NAMES as readonly string[]).includes(text);

function isLocale(text: string): boolean {
	try {
		return Intl.NumberFormat.supportedLocalesOf(text).length > 0;
	} catch {
		return false;
	}
}

const problem = (message: string): CommandOutput => ({ out: '', err: message, code: 2 });

function listing(workbook: Workbook, papers: readonly PaperPicture[]): CommandOutput {
	if (papers.length === 0) return { out: `${workbook.title}\n`, err: texts.noPapers, code: 1 };
	const rows = papers.map(({ name, title, note }) =>
		[name, title, note ?? ''].join('  ').trimEnd()
	);
	return { out: `${workbook.title}\n${rows.join('\n')}\n`, code: 0 };
}

async function runStudies(
	workbook: Workbook,
	picture: PaperPicture,
	scenarios: readonly string[]
): Promise<{ results: Map<string, StudyResult>; notes: string[] }> {
	const results = new Map<string, StudyResult>();
	const notes: string[] = [];
	const studies = picture.sections
		.filter(({ kind }) => kind === 'studies')
		.flatMap((section) => studiesOf(workbook, section, scenarios));
	for (const study of new Set(studies)) {
		const replanning = asksForPlans(workbook, study)
			? {
					solver: await (await import('$lib/programmes/highs')).Solver.load(),
					memory: new Memory()
				}
			: undefined;
		const answer = askStudy(workbook, study, { replanning });
		replanning?.solver.dispose();
		if (answer.ok) results.set(study.name, answer.value);
		else notes.push(`${study.title}: ${answer.problem.message}`);
	}
	return { results, notes };
}
