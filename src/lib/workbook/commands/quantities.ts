/**
 * Adding, describing, renaming, moving and removing quantities.
 *
 * Not decided here: whether a formula is right. A formula that names a removed quantity stays, and the
 * engine says what is missing.
 */
import { renameInText } from '$lib/formula/rename';
import { canonicalQuantity } from '../canonical';
import { cellGuide, fitting } from '../cells';
import { withCautionNames } from '../caution-names';
import { formulasOf, mentionsQuantity, withFormulas } from '../formula-names';
import { findQuantity, quantityPlaces } from '../lookup';
import { withPathNames } from '../paths';
import type { PaperPicture } from '../paper-schema';
import { pictureQuantities, withQuantityRenamed } from '../picture-names';
import {
	quantitySchema,
	type Change,
	type Quantity,
	type SetDefinition,
	type Workbook
} from '../schema';
import { mapCalibrationNames } from './calibrations';
import { mapFrozenNames } from './frozen';
import { mapQuoteNames, withoutQuoteInput } from './quotes';
import { edited, refused, type Edit, type QuantityCommand } from './command';
import { inserted, listed, mapped, without } from './lists';
import { mapChanges, mapPictures, mapQuantities, mapSheets, withValue } from './parts';
import { mapStudies, mapStudyNames, studyQuantities } from '../study-names';
import { mapProgrammeNames, programmesOn, withoutInProgrammes } from './programme-names';
import { shapeRefusal } from './refusal';
import { withQuantityRenamedInSteps } from './steps';
import { mapTableNames } from './tables';
import { withQuantityRenamedInTicks } from './ticks';
import { firstShownBy, renamedInFirst, withoutInFirst } from './shown-first';

export function editQuantity(workbook: Workbook, command: QuantityCommand): Edit {
	switch (command.kind) {
		case 'add_quantity':
			return addQuantity(workbook, command);
		case 'replace_quantity':
			return replaceQuantity(workbook, command);
		case 'remove_quantity':
			return removeQuantity(workbook, command.name, command.also === true);
		case 'move_quantity':
			return moveQuantity(workbook, command);
	}
}

type Of<K extends QuantityCommand['kind']> = Extract<QuantityCommand, { kind: K }>;

function addQuantity(workbook: Workbook, command: Of<'add_quantity'>): Edit {
	const bad = shapeRefusal(quantitySchema, command.quantity, 'The new quantity');
	if (bad) return bad;
	return placed(workbook, canonicalQuantity(command.quantity), command.sheet, command.index);
}

function placed(workbook: Workbook, quantity: Quantity, sheet: number, index: number): Edit {
	if (!workbook.sheets[sheet]) return noSheet(sheet);
	return edited(
		mapSheets(workbook, (one) =>
			one === workbook.sheets[sheet]
				? { ...one, quantities: inserted(one.quantities, index, quantity) }
				: one
		)
	);
}

function moveQuantity(workbook: Workbook, command: Of<'move_quantity'>): Edit {
	const place = quantityPlaces(workbook).get(command.name);
	if (!place) return noQuantity(command.name);
	if (!workbook.sheets[command.sheet]) return noSheet(command.sheet);
	const lifted = {
		...workbook,
		sheets: workbook.sheets.map((sheet, i) =>
			i === place.sheet ? { ...sheet, quantities: without(sheet.quantities, place.index) } : sheet
		)
	};
	return placed(lifted, place.quantity, command.sheet, command.index);
}

function replaceQuantity(workbook: Workbook, command: Of<'replace_quantity'>): Edit {
	const { name, also } = command;
	const old = findQuantity(workbook, name);
	if (!old) return noQuantity(name);
	const bad = shapeRefusal(quantitySchema, command.quantity, old.label);
	if (bad) return bad;
	const given = canonicalQuantity(command.quantity);
	const to = given.name;
	let next = mapQuantities(workbook, (one) => (one === old ? given : one));
	if (to !== name) {
		const taken = quantityPlaces(workbook).get(to);
		if (taken)
			return refused(
				'duplicate-name',
				`${to} is already the name of ${taken.quantity.label}. Choose another name.`
			);
		next = renamed(next, name, to);
	}
	if (given.unit !== old.unit) next = withoutQuoteInput(next, to);
	const quantity = findQuantity(next, to) ?? given;
	return withoutMisfits(next, quantity, also === true);
}

