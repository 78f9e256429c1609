/**
 * `check`: proves every formula, holds every range and every check in every scenario, lets the second engine compute
 * all values again, and proves every plan of a programme the best. Says what it proved; exit 1 if anything fails.
 */
import { membersOf } from '$lib/engine/layout';
import { Model } from '$lib/engine/model';
import type { Agreement, Outcome, Place } from '$lib/engine/results';
import { OK } from '$lib/engine/state';
import { Verifier } from '$lib/engine/second/verifier';
import { INPUT } from '$lib/workbook/cells';
import type { Quantity } from '$lib/workbook/schema';
import { readWords } from './arguments';
import { readWorkbookFile } from './files';
import { keptLines, plansOf, type Plans } from './check-plans';
import type { CommandOutput } from './command-output';
import { openCount } from './review';

/** What a check finds, as the JSON answer has it. */
interface Report {
	readonly quantities: number;
	readonly formulas: number;
	readonly values: number;
	readonly agreeing: number;
	readonly checks: { readonly hold: number; readonly fail: number };
	/** Of the plans of programmes; those kept as they stand need not be the best. */
	readonly plans: Omit<Plans, 'problems'>;
	/** Lines of the review list that nobody has ticked off: nothing that fails. */
	readonly to_review: number;
	readonly problems: readonly ReportedProblem[];
}

export interface ReportedProblem {
	readonly kind: 'formula' | 'value' | 'check' | 'engines' | 'plan';
	readonly quantity: string;
	readonly member: string | null;
	readonly scenario: string | null;
	readonly message: string;
}

export async function checkCommand(args: readonly string[]): Promise<CommandOutput> {
	const read = readWords(args, ['faults', 'seed'], ['json']);
	if (!read.ok) return { out: '', err: read.message, code: 2 };
	const [file] = read.words.files;
	if (file === undefined || read.words.files.length > 1)
		return {
			out: '',
			err: 'check takes one workbook file: metrewright check FILE.',
			code: 2
		};
	const loaded = readWorkbookFile(file);
	if (!loaded.ok) return { out: '', err: loaded.message, code: 2 };
	const json = read.words.switches.has('json');
	const [faults, seed] = (['faults', 'seed'] as const).map((name) =>
		read.words.options.get(name)?.at(-1)
	);
	if (seed !== undefined && faults === undefined)
		return { out: '', err: '--seed goes with --faults: how many to seed.', code: 2 };
	if (faults !== undefined) {
		const counts = {
			faults: wholeNumber(faults, 1, 100_000),
			seed: wholeNumber(seed ?? '1', 0, 4294967295)
		};
		if (counts.faults === null || counts.seed === null)
			return {
				out: '',
				err: '--faults takes a whole number from 1 to 100,000, --seed one from 0 to 4294967295.',
				code: 2
			};
		const { faultsReport } = await import('./check-faults');
		return faultsReport(loaded.workbook, { faults: counts.faults, seed: counts.seed, json });
	}
	const model = Model.open(loaded.workbook);
	const agreement = agreementOf(model);
	const report = reportOn(model, agreement, await plansOf(model));
	const out = json ? `${JSON.stringify(report)}\n` : asText(model, report, agreement);
	return { out, code: report.problems.length === 0 ? 0 : 1 };
}

function wholeNumber(text: string, least: number, most: number): number | null {
	const value = /^\d+$/.test(text) ? Number(text) : NaN;
	return value >= least && value <= most ? value : null;
}

/** Cells that the second engine takes on here: nobody waits for an edit, so far more than on screen. */
const PATIENT = 1_000_000;

function agreementOf(model: Model): Agreement {
	const verifier = Verifier.open(model.workbook, model.plan, PATIENT);
	for (const _step of verifier.build()) void _step;
	const agreement = verifier.compare(model.workbook.scenarios.map(({ id }) => model.results(id)));
	verifier.destroy();
	return agreement;
}

