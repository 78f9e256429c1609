/** Quantities that no formula reads and that nothing shows beside their own sheet. */
import { findQuantity } from '$lib/workbook/lookup';
import { pictureQuantities } from '$lib/workbook/picture-names';
import { shadowQuantities } from '$lib/workbook/plans';
import type { Quantity, Workbook } from '$lib/workbook/schema';
import { studyQuantities } from '$lib/workbook/study-names';
import { readFormulas } from './formulas';
import type { Line } from './line';

/** Every quantity that something takes. */
export function takenNames(workbook: Workbook): Set<string> {
	const taken = shownNames(workbook);
	for (const { quantities } of workbook.sheets)
		for (const quantity of quantities)
			for (const name of readFormulas(quantity).names) if (name !== quantity.name) taken.add(name);
	return taken;
}

function shownNames(workbook: Workbook): Set<string> {
	const { front, starts, pictures, studies, programmes, sets, sheets } = workbook;
	const facts = [front, ...(starts ?? [])].flatMap((one) => one?.facts ?? []);
	const findings = (starts ?? []).flatMap((start) => start.findings);
	const inBraces = [
		...facts.flatMap(({ title, below, without }) => [title, below, without]),
		...findings.flatMap((finding) => (finding.kind === 'figures' ? [finding.title] : []))
	].flatMap((text) => [...(text ?? '').matchAll(/\{(.+?)\}/g)].map((match) => match[1]!));
	return new Set([
		...facts.map(({ quantity }) => quantity),
		...inBraces,
		...findings.flatMap((finding) => (finding.kind === 'figures' ? finding.quantities : [])),
		...(pictures ?? []).flatMap((picture) => pictureQuantities(picture).map(([, name]) => name)),
		...(studies ?? []).flatMap(studyQuantities),
		...(programmes ?? []).flatMap((programme) => [
			...programme.decisions,
			...programme.constraints,
			...shadowQuantities(programme),
			...[programme.maximise, programme.minimise].filter((name) => name !== undefined)
		]),
		...sets.flatMap(({ present }) => present ?? []),
		...sheets.flatMap(({ headline }) => headline ?? [])
	]);
}

export function unreadLine(
	workbook: Workbook,
	taken: ReadonlySet<string>,
	quantity: Quantity
): Line | null {
	if (taken.has(quantity.name) || quantity.check || quantity.caution) return null;
	if (!findQuantity(workbook, quantity.name)) return null;
	const what =
		quantity.formula === undefined ? 'It is entered, and nothing uses it' : 'Nothing uses it';
	return { kind: 'unread', quantity, at: [], scenario: null, what, speaksOf: what };
}
