/** The answer of a study as a table to read. */
import type { BridgeResult } from '$lib/studies/bridge';
import type { OptimiseResult, OptimiseStudy } from '$lib/studies/choices';
import { OK } from '$lib/engine/state';
import type { BreakEvenResult } from '$lib/studies/break-even';
import type { MapResult } from '$lib/studies/map';
import type { RiskResult } from '$lib/studies/risk-result';
import type { StudyResult } from '$lib/studies/run';
import type { SensitivityResult } from '$lib/studies/sensitivity';
import { findQuantity, findScenario } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { Study, StudyOf } from '$lib/workbook/study-schema';

/** Columns of text, the figures to the right; a last line break. */
export function columnsOf(rows: readonly (readonly (string | number)[])[]): string {
	const text = rows.map((row) =>
		row.map((entry) => (typeof entry === 'number' ? figure(entry) : entry))
	);
	const widths = (text[0] ?? []).map((_, column) =>
		Math.max(...text.map((row) => row[column]?.length ?? 0))
	);
	const lines = text.map((row, r) =>
		row
			.map((entry, column) =>
				typeof rows[r]![column] === 'number'
					? entry.padStart(widths[column]!)
					: entry.padEnd(widths[column]!)
			)
			.join('  ')
			.trimEnd()
	);
	return lines.map((line) => `  ${line}\n`).join('');
}

/** Six significant digits; "none" where there is no number. */
export function figure(value: number): string {
	return Number.isFinite(value) ? String(Number(value.toPrecision(6))) : 'none';
}

export function studyAsText(workbook: Workbook, study: Study, result: StudyResult): string {
	return [`${study.title}\n`, body(workbook, study, result)].join('');
}

function body(workbook: Workbook, study: Study, result: StudyResult): string {
	const unit = unitOf(workbook, study);
	if (study.kind === 'bridge' && result.kind === 'bridge')
		return bridgeText(workbook, study, result, unit);
	if (study.kind === 'optimise' && result.kind === 'optimise')
		return optimiseText(study, result, unit);
	const name = named(workbook, study);
	switch (result.kind) {
		case 'sensitivity':
			return sensitivityText(name, result, unit);
		case 'map':
			return mapText(name, result, unit);
		case 'break_even':
			return breakEvenText(name, result, unit);
		case 'risk':
			return riskText(name, result, unit);
	}
	throw new Error(`A study of the kind ${study.kind} was answered as ${result.kind}.`);
}

/** " EUR/year" behind a figure; nothing for a plain number. */
function unitOf(workbook: Workbook, study: Study): string {
	const unit = findQuantity(workbook, study.quantity)?.unit;
	return unit === undefined || unit === '1' ? '' : ` ${unit}`;
}

const named = (workbook: Workbook, study: Study) =>
	[findQuantity(workbook, study.quantity)?.label ?? study.quantity, ...(study.members ?? [])].join(
		', '
	);

function bridgeText(
	workbook: Workbook,
	study: StudyOf<'bridge'>,
	result: BridgeResult,
	unit: string
): string {
	const titleOf = (id: string) => findScenario(workbook, id)?.title ?? id;
	const off = result.parts.some(({ standardError }) => standardError !== null);
	return [
		`${named(workbook, study)}, from ${titleOf(study.from)} to ${titleOf(study.to)}: ${figure(result.total)}${unit}\n`,
		columnsOf([
			[titleOf(study.from), result.start, ''],
			...result.parts.map(
				({ label, value, standardError }) =>
					[label, value, standardError === null ? '' : `± ${figure(standardError)}`] as const
			),
			[titleOf(study.to), result.end, '']
		]),
		off ? 'Beside each part stands its standard error: orders were drawn, not all taken.\n' : '',
		result.idle.length > 0 ? `Nothing differs in: ${result.idle.join(', ')}.\n` : ''
	].join('');
}

function optimiseText(study: OptimiseStudy, result: OptimiseResult, unit: string): string {
	const counts = [
		`${result.combinations} combinations`,
		...(result.beyondLimits > 0 ? [`${result.beyondLimits} beyond the limits`] : []),
		...(result.withoutAnswer > 0 ? [`${result.withoutAnswer} without an answer`] : [])
	].join(', ');
	const rows = result.ranked
		.slice(0, 10)
		.map(({ choice, value }) => [
			value,
			...choice.map(
				(alternative, option) => study.options[option]?.alternatives[alternative]?.label ?? ''
			)
		]);
	const best = result.ranked[0];
	return [
		best
			? `${study.direction === 'highest' ? 'Highest' : 'Lowest'}: ${figure(best.value)}${unit}; as it is: ${figure(result.asItIs.value)}${unit}\n`
			: 'No combination keeps the limits and has an answer.\n',
		`${counts}\n`,
		columnsOf([['', ...study.options.map(({ label }) => label)], ...rows])
	].join('');
}

function sensitivityText(name: string, result: SensitivityResult, unit: string): string {
	const value = ({ value, state }: SensitivityResult['base']) => (state === OK ? value : NaN);
	return [
		`${name}: ${figure(value(result.base))}${unit} as it stands\n`,
		columnsOf([
			['', 'from', 'to', 'at from', 'at to', 'reach'],
			...result.swings.map((swing) => [
				...[swing.label, swing.low, swing.high],
				...[value(swing.atLow), value(swing.atHigh), swing.reach]
			])
		]),
		...(result.cases.length > 0
			? [columnsOf(result.cases.map((case_) => [case_.label, value(case_.result)]))]
			: []),
		result.idle.length > 0 ? `Without any effect: ${result.idle.join(', ')}.\n` : ''
	].join('');
}

const mapText = (name: string, result: MapResult, unit: string): string =>
	[
		`${name}${unit && `,${unit}`}\n`,
		columnsOf([
			['', ...result.across],
			...result.down.map((down, row) => [
				down,
				...result.across.map((_, column) => result.values[row * result.across.length + column]!)
			])
		])
	].join('');

const breakEvenText = (name: string, result: BreakEvenResult, unit: string): string =>
	[
		`${name}, target ${figure(result.target)}${unit}\n`,
		`${result.sentence}\n`,
		`As it stands: ${figure(result.today.value)}${unit} at ${figure(result.today.input)}\n`
	].join('');

function riskText(name: string, result: RiskResult, unit: string): string {
	const at = (percent: string) => result.percentiles[percent] ?? NaN;
	return [
		`${name}${unit && `,${unit}`}: ${result.draws} draws, seed ${result.seed}\n`,
		columnsOf([
			['As it stands', result.base],
			['Mean', result.mean],
			['Standard deviation', result.sd],
			['One in twenty below', at('5')],
			['Middle', at('50')],
			['One in twenty above', at('95')]
		]),
		result.target ? `Target met in ${figure(result.target.chance * 100)} % of draws\n` : '',
		result.errors > 0
			? `No answer in ${figure((result.errors / result.draws) * 100)} % of draws (${result.errors})\n`
			: '',
		...result.origins.slice(0, 3).map(({ count, reason }) => `  ${count}: ${reason}\n`),
		...result.notices.map((notice) => `${notice}\n`)
	].join('');
}
