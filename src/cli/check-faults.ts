/**
 * The part of `check` that seeds faults into a copy, one at a time, and says which of them a person would meet and by what:
 * where an author should add a range or a second way. Edits that are meant as they are stand beside, for false alarms.
 */
import { CLASSES, CLASS_NAMES } from '$lib/seeding/fault';
import { MEANS, type Means, type Verdict } from '$lib/seeding/judge';
import { seedFaults } from '$lib/seeding/seed';
import { columnsOf } from '$lib/studies/told';
import { quantityPlaces } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { CommandOutput } from './command-output';
import { followPlans } from './follow-plans';

/** As many edits that are meant stand beside a thousand faults. */
const MEANT_PER_FAULT = 0.2;
/** A fault that moves a headline result by more than this share of it is a large one. */
const LARGE = 0.01;
/** Faults that pass, the worst first: as many are told. */
const TOLD = 25;

interface Row {
	readonly name: string;
	readonly seeded: number;
	/** Moves no result. */
	readonly inert: number;
	readonly by: Readonly<Record<Means, number>>;
	readonly unnoticed: number;
	/** Of those that move something; null where none does. */
	readonly noticed: number | null;
}

export async function faultsReport(
	workbook: Workbook,
	{ faults, seed, json }: { readonly faults: number; readonly seed: number; readonly json: boolean }
): Promise<CommandOutput> {
	const plans = await followPlans(workbook);
	const meant = Math.ceil(faults * MEANT_PER_FAULT);
	const all = [...seedFaults(workbook, { faults, meant, seed, follow: plans?.follow })];
	plans?.dispose();
	const seeded = all.filter(({ fault }) => fault.class !== null);
	const edits = all.filter(({ fault }) => fault.class === null);
	const places = quantityPlaces(workbook);
	const sheetOf = ({ fault }: Verdict) => {
		const place = places.get(fault.quantity);
		return place ? workbook.sheets[place.sheet]!.title : 'pairs';
	};
	const rows = {
		classes: CLASS_NAMES.map((name) =>
			rowOf(
				CLASSES[name].title,
				seeded.filter(({ fault }) => fault.class === name)
			)
		),
		sheets: [...new Set(seeded.map(sheetOf))].map((title) =>
			rowOf(
				title,
				seeded.filter((verdict) => sheetOf(verdict) === title)
			)
		),
		all: rowOf('all', seeded),
		large: rowOf('of these large', seeded.filter(isLarge))
	};
	const passed = seeded
		.filter((verdict) => counts(verdict) && verdict.means === null)
		.sort((a, b) => sizeOf(b) - sizeOf(a));
	// A jump is a mark in a list that one reads anyway, no alarm.
	const alarms = edits.filter(({ means }) => means !== null && means !== 'jump');
	if (json)
		return {
			out: `${JSON.stringify({
				...rows,
				passed: passed.map(asJson),
				meant: { edits: edits.length, alarms: alarms.map(asJson) }
			})}\n`,
			code: 0
		};
	const heads = ['', 'seeded', 'inert', ...MEANS, 'unnoticed', 'noticed'];
	const text = [
		workbook.title,
		`${seeded.length} faults, seed ${seed}: what meets a person first. Inert ones move no result and are not judged.`,
		'',
		table(heads, [...rows.classes, rows.all, rows.large]),
		'By sheet:',
		table(
			heads,
			[...rows.sheets].sort((a, b) => b.unnoticed - a.unnoticed)
		),
		passed.length === 0
			? 'None passes unnoticed.'
			: `${passed.length} would pass unnoticed; first those that move a headline result most:`,
		columnsOf(
			passed
				.slice(0, TOLD)
				.map(({ fault, effect }) => [
					fault.quantity,
					fault.what,
					effect ? `${effect.result}: ${share(effect.by)}` : 'no headline result'
				])
		),
		`${alarms.length} of ${edits.length} edits that are meant raise an alarm (${percent(alarms.length, edits.length)})`,
		columnsOf(
			alarms.map(({ fault, means, by }) => [
				`  ${means}`,
				`${fault.quantity}, ${fault.what}`,
				by ?? ''
			])
		)
	];
	return { out: `${text.join('\n')}\n`, code: 0 };
}

/** What is refused is met, whether or not it would have moved anything. */
const counts = ({ inert, means }: Verdict): boolean =>
	!inert || means === 'refused' || means === 'range';

function rowOf(name: string, verdicts: readonly Verdict[]): Row {
	const judged = verdicts.filter(counts);
	const by = Object.fromEntries(
		MEANS.map((one) => [one, judged.filter(({ means }) => means === one).length])
	) as Record<Means, number>;
	const unnoticed = judged.filter(({ means }) => means === null).length;
	return {
		name,
		seeded: verdicts.length,
		inert: verdicts.length - judged.length,
		by,
		unnoticed,
		noticed: judged.length === 0 ? null : 1 - unnoticed / judged.length
	};
}

function table(heads: readonly string[], rows: readonly Row[]): string {
	return columnsOf([
		[...heads],
		...rows.map(({ name, seeded, inert, by, unnoticed, noticed }) => [
			name,
			...[seeded, inert, ...MEANS.map((one) => by[one]), unnoticed].map(String),
			noticed === null ? '' : `${Math.round(noticed * 100)} %`
		])
	]);
}

const sizeOf = ({ effect }: Verdict) => Math.abs(effect?.by ?? 0);
const isLarge = (verdict: Verdict) => sizeOf(verdict) > LARGE;

const percent = (count: number, of: number) =>
	of === 0 ? '0 %' : `${((100 * count) / of).toFixed(1)} %`;

/** A headline result that is lost altogether has no share. */
const share = (by: number) =>
	Number.isFinite(by) ? `${by > 0 ? '+' : ''}${Number((by * 100).toPrecision(3))} %` : 'lost';

const asJson = ({ fault, means, by, effect }: Verdict) => ({
	class: fault.class,
	quantity: fault.quantity,
	what: fault.what,
	means,
	by,
	effect: effect && { result: effect.result, by: Number.isFinite(effect.by) ? effect.by : null }
});
