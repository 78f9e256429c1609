/**
 * Opens a workbook file: reads the text, brings an older version up, checks shapes, then names.
 *
 * A file either opens whole or not at all; nothing in it is dropped, clamped or guessed. Formulas are
 * proven later, by the engine: a workbook with a broken formula opens and shows it.
 */
import { canonicalChange, canonicalSheet, canonicalStudy } from './canonical';
import { findProblems } from './consistency';
import { withDatesRead } from './file-dates';
import { parseJson, type Json } from './json';
import { pathText, placeOf } from './place';
import { workbookFileSchema, type WorkbookFile } from './file-schema';
import { withFrozenRead, type FrozenFault } from './frozen-file';
import { FORMAT, type Workbook } from './schema';
import { shapeProblems } from './shape';
import { oneLine } from './shown';
import { MOST_BYTES, sizeWords } from './file-size';
import {
	latestVersion,
	upgradeDocument,
	UPGRADES,
	type JsonObject,
	type Upgrade
} from './upgrades';

/** Why a file does not open. */
export interface FileProblem {
	readonly code:
		| 'too-large'
		| 'not-json'
		| 'not-a-number'
		| 'repeated-key'
		| 'too-deep'
		| 'not-a-workbook'
		| 'newer-version'
		| 'wrong-shape'
		| 'inconsistent';
	readonly file: string;
	/** "line 3, column 7", or "sheet Pipe, quantity wall_minimum, range"; empty for the whole file. */
	readonly place: string;
	/** "sheets[0].quantities[3].range"; empty where the text cannot be read that far. */
	readonly path: string;
	/** What is wrong there, and what to do about it: the parts of `line`. */
	readonly message: string;
	readonly remedy: string;
	/** All of it in one line, for a screen or a command line. */
	readonly line: string;
	/** Further problems of the same file, each a line, at most 20. */
	readonly others: readonly string[];
}

export type LoadResult =
	| { readonly ok: true; readonly workbook: Workbook; readonly notices: string[] }
	| { readonly ok: false; readonly problem: FileProblem };

const MAX_OTHERS = 20;

export function loadWorkbook(
	text: string,
	fileName: string,
	upgrades: readonly Upgrade[] = UPGRADES
): LoadResult {
	const file = oneLine(fileName) || 'the file';
	const refuse = (
		code: FileProblem['code'],
		parts: { place?: string; path?: string; message: string; remedy: string; line?: string },
		others: readonly string[] = []
	): LoadResult => {
		const { place = '', path = '', message, remedy } = parts;
		const line = parts.line ?? inOneLine(file, { place, path, message, remedy });
		return { ok: false, problem: { code, file, place, path, message, remedy, line, others } };
	};

	if (text.length > MOST_BYTES)
		return refuse('too-large', {
			message: `the file has ${sizeWords(text.length)}, and a workbook at most ${sizeWords(MOST_BYTES)}`,
			remedy: 'Check that it is a workbook, or split it into several.'
		});
	const read = parseJson(text);
	if (!read.ok) {
		const { code, line, column, message, remedy } = read.problem;
		return refuse(code, { place: `line ${line}, column ${column}`, message, remedy });
	}
	if (!isObject(read.json) || read.json['format'] !== FORMAT)
		return refuse('not-a-workbook', {
			message: `this is JSON, but not a workbook: "format": "${FORMAT}" is missing`,
			remedy: 'Open a file that was saved here, or correct its "format".'
		});
	const version = read.json['version'];
	const latest = latestVersion(upgrades);
	if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
		return refuse('not-a-workbook', {
			place: 'version',
			path: 'version',
			message: 'the file version should be a whole number from 1 up',
			remedy: `Write "version": ${latest}, or open the file as it was saved.`
		});
	if (version > latest)
		return refuse('newer-version', {
			place: 'version',
			path: 'version',
			message: `it was saved by a newer version (file version ${version}; this app reads up to ${latest})`,
			remedy: 'Update the app, then open it again.',
			line:
				`"${file}" was saved by a newer version (file version ${version}; this app reads up to ` +
				`${latest}). Update the app, then open it again.`
		});

	const { document, notices } = upgradeDocument(read.json, version, upgrades);
	const inPlaces = (found: readonly FrozenFault[]) =>
		found.map(({ path, message, remedy }) => ({
			place: placeOf(document, path),
			path: pathText(path),
			message,
			remedy
		}));
	const shapes = inPlaces(shapeProblems(workbookFileSchema, document));
	if (shapes[0]) return refuse('wrong-shape', shapes[0], further(file, shapes));
	// The schema has just said that the document is one; its own object is used, so that nothing is dropped.
	const inFull = withFrozenRead(document as unknown as WorkbookFile);
	const faults = inPlaces(inFull.faults);
	if (faults[0]) return refuse('inconsistent', faults[0], further(file, faults));
	const workbook = withDatesRead(canonical(inFull.workbook, notices));
	const problems = findProblems(workbook);
	if (problems[0]) return refuse('inconsistent', problems[0], further(file, problems));
	return { ok: true, workbook, notices };
}

type Parts = Pick<FileProblem, 'place' | 'path' | 'message' | 'remedy'>;

/** '"plant.json", sheet Pipe, quantity wall (sheets[0].quantities[3]): is missing. Add …' */
function inOneLine(file: string, { place, path, message, remedy }: Parts): string {
	const where = place === '' ? '' : `, ${place}`;
	const exact = path === '' || path === place ? '' : ` (${path})`;
	// A name of the file may itself hold the end of a line.
	return oneLine(`"${file}"${where}${exact}: ${message}. ${remedy}`);
}

const further = (file: string, problems: readonly Parts[]): string[] =>
	problems.slice(1, 1 + MAX_OTHERS).map((parts) => inOneLine(file, parts));

const isObject = (json: Json): json is JsonObject =>
	typeof json === 'object' && json !== null && !Array.isArray(json);

/** Leaves out what says nothing; a note on such a change is told, so that it is not lost unseen. */
function canonical(workbook: Workbook, notices: string[]): Workbook {
	return {
		...workbook,
		sheets: workbook.sheets.map(canonicalSheet),
		...(workbook.studies && { studies: workbook.studies.map(canonicalStudy) }),
		scenarios: workbook.scenarios.map((scenario) => ({
			...scenario,
			changes: scenario.changes.flatMap((change) => {
				const kept = canonicalChange(change);
				if (kept) return [kept];
				const note = change.note === undefined ? '' : ` Its note was: ${change.note}`;
				notices.push(
					`Scenario ${scenario.id} had a change of ${change.quantity} without any value; it was left out.${note}`
				);
				return [];
			})
		}))
	};
}
