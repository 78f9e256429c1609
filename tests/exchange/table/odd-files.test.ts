/**
 * Files that something is wrong with, at random and the same for the same seed: whatever comes in, a sentence or a line says
 * so, nothing is entered before it is accepted, and one undo takes all of it back.
 */
import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { MOST_ROWS, readCsv } from '$lib/exchange/csv/rows';
import { acceptedCommands, changeKey, lookOver, type Look } from '$lib/exchange/table/look';
import { NO_CHOICES } from '$lib/exchange/table/new-members';
import { proposeMapping } from '$lib/exchange/table/propose';
import { readTables } from '$lib/exchange/table/read-file';
import { Dice } from '$lib/seeding/dice';
import { applyCommand } from '$lib/workbook/commands';
import { findSet } from '$lib/workbook/lookup';
import { openShipped } from '../../reference/shipped';

const { workbook } = openShipped('marram');
const layout = layOut(workbook);
const items = findSet(workbook, 'item')!.members.map(({ id }) => id);

type Cells = string[];
const HEAD = ['Item', 'Pipe', 'Coil length (m/coil)', 'Demand of the item today', 'Shelf'];

/** A sound item list: each row an item with its pipe, its coil and its metres. */
const sound = (): Cells[] =>
	items.map((id, at) => [
		...[id, id.slice(0, 5), String(20 + at), String(300_000 + 1000 * at), `S${at}`]
	]);
const written = (rows: readonly Cells[], mark = ';') =>
	[HEAD, ...rows].map((row) => row.join(mark)).join('\n');

/** Reads the bytes as the page does, and looks them over; a message where nothing can be looked over. */
async function seen(bytes: Uint8Array): Promise<Look | string> {
	const read = await readTables(bytes, 'odd.csv');
	if (!read.ok) return read.message;
	const [sheet] = read.sheets;
	if (!sheet!.grid.ok) return sheet!.grid.message;
	const { grid } = sheet!.grid;
	const looked = lookOver(grid, proposeMapping(grid, workbook), NO_CHOICES, layout);
	return looked.ok ? looked.look : looked.message;
}
const bytesOf = (text: string) => new TextEncoder().encode(text);

/** Entered and taken back: the workbook itself is never touched. */
function enteredAndUndone(look: Look): void {
	const all = new Set(look.changes.map(changeKey));
	const commands = acceptedCommands(look, all);
	const done = applyCommand(workbook, { kind: 'several', commands });
	if (!done.ok) throw new Error(done.problem.message);
	const back = applyCommand(done.workbook, done.inverse);
	expect(back.ok && back.workbook).toEqual(workbook);
}

/** Sentences end, and say more than that something is wrong. */
const isSentence = (message: string) => /^.{20,}[.]$/s.test(message);

/** What is done to a row, and what its line then says; null: other lines may say it. */
const ODDITIES: readonly (readonly [
	what: string,
	odd: (row: Cells, dice: Dice) => Cells[],
	says: RegExp | null
])[] = [
	[
		'a formula',
		([id, pipe, , ...rest]) => [[id!, pipe!, '=B2*2', ...rest]],
		/=B2\*2.*is a formula/
	],
	[
		'two rows for one item',
		(row) => [row, [...row.slice(0, 2), '999', ...row.slice(3)]],
		/already/
	],
	[
		'an unknown unit',
		([id, pipe, coil, ...rest]) => [[id!, pipe!, `${coil} furlong`, ...rest]],
		/furlong/
	],
	['no pipe of that name', ([id, , ...rest]) => [[id!, 'NOPIPE', ...rest]], /NOPIPE/],
	['no item', ([, ...rest]) => [['', ...rest]], /names no item/],
	['another mark between its columns', (row) => [[row.join(',')]], null],
	['too many cells', (row) => [[...row, 'x', 'y', 'z']], null],
	['half a row', (row, dice) => [row.slice(0, 1 + dice.below(3))], null],
	['nothing but marks', () => [['', '', '', '', '']], null],
	[
		'a number of another language',
		([id, pipe, ...rest]) => [[id!, pipe!, '١٢٫٥', ...rest.slice(1)]],
		/١٢٫٥/
	],
	[
		'a number with a letter in it',
		([id, pipe, ...rest]) => [[id!, pipe!, '1O0', ...rest.slice(1)]],
		/O0/
	],
	[
		'an enormous number',
		([id, pipe, ...rest]) => [[id!, pipe!, '1e999', ...rest.slice(1)]],
		/1e999/
	]
];

