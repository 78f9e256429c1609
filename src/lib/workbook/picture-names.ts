/**
 * Which sets and quantities a picture names, wherever in it they stand: in a field, in a list, or in a
 * part of its own. Whether they exist is checked by `consistency/front.ts`.
 */
import { partsOf } from './picture-parts';
import type { Picture, Workbook } from './schema';

const PLAIN_FIELDS = ['kind', 'title', 'note'];

export type Named = readonly [path: readonly PropertyKey[], name: string];

/** The quantities that a picture draws, each with its path in it. */
export const pictureQuantities = (picture: Picture): Named[] =>
	namesIn(picture, (field) => !partsOf(picture).sets.includes(field));

/** The sets that a picture draws. */
export const pictureSets = (picture: Picture): Named[] =>
	namesIn(picture, (field) => partsOf(picture).sets.includes(field));

function namesIn(picture: Picture, isWanted: (field: string) => boolean): Named[] {
	const { plain = [] } = partsOf(picture);
	const found: Named[] = [];
	const look = (value: unknown, field: string, path: readonly PropertyKey[]): void => {
		if (PLAIN_FIELDS.includes(field) || plain.includes(field)) return;
		if (typeof value === 'string') {
			if (isWanted(field)) found.push([path, value]);
		} else if (Array.isArray(value)) value.forEach((one, i) => look(one, field, [...path, i]));
		else if (typeof value === 'object' && value !== null)
			for (const [key, one] of Object.entries(value)) look(one, key, [...path, key]);
	};
	look(picture, '', []);
	return found;
}

/** The picture with a quantity under its new name; itself where it does not draw it. */
export function withQuantityRenamed(picture: Picture, from: string, to: string): Picture {
	if (!pictureQuantities(picture).some(([, name]) => name === from)) return picture;
	const { sets, plain = [] } = partsOf(picture);
	const kept = [...PLAIN_FIELDS, ...sets, ...plain];
	const change = (value: unknown, field: string): unknown => {
		if (kept.includes(field)) return value;
		if (typeof value === 'string') return value === from ? to : value;
		if (Array.isArray(value)) return value.map((one) => change(one, field));
		if (typeof value !== 'object' || value === null) return value;
		return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, change(one, key)]));
	};
	// Only names change, so it stays a picture of its kind.
	return change(picture, '') as Picture;
}

/** The set whose members a picture gives roles to. */
export const roleSetOf = (workbook: Workbook, picture: Picture): string | undefined =>
	partsOf(picture).roleSet?.(workbook, picture);
