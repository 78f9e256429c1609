/** A new study of each kind, about the result that the workbook puts first, ready to be changed. */
import { findQuantity } from '$lib/workbook/lookup';
import type { Workbook } from '$lib/workbook/schema';
import type { Study, StudyKind } from '$lib/workbook/study-schema';
import { idFrom } from '../scenarios/words';
import { wordsOf } from './kind-words';
import { firstMembers, firstMovable, isResult } from './fields/options';

export function freshStudy(
	workbook: Workbook,
	kind: StudyKind,
	title: string,
	selectedScenario: string
): Study {
	const taken = new Set((workbook.studies ?? []).map(({ name }) => name));
	const quantity = firstResult(workbook);
	const base = workbook.scenarios[0]?.id ?? 'base';
	const other = selectedScenario === base ? (workbook.scenarios[1]?.id ?? base) : selectedScenario;
	const members = firstMembers(workbook, quantity);
	const head = {
		...{ name: idFrom(title, taken, 'study'), title, quantity },
		...(members ? { members } : {})
	};
	const input = firstMovable(workbook);
	const range = { mode: 'scale', from: 0.8, to: 1.2 } as const;
	const settings = wordsOf({ kind }).fresh({
		...{ base, other, selected: selectedScenario },
		ranges: [
			{ quantity: input, ...range },
			{ quantity: secondMovable(workbook, input), ...range }
		]
	});
	return { ...head, kind, ...settings } as Study;
}

function firstResult(workbook: Workbook): string {
	const named = [
		...(workbook.front?.facts ?? []).map(({ quantity }) => quantity),
		...workbook.sheets.flatMap(({ headline }) => headline ?? [])
	];
	const fits = (name: string) => {
		const quantity = findQuantity(workbook, name);
		return quantity !== undefined && isResult(quantity);
	};
	const all = workbook.sheets.flatMap(({ quantities }) => quantities);
	return named.find(fits) ?? all.find(isResult)?.name ?? all[0]?.name ?? 'result';
}

function secondMovable(workbook: Workbook, first: string): string {
	const others = workbook.sheets
		.flatMap(({ quantities }) => quantities)
		.filter(({ name }) => name !== first);
	return firstMovable({ ...workbook, sheets: [{ title: '', quantities: others }] });
}
