/**
 * Names a place in a workbook as a person would: "sheet Pipe, quantity wall_minimum, range" for
 * sheets[0].quantities[3].range. Works on any document, whole or broken.
 */
import { shown } from './shown';

/** Lists whose entries have a word, and the field that names an entry. */
const LISTS = new Map([
	['sheets', ['sheet', 'title']],
	['quantities', ['quantity', 'name']],
	['sets', ['set', 'name']],
	['members', ['member', 'id']],
	['relations', ['relation', 'name']],
	['pairs', ['pair', '']],
	['scenarios', ['scenario', 'id']],
	['changes', ['change of', 'quantity']],
	['units', ['unit', 'symbol']],
	['facts', ['fact', '']],
	['pictures', ['picture', 'title']],
	['studies', ['study', 'name']],
	['programmes', ['programme', 'name']],
	['plans', ['plan of', 'programme']],
	['inputs', ['input', 'label']],
	['correlations', ['correlation', '']],
	['options', ['option', 'label']],
	['alternatives', ['alternative', 'label']],
	['loads', ['load', 'load']],
	['starts', ['start', 'id']],
	['findings', ['finding', 'title']],
	['steps', ['step', 'title']],
	['frozen', ['frozen copy', 'title']]
] as const);

function child(value: unknown, key: PropertyKey): unknown {
	if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
	return (value as Record<PropertyKey, unknown>)[key];
}

/** What stands at a path; undefined where nothing does. */
export function childAt(document: unknown, path: readonly PropertyKey[]): unknown {
	return path.reduce<unknown>(child, document);
}

/** "sheet Pipe, quantity wall_minimum, range"; "the workbook" for the whole. */
export function placeOf(document: unknown, path: readonly PropertyKey[]): string {
	const words: string[] = [];
	let here = document;
	for (let i = 0; i < path.length; i++) {
		const key = path[i] as PropertyKey;
		const list = typeof key === 'string' ? LISTS.get(key as never) : undefined;
		const next = path[i + 1];
		here = child(here, key);
		if (list && typeof next === 'number') {
			const [word, field] = list;
			here = child(here, next);
			const name = child(here, field);
			words.push(
				typeof name === 'string' && name !== ''
					? `${word} ${shown(name)}`
					: `${word.replace(' of', '')} number ${next + 1}`
			);
			i++;
		} else words.push(typeof key === 'number' ? `entry ${key + 1}` : shown(String(key)));
	}
	return words.join(', ') || 'the workbook';
}

/** "sheets[0].quantities[3].range" */
export function pathText(path: readonly PropertyKey[]): string {
	return path
		.map((key) => {
			if (typeof key === 'number') return `[${key}]`;
			const name = String(key);
			// A path is for finding the place: a member's id stands in it whole.
			return /^[\p{L}_$][\p{L}\p{N}_$]*$/u.test(name) ? `.${name}` : `["${shown(name, 200)}"]`;
		})
		.join('')
		.replace(/^\./, '');
}