describe('a row that something is wrong with', () => {
	it.each(ODDITIES)('%s: its line says so, the others come in', async (_what, odd, says) => {
		const dice = new Dice(7);
		const rows = sound();
		const at = 1 + dice.below(rows.length - 2);
		rows.splice(at, 1, ...odd(rows[at]!, dice));
		const look = await seen(bytesOf(written(rows)));
		if (typeof look === 'string') throw new Error(look);
		const lines = look.problems.filter(({ line }) => line === at + 2 || line === at + 3);
		if (says) expect(lines.map(({ message }) => message).join('\n')).toMatch(says);
		for (const { message } of look.problems) expect(message).toSatisfy(isSentence);
		expect(look.changes.length + look.same).toBeGreaterThan(items.length);
		enteredAndUndone(look);
	});
});

describe('files with several faults at once', () => {
	it.each([1, 2, 3, 4, 5, 6])('are looked over whole, seed %i', async (seed) => {
		const dice = new Dice(seed);
		const rows = sound().flatMap((row) =>
			dice.chance(0.3) ? dice.pick(ODDITIES)![1](row, dice) : [row]
		);
		const look = await seen(bytesOf(written(rows, dice.pick([';', '\t', '|'])!)));
		if (typeof look === 'string') throw new Error(look);
		for (const { message, line } of look.problems) {
			expect(message).toSatisfy(isSentence);
			expect(line).toBeGreaterThanOrEqual(1);
			expect(line).toBeLessThanOrEqual(rows.length + 1);
		}
		// A line for each: a row gives values, or says why it does not.
		const told = new Set(look.problems.map(({ line }) => line));
		const given = new Set(look.changes.map(({ line }) => line));
		const full = rows.flatMap((row, i) => (row.join('') === '' ? [] : [i + 2]));
		const silent = full.filter((line) => !told.has(line) && !given.has(line));
		expect(silent).toHaveLength(Math.min(silent.length, look.same));
		enteredAndUndone(look);
	});
});

describe('a file that is cut or written in other letters', () => {
	it('is read as far as it goes, or refused with a sentence, wherever it ends', async () => {
		const text = written(sound().map(([id, ...rest]) => [`"${id}"`, ...rest]));
		const dice = new Dice(11);
		for (let turn = 0; turn < 40; turn++) {
			const look = await seen(bytesOf(text.slice(0, dice.below(text.length))));
			if (typeof look === 'string') expect(look).toSatisfy(isSentence);
			else enteredAndUndone(look);
		}
	});

	it('is read in any of three encodings, and half a letter of two bytes loses no row', async () => {
		const text = written(sound()).replace('Shelf', 'Regal für Größen');
		const utf16 = new Uint8Array(2 * text.length + 2);
		utf16.set([0xff, 0xfe]);
		[...text].forEach((letter, i) =>
			utf16.set([letter.charCodeAt(0) & 255, letter.charCodeAt(0) >> 8], 2 + 2 * i)
		);
		const latin = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
		const looks = await Promise.all([bytesOf(text), utf16, latin, utf16.subarray(0, -1)].map(seen));
		const counts = looks.map((look) => (typeof look === 'string' ? look : look.changes.length));
		expect(counts[1]).toBe(counts[0]);
		expect(counts[2]).toBe(counts[0]);
		expect(counts[3]).toBe(counts[0]);
	});

	it('is never more than a sentence where bytes are changed at random', async () => {
		const sane = bytesOf(written(sound()));
		for (let seed = 1; seed <= 20; seed++) {
			const dice = new Dice(seed);
			const bytes = sane.slice();
			for (let turn = 0; turn < 1 + 5 * seed; turn++)
				bytes[dice.below(bytes.length)] = dice.below(256);
			const look = await seen(bytes);
			if (typeof look === 'string') expect(look).toSatisfy(isSentence);
			else enteredAndUndone(look);
		}
	});

	it('that only calls itself a spreadsheet file is refused', async () => {
		const packed = Uint8Array.from([0x50, 0x4b, 3, 4, ...bytesOf(written(sound()))]);
		expect(await seen(packed)).toMatch(/^"odd\.csv" is no spreadsheet file of OOXML/);
	});
});

describe('a million rows', () => {
	it('are refused with a sentence, and not read to their end', () => {
		const text = `Item;Demand\n${'PX15B-50;7\n'.repeat(1_000_000)}`;
		let furthest = 0;
		const read = readCsv(text, 'log.csv', (share) => (furthest = Math.max(furthest, share)));
		expect(read).toEqual({
			ok: false,
			message: `"log.csv" has more than ${MOST_ROWS} rows, which is the most taken at once. Part it, and bring the parts in one by one.`
		});
		expect(furthest).toBeLessThan(0.25);
	});

	it('are as many as are taken at once, less one, and come in', () => {
		const read = readCsv(`Item;Demand\n${'PX15B-50;7\n\n'.repeat(MOST_ROWS)}`, 'log.csv');
		expect(read.ok && read.grid.rows.length).toBe(MOST_ROWS);
	});
});
