/** A bridge in words: its finding, one sentence for each step, its table. */
import type { PlainTable } from '$lib/exchange/csv/write';
import { findQuantity } from '$lib/workbook/lookup';
import type { Scalar, Workbook } from '$lib/workbook/schema';
import type { StudyOf } from '$lib/workbook/study-schema';
import type { BridgePart, BridgeResult } from '$lib/studies/bridge';
import { unitShown } from '../../../format';
import { asEntered, scalarWords } from '../../../scalar-words';
import type { TableRow } from '../../BarTable.svelte';
import type { KindWords } from '../../kind-words';
import { inSentence, nameOf, titleOf } from '../../names';
import type { Shown } from '../../shown';
import { texts } from './texts';

export const kind: KindWords<'bridge'> = {
	name: 'Bridge',
	asks: 'Which changes make the difference between two scenarios, or a frozen copy and one',
	atEach: 'for every combination of the changes',
	points: 'combinations',
	fresh: ({ base, other }) => ({ from: base, to: other }),
	figures: ({ start, end, parts }) => [start, end, ...parts.map(({ value }) => value)],
	said: (workbook, study, result, shown) => ({
		title: bridgeTitle(workbook, study, result, shown),
		line: bridgeLine(workbook, study, result),
		table: bridgeTable(workbook, study, result),
		summary: stepSentences(workbook, study, result, shown)
			.map(({ text }) => text)
			.join(' ')
	}),
	headline: ({ total }, unit) => [{ label: 'Difference', value: total, unit }]
};

type Bridge = StudyOf<'bridge'>;

/** How a part is to be read. */
export const PART_WORDS =
	"A step's part is its average over all orders in which the steps can be made. What steps do only together is shared between them, so a part is not what the step does alone.";

export function bridgeTitle(workbook: Workbook, study: Bridge, result: BridgeResult, shown: Shown) {
	const name = nameOf(workbook, study);
	if (result.parts.length === 0)
		return `${name} is the same: nothing differs between ${titleOf(workbook, study.from)} and ${titleOf(workbook, study.to)}`;
	const most = [...result.parts].sort((a, b) => Math.abs(b.value) - Math.abs(a.value))[0]!;
	const word = result.total > 0 ? 'rises by' : 'falls by';
	if (shown.number(Math.abs(result.total)) === shown.number(0))
		return `${name} stays the same, though ${inSentence(most.label)} moves it by ${shown.signedWhole(most.value)}`;
	return `${name} ${word} ${shown.whole(Math.abs(result.total))}, most of all through ${inSentence(most.label)}`;
}

export function bridgeLine(workbook: Workbook, study: Bridge, result: BridgeResult): string {
	const how =
		result.parts[0]?.standardError === null || result.parts.length === 0
			? `all ${result.subsets.toLocaleString('en')} combinations of the changes taken`
			: `orders of the changes drawn, ${result.subsets.toLocaleString('en')} combinations computed`;
	return `${titleOf(workbook, study.from)} to ${titleOf(workbook, study.to)}; each step is the mean of what the change does in every order, ${how}`;
}

/** What a step changes: "5x24 to 7x24" for one value, else how many. */
export function changeOf(
	workbook: Workbook,
	{ cells, since }: Pick<BridgePart, 'cells' | 'since'>,
	locale: string
): string {
	const [first] = cells;
	if (since !== undefined) return texts.noInput;
	if (!first) return 'what it is compared with';
	if (cells.length > 1) {
		const names = new Set(cells.map(({ quantity }) => quantity));
		const some = names.size > 1 ? ` of ${names.size} quantities` : '';
		return `${cells.length} values${some}`;
	}
	const quantity = findQuantity(workbook, first.quantity);
	const unit = quantity ? unitShown(quantity) : '';
	const words = (value: Scalar) =>
		scalarWords(value, quantity ?? null, {
			nothing: 'nothing',
			number: (entered) => asEntered(entered, locale),
			workbooks: [workbook]
		});
	return `${words(first.from)} to ${words(first.to)}${unit ? ` ${unit}` : ''}`;
}

/** One sentence for each step. */
export function stepSentences(
	workbook: Workbook,
	study: Bridge,
	result: BridgeResult,
	shown: Shown
): { key: string; text: string }[] {
	const name = inSentence(nameOf(workbook, study));
	return result.parts.map((part, i) => {
		if (part.since !== undefined) return sinceSentence(part, i, name, shown);
		const change = changeOf(workbook, part, shown.locale);
		const where = placeWords(workbook, part);
		const off =
			part.standardError === null ? '' : `, give or take ${shown.whole(part.standardError)}`;
		const effect =
			shown.number(part.value) === shown.number(0)
				? `leaves ${name} as it is`
				: `${part.value > 0 ? 'raises' : 'lowers'} ${name} by ${shown.whole(Math.abs(part.value))}${off}`;
		return { key: `${i} ${part.label}`, text: `${part.label}${where} (${change}) ${effect}.` };
	});
}

/** What a frozen copy holds, and today's model does not make of its inputs. */
function sinceSentence(
	{ since = '', value, label }: BridgePart,
	i: number,
	name: string,
	shown: Shown
) {
	const size = shown.number(value) === shown.number(0) ? '' : shown.whole(Math.abs(value));
	return { key: `${i} ${label}`, text: texts.notOfInputs(label, since, name, size, value > 0) };
}

/** Whose value it is, where the step has no name of its own that says so. */
function placeWords(workbook: Workbook, { label, cells }: BridgePart): string {
	const [only, other] = cells;
	if (!only || other || only.at.length === 0) return '';
	const own = findQuantity(workbook, only.quantity)?.label === label;
	return own ? ` of ${only.at.join(', ')}` : '';
}

export function bridgeRows(
	workbook: Workbook,
	study: Bridge,
	result: BridgeResult,
	shown: Shown
): TableRow[] {
	let level = result.start;
	const end = (key: string, name: string, value: number): TableRow => ({
		...{ key, name, note: '', end: '', strong: true, carries: value * shown.factor },
		bars: [
			{
				...{ from: 0, to: value * shown.factor, hatched: false, tone: 'ink', strong: true },
				figure: shown.number(value)
			}
		]
	});
	const steps = result.parts.map((part, i): TableRow => {
		const from = level;
		level += part.value;
		return {
			...{ key: `${i} ${part.label}`, name: part.label, note: '', strong: false },
			end: changeOf(workbook, part, shown.locale),
			carries: level * shown.factor,
			bars: [
				{
					...{ from: from * shown.factor, to: level * shown.factor, tone: 'copper' },
					hatched: part.value < 0,
					figure: shown.signed(part.value)
				}
			]
		};
	});
	return [
		end('from', titleOf(workbook, study.from), result.start),
		...steps,
		end('to', titleOf(workbook, study.to), result.end)
	];
}

export function bridgeTable(workbook: Workbook, study: Bridge, result: BridgeResult): PlainTable {
	const unit = findQuantity(workbook, study.quantity)?.unit ?? '1';
	const sampled = result.parts.some(({ standardError }) => standardError !== null);
	const name = nameOf(workbook, study);
	return {
		caption: `${name}, from ${titleOf(workbook, study.from)} to ${titleOf(workbook, study.to)}`,
		columns: ['Step', `${name} [${unit}]`, ...(sampled ? ['Standard error'] : [])],
		rows: [
			[titleOf(workbook, study.from), result.start],
			...result.parts.map(({ label, value, standardError }) => [
				label,
				value,
				...(sampled ? [standardError] : [])
			]),
			[titleOf(workbook, study.to), result.end]
		]
	};
}