/**
 * A value under a formula cannot stand, so making a formula of an input drops it from the quantity; any
 * other value that no longer fits, and those of scenarios, only when `also` says so.
 */
function withoutMisfits(workbook: Workbook, quantity: Quantity, also: boolean): Edit {
	const guide = cellGuide(workbook, quantity);
	if (!guide) return edited(workbook);
	const value = fitting(guide, quantity.value, also ? undefined : 'value-beside-formula');
	const fitted = mapQuantities(workbook, (one) => (one === quantity ? withValue(one, value) : one));
	const kept = (change: Change): Change | undefined => {
		if (change.quantity !== quantity.name) return change;
		const values = quantity.fixed ? undefined : fitting(guide, change.value);
		if (values === undefined) return undefined;
		return values === change.value ? change : { ...change, value: values };
	};
	const losing = workbook.scenarios.filter(({ changes }) =>
		changes.some((change) => kept(change) !== change)
	);
	if (losing.length > 0 && !also)
		return refused(
			'drops-values',
			`${quantity.label} has values in ${listed(losing.map(({ title }) => title))} that would no longer fit. Go ahead and drop them, or leave it as it is.`
		);
	return edited(mapChanges(fitted, kept));
}

/** The workbook with every use of a quantity under its new name. */
function renamed(workbook: Workbook, from: string, to: string): Workbook {
	const rename = (text: string) => renameInText(text, from, to, { as: 'name' });
	const name = (old: string) => (old === from ? to : old);
	let next = mapQuantities(workbook, (quantity) =>
		withCautionNames(withFormulas(quantity, rename), name)
	);
	next = mapQuantities(next, (quantity) => withPathNames(quantity, name));
	next = mapChanges(next, (change) =>
		change.quantity === from ? { ...change, quantity: to } : change
	);
	next = mapSheets(next, (sheet) => (sheet.headline === from ? { ...sheet, headline: to } : sheet));
	next = {
		...next,
		sets: mapped(next.sets, (set) => withNameInSet(set, from, to))
	};
	next = mapPictures(next, (picture) => withQuantityRenamed(picture, from, to));
	next = mapStudies(next, (study) => mapStudyNames(study, { quantity: name }));
	next = mapProgrammeNames(next, { quantity: name });
	next = mapTableNames(next, { quantity: name });
	next = withQuantityRenamedInSteps(next, from, to);
	next = mapCalibrationNames(next, { quantity: name });
	next = mapFrozenNames(next, { quantity: name });
	next = mapQuoteNames(next, workbook, { quantity: name });
	return withQuantityRenamedInTicks(renamedInFirst(next, from, to), from, to);
}

function removeQuantity(workbook: Workbook, name: string, also: boolean): Edit {
	const place = quantityPlaces(workbook).get(name);
	if (!place) return noQuantity(name);
	const users = usersOf(workbook, new Set([name]));
	if (users.length > 0 && !also)
		return refused(
			'in-use',
			`${place.quantity.label} is used by ${listed(users)}. Change these first, or remove it anyway.`
		);
	return edited(
		withoutUses(
			mapSheets(workbook, (sheet) =>
				sheet === workbook.sheets[place.sheet]
					? { ...sheet, quantities: without(sheet.quantities, place.index) }
					: sheet
			),
			new Set([name])
		)
	);
}

/** What else in the workbook needs one of these quantities, in words. */
export function usersOf(workbook: Workbook, names: ReadonlySet<string>): string[] {
	// Studies in one entry and first, for a long list is cut short.
	const users = studiesOn(workbook, names);
	for (const { quantity } of quantityPlaces(workbook).values())
		if (
			!names.has(quantity.name) &&
			formulasOf(quantity).some((text) => [...names].some((name) => mentionsQuantity(text, name)))
		)
			users.push(`the formula of ${quantity.label}`);
	for (const set of workbook.sets)
		if (set.present !== undefined && names.has(set.present))
			users.push(`the set ${set.label}, which it says the presence of`);
	users.push(...firstShownBy(workbook, names), ...programmesOn(workbook, names));
	for (const picture of workbook.pictures ?? [])
		if (pictureQuantities(picture).some(([, quantity]) => names.has(quantity)))
			users.push(`the picture ${picture.title}`);
	return users;
}