function reportOn(
	model: Model,
	agreement: Agreement,
	{ problems: planProblems, ...plans }: Plans
): Report {
	const { workbook, layout, plan } = model;
	const formulas = layout.quantities.reduce(
		(count, { quantity }) => count + partsOf(quantity.formula) + (quantity.where ? 1 : 0),
		0
	);
	const checks = workbook.scenarios.map(({ id }) => ({ id, ...model.checks(id) }));
	const problems: ReportedProblem[] = [
		...plan.problems.map(({ quantity, part, message }) => ({
			kind: 'formula' as const,
			quantity,
			member: part,
			scenario: null,
			message
		})),
		...badValues(model),
		...checks.flatMap(({ id, fail }) =>
			fail.map(({ place, message }) => ({ kind: 'check' as const, ...at(place, id), message }))
		),
		...agreement.disagreements.map((disagreement) => ({
			kind: 'engines' as const,
			...at(disagreement, disagreement.scenario),
			message: `The two engines differ: ${said(disagreement.first)} and ${said(disagreement.second)}.`
		})),
		...planProblems
	];
	return {
		quantities: layout.quantities.length,
		formulas,
		values: layout.cells * workbook.scenarios.length,
		agreeing: agreement.agreeing,
		checks: {
			hold: checks.reduce((sum, { hold }) => sum + hold, 0),
			fail: checks.reduce((sum, { fail }) => sum + fail.length, 0)
		},
		plans,
		to_review: openCount(workbook),
		problems
	};
}

/** How many formulas a quantity follows; a case that takes the entered value is none. */
function partsOf(formula: Quantity['formula']): number {
	if (formula === undefined) return 0;
	if (typeof formula === 'string') return 1;
	return Object.values(formula.cases).filter((text) => text.trim() !== INPUT).length;
}

/** Where errors arose, by quantity; what only inherits one is not named again. */
function badValues(model: Model): ReportedProblem[] {
	return model.workbook.scenarios.flatMap(({ id }) =>
		model.errorOrigins(id).map(({ quantity, cells, where, reason }) => ({
			kind: 'value' as const,
			quantity,
			member: cells.length === 1 ? membersOf(model.layout, cells[0]!).join(', ') || null : null,
			scenario: id,
			message: cells.length === 1 ? reason : `${where}: ${reason}`
		}))
	);
}

function at({ quantity, members }: Pick<Place, 'quantity' | 'members'>, scenario: string) {
	return { quantity, member: members.join(', ') || null, scenario };
}

const said = ({ value, state }: Outcome) => (state === OK ? String(value) : 'no value');

function asText(model: Model, report: Report, agreement: Agreement): string {
	const { checks, plans, problems } = report;
	const lines = [
		model.workbook.title,
		`${report.quantities} quantities; ${model.plan.printed.size} of ${report.formulas} formulas proven, names, sets and units`,
		`${report.values} values in ${model.workbook.scenarios.length} scenarios; ${agreement.agreeing} of ${agreement.compared} agree in two engines (relative 1e-9)`,
		...agreement.notCompared.map(({ reason, count }) => `${count} not judged: ${reason}`),
		...(agreement.sample
			? [
					`the second engine checked a sample: ${agreement.sample.cells} of ${agreement.sample.of} values, ${agreement.sample.scenarios.join(', ')}`
				]
			: []),
		`${checks.hold} checks hold, ${checks.fail} fail`,
		...(plans.of > 0 ? [`${plans.best} of ${plans.of} plans proven best`] : []),
		...keptLines(model, plans.kept),
		`${report.to_review} lines to review (metrewright review)`,
		...problems.map(
			({ quantity, member, scenario, message }) =>
				`${[quantity, member, scenario].filter(Boolean).join(', ')}: ${message}`
		),
		problems.length === 0 ? 'Nothing fails.' : `${problems.length} to mend.`
	];
	return `${lines.join('\n')}\n`;
}
