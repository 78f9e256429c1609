/**
 * `solve`: makes the plans of a workbook's programmes, proves each the best, and says what they decide and what the next
 * unit is worth. Exit 1 where a programme has no plan or a proof fails.
 */
import { writeFileSync } from 'node:fs';
import { Model } from '$lib/engine/model';
import { nameOf, valueText } from '$lib/engine/naming';
import { Solver } from '$lib/programmes/highs';
import { planAll } from '$lib/programmes/plan-all';
import type { Planned } from '$lib/programmes/planning';
import { nearest } from '$lib/formula/names';
import { ownPlan } from '$lib/workbook/plans';
import { saveWorkbook } from '$lib/workbook/save';
import { readWords } from './arguments';
import type { CommandOutput } from './command-output';
import { readWorkbookFile } from './files';

const MOST = 12;

export async function solveCommand(args: readonly string[]): Promise<CommandOutput> {
	const read = readWords(args, ['scenario', 'out'], ['json']);
	if (!read.ok) return problem(read.message);
	const { files, options, switches } = read.words;
	const [file, wanted] = files;
	if (file === undefined || files.length > 2)
		return problem('solve takes a workbook file and the name of a programme or none.');
	const loaded = readWorkbookFile(file);
	if (!loaded.ok) return problem(loaded.message);
	const { workbook } = loaded;
	const programmes = workbook.programmes ?? [];
	const scenarios = options.get('scenario') ?? workbook.scenarios.map(({ id }) => id);
	const strange =
		(wanted === undefined
			? null
			: unknown(
					'programme',
					[wanted],
					programmes.map(({ name }) => name)
				)) ??
		unknown(
			'scenario',
			scenarios,
			workbook.scenarios.map(({ id }) => id)
		);
	if (strange) return problem(`${file}: ${strange}`);
	if (programmes.length === 0) return problem(`${file}: the workbook has no programme to solve.`);
	const model = Model.open(workbook);
	// A programme that is off is solved where it is asked for by name.
	const off = programmes.find(({ name, off }) => name === wanted && off);
	if (off) {
		const { off: _off, ...on } = off;
		const applied = model.apply({ kind: 'put_programme', name: off.name, programme: on });
		if (!applied.ok) return problem(`${file}: ${applied.problem.message}`);
	}
	const solver = await Solver.load();
	const planned: Planned[] = [];
	for (const one of planAll(
		solver,
		model,
		({ name }, scenario) => (wanted ?? name) === name && scenarios.includes(scenario)
	))
		planned.push(one);
	solver.dispose();
	const out = options.get('out')?.at(-1);
	if (out !== undefined) writeFileSync(out, saveWorkbook(model.workbook));
	const text = switches.has('json')
		? `${JSON.stringify({ workbook: workbook.title, programmes: planned.map((one) => asJson(model, one)) })}\n`
		: asText(model, planned);
	const fails = planned.some(({ plan, proven }) => plan === null || !proven);
	return { out: text, code: fails ? 1 : 0 };
}

const problem = (message: string): CommandOutput => ({ out: '', err: message, code: 2 });

function unknown(kind: string, asked: readonly string[], known: readonly string[]): string | null {
	const strange = asked.find((name) => !known.includes(name));
	if (strange === undefined) return null;
	const near = nearest(strange, known);
	return `there is no ${kind} "${strange}"; ${near ? `did you mean ${near}?` : `known are ${known.slice(0, MOST).join(', ') || 'none'}.`}`;
}

function asJson(model: Model, one: Planned): object {
	const { programme, scenario, status, problems, objective, gap, proven } = one;
	const number = (value: number) => (Number.isFinite(value) ? value : null);
	const column = model.column(scenario);
	return {
		programme,
		scenario,
		status,
		problems,
		objective: number(objective),
		gap: number(gap),
		proven,
		changed: one.changed.map((cell) => ({
			cell: nameOf(model.plan, cell),
			value: number(column.values[cell]!)
		})),
		shadow_prices: one.prices.map(({ cell, more, less, until }) => ({
			cell: nameOf(model.plan, cell),
			more,
			less,
			until: number(until)
		}))
	};
}

function asText(model: Model, planned: readonly Planned[]): string {
	const lines = [model.workbook.title];
	for (const one of planned) {
		const { programme, scenario, status, problems, prices, changed } = one;
		lines.push(
			'',
			`${programme}, ${scenario}: ${status === 'optimal' ? verdict(model, one) : status}`
		);
		lines.push(...problems.map((line) => `  ${line}`));
		if (status !== 'optimal') continue;
		const column = model.column(scenario);
		lines.push(`  ${changed.length} decisions changed`);
		lines.push(
			...changed
				.slice(0, MOST)
				.map(
					(cell) =>
						`    ${nameOf(model.plan, cell)}: ${valueText(model.plan, cell, column.values[cell]!)}`
				)
		);
		if (changed.length > MOST) lines.push(`    and ${changed.length - MOST} more`);
		const worth = prices.filter(({ more, less }) => more !== 0 || less !== 0);
		if (worth.length > 0) lines.push('  one unit more (less) is worth');
		lines.push(
			...worth.slice(0, MOST).map(({ cell, more, less }) => {
				const other =
					less === more
						? ''
						: ` (${less === null ? 'no plan' : valueText(model.plan, cell, less)})`;
				return `    ${nameOf(model.plan, cell)}: ${more === null ? 'no plan' : valueText(model.plan, cell, more)}${other}`;
			})
		);
		if (worth.length > MOST) lines.push(`    and ${worth.length - MOST} more`);
	}
	const best = planned.filter(({ plan, proven }) => plan !== null && proven).length;
	lines.push('', `${best} of ${planned.length} plans proven best.`);
	return `${lines.join('\n')}\n`;
}

function verdict(model: Model, { programme, scenario, objective, gap, proven }: Planned): string {
	const kept = ownPlan(model.workbook, programme, scenario)?.kept;
	const lost = kept === undefined ? '' : `; the plan is kept as of ${kept}`;
	const open = gap > 0 ? `, gap ${(gap * 100).toPrecision(2)} %` : '';
	return `${Number(objective.toPrecision(9))}${open}, ${proven ? 'proven best' : 'NOT proven'}${lost}`;
}