function studiesOn(workbook: Workbook, names: ReadonlySet<string>): string[] {
	const titles = (workbook.studies ?? [])
		.filter((study) => studyQuantities(study).some((name) => names.has(name)))
		.map(({ title }) => title);
	if (titles.length === 0) return [];
	return [`the ${titles.length === 1 ? 'study' : 'studies'} ${listed(titles)}`];
}

/** The workbook without changes to, facts about and pictures of quantities that are gone. */
export function withoutUses(workbook: Workbook, gone: ReadonlySet<string>): Workbook {
	let next = mapQuantities(workbook, (quantity) =>
		withPathNames(
			withCautionNames(quantity, (name) => (gone.has(name) ? undefined : name)),
			(name) => (gone.has(name) ? undefined : name)
		)
	);
	next = mapChanges(next, (change) => (gone.has(change.quantity) ? undefined : change));
	next = mapSheets(next, (sheet) => {
		if (sheet.headline === undefined || !gone.has(sheet.headline)) return sheet;
		const { headline: _headline, ...rest } = sheet;
		return rest;
	});
	next = mapPictures(next, (picture) => {
		if (!pictureQuantities(picture).some(([, quantity]) => gone.has(quantity))) return picture;
		return picture.kind === 'paper' ? withoutInPaper(picture, gone) : undefined;
	});
	const sets = mapped(next.sets, (set) => withoutNamesInSet(set, gone));
	return withoutInProgrammes(withoutInFirst({ ...next, sets }, gone), gone);
}

/** A paper goes on without them; a part that showed nothing else goes with them. */
function withoutInPaper(paper: PaperPicture, gone: ReadonlySet<string>): PaperPicture | undefined {
	const sections = paper.sections.flatMap((section) => {
		const quantities = section.quantities?.filter((name) => !gone.has(name));
		if (quantities?.length === section.quantities?.length) return [section];
		return quantities && quantities.length > 0 ? [{ ...section, quantities }] : [];
	});
	return sections.length > 0 ? { ...paper, sections } : undefined;
}

/** Where a set names quantities in a list. */
const NAMED = ['not_copied', 'comes_with'] as const;

function withNameInSet(set: SetDefinition, from: string, to: string): SetDefinition {
	const named = (name: string) => (name === from ? to : name);
	let next = set.present === from ? { ...set, present: to } : set;
	for (const list of NAMED)
		if (next[list]?.includes(from)) next = { ...next, [list]: next[list].map(named) };
	const near = next.own?.near;
	return next.own && near?.includes(from)
		? { ...next, own: { ...next.own, near: near.map(named) } }
		: next;
}

function withoutNamesInSet(set: SetDefinition, gone: ReadonlySet<string>): SetDefinition {
	const { present, ...rest } = set;
	let next = present !== undefined && gone.has(present) ? rest : set;
	for (const list of NAMED) {
		const { [list]: named, ...others } = next;
		const left = named?.filter((name) => !gone.has(name)) ?? [];
		if (left.length === (named?.length ?? 0)) continue;
		next = left.length > 0 ? { ...next, [list]: left } : others;
	}
	if (!next.own?.near?.some((name) => gone.has(name))) return next;
	const { near, ...own } = next.own;
	const left = near.filter((name) => !gone.has(name));
	return { ...next, own: left.length > 0 ? { ...own, near: left } : own };
}

const noQuantity = (name: string) =>
	refused('unknown-quantity', `There is no quantity "${name}". Choose one of the workbook's.`);
const noSheet = (sheet: number) =>
	refused('unknown-sheet', `There is no sheet number ${sheet + 1}. Choose one of the workbook's.`);
