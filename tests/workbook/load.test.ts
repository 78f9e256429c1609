import { describe, expect, it } from 'vitest';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import { FORMAT, VERSION, type Workbook } from '$lib/workbook/schema';
import { STUDY_KINDS } from '$lib/workbook/study-schema';
import { valueAt } from '$lib/workbook/values';
import { plant, quantityOf } from './plant';

const text = saveWorkbook(plant);

function problemOf(source: string) {
	const loaded = loadWorkbook(source, 'plant.json');
	if (loaded.ok) throw new Error('it opened');
	return loaded.problem;
}

function opened(source: string): Workbook {
	const loaded = loadWorkbook(source, 'plant.json');
	if (!loaded.ok) throw new Error(loaded.problem.line);
	return loaded.workbook;
}

/** The plant's file with one piece of its text changed; the piece must be there. */
function edited(from: string, to: string): string {
	expect(text).toContain(from);
	return text.replace(from, to);
}

describe('a workbook file', () => {
	it('opens as it was saved', () => {
		expect(opened(text)).toEqual(plant);
	});

	it('opens with a byte order mark before it', () => {
		expect(opened(`\uFEFF${text}`)).toEqual(plant);
	});

	it('may hold objects without any value, which say nothing', () => {
		const file = edited('"value": 1.95', '"value": {}');
		expect('value' in quantityOf(opened(file), 'resin_price')).toBe(false);
	});

	it('tells of a change without a value, with its note, when it leaves it out', () => {
		const start = text.indexOf('"quantity": "shift_pattern",\n\t\t\t\t\t"value": {');
		const end = text.indexOf('}', start);
		const file = `${text.slice(0, start)}"quantity": "shift_pattern", "value": {${text.slice(end)}`;
		const loaded = loadWorkbook(file, 'plant.json');
		expect(loaded.ok && loaded.notices).toEqual([
			'Scenario weekend had a change of shift_pattern without any value; it was left out. Its note was: agreed with the works council'
		]);
	});
});

describe('broken JSON is placed by line and column, with a remedy', () => {
	it.each([
		[
			'',
			'"plant.json", line 1, column 1: a value should stand here, not the end of the file. Write a number, a text in double quotes, true, false, null, a list or an object.'
		],
		[
			'{\n\t"a": 1\n\t"b": 2\n}',
			'"plant.json", line 3, column 2: a comma or } should stand here, not """. Put a comma between two entries, and close what was opened.'
		],
		[
			'{"a": [1, 2, ]}',
			'"plant.json", line 1, column 12: a comma stands before ]. Remove the comma after the last entry.'
		],
		[
			"{'a': 1}",
			'"plant.json", line 1, column 2: the name of an entry should stand here in double quotes, not "\'". Write it as "name": value.'
		],
		[
			'{"a" 1}',
			'"plant.json", line 1, column 6: a colon should follow "a", not "1". Write it as "name": value.'
		],
		[
			'{"price": 1,95}',
			'"plant.json", line 1, column 13: the name of an entry should stand here in double quotes, not "95". Write it as "name": value.'
		],
		[
			'{"price": 01.95}',
			'"plant.json", line 1, column 11: a value should stand here, not "01.95". Write numbers like 1.95, 0.5 or 2e6, without plus, leading zeros or grouping.'
		],
		[
			'{"a": "never closed}',
			'"plant.json", line 1, column 7: the text that begins here is never closed. Close it with a double quote.'
		],
		[
			'{"a": "two\nlines"}',
			'"plant.json", line 1, column 11: a line break or control character stands inside a text. Write a line break as \\n.'
		],
		[
			'{"a": "C:\\plant"}',
			'"plant.json", line 1, column 10: "\\p" means nothing in a text. Write a backslash as two backslashes.'
		],
		[
			'{} {}',
			'"plant.json", line 1, column 4: "{" stands after the end of the document. Remove what follows the last bracket.'
		]
	])('%j', (source, line) => {
		expect(problemOf(source)).toMatchObject({ code: 'not-json', line });
	});

	it('also in the fourth line of a real file', () => {
		const problem = problemOf(edited('"title": "Two-line shop",', '"title": "Two-line shop"'));
		expect(problem.place).toBe('line 5, column 2');
	});
});

describe('what JSON readers usually drop without a word is refused', () => {
	it.each(['NaN', 'Infinity', '-Infinity'])('%s for a value', (word) => {
		expect(problemOf(edited('"value": 1.95', `"value": ${word}`))).toMatchObject({
			code: 'not-a-number',
			message: `${word} is not a number that a file can hold`,
			remedy: 'Write null where nobody entered a value.'
		});
	});

	it('a number larger than a number can hold', () => {
		expect(problemOf(edited('"value": 1.95', '"value": 1e999'))).toMatchObject({
			code: 'not-a-number',
			message: '1e999 is larger than a number can hold'
		});
	});

	it('a name given twice in one object', () => {
		expect(problemOf(edited('"PX20": 0.13', '"PX15B": 0.13'))).toMatchObject({
			code: 'repeated-key',
			message: '"PX15B" is given twice in one object',
			remedy: 'Keep one of the two.'
		});
	});
});

describe('limits', () => {
	it('brackets 10,000 and 1,000,000 deep are refused, not followed', () => {
		for (const deep of [10_000, 1_000_000])
			expect(problemOf('['.repeat(deep))).toMatchObject({
				code: 'too-deep',
				message: 'brackets stand inside brackets more than 60 deep'
			});
		expect(problemOf(edited('"value": 1.95', `"value": ${'{"a":'.repeat(10_000)}`)).code).toBe(
			'too-deep'
		);
	});

	it('a file beyond 64 MB is refused before it is read', () => {
		expect(problemOf(' '.repeat(64 * 1024 * 1024 + 1)).line).toBe(
			'"plant.json": the file has 65 MB, and a workbook at most 64 MB. Check that it is a workbook, or split it into several.'
		);
	});

	it('a set of 10,000 members with a value each opens', () => {
		const members = Array.from({ length: 10_000 }, (_, i) => ({ id: `P${i}` }));
		const value = Object.fromEntries(members.map(({ id }, i) => [id, i]));
		const big: Workbook = {
			...plant,
			sets: [...plant.sets, { name: 'part', label: 'Part', members }],
			sheets: [
				{
					title: 'Parts',
					quantities: [{ name: 'weight', label: 'Weight', unit: 'kg', per: ['part'], value }]
				},
				...plant.sheets
			]
		};
		const again = opened(saveWorkbook(big));
		expect(valueAt(quantityOf(again, 'weight').value, ['P9999'])).toBe(9999);
	});

	it('a set of more than 20,000 members is refused by name', () => {
		const members = Array.from({ length: 20_001 }, (_, i) => ({ id: `P${i}` }));
		const big = { ...plant, sets: [...plant.sets, { name: 'part', label: 'Part', members }] };
		expect(problemOf(saveWorkbook(big)).line).toBe(
			'"plant.json", set part, members (sets[5].members): has more than 20000 entries. Take some out.'
		);
	});
});

describe('what is no workbook of this version', () => {
	it('is refused when it has no format', () => {
		expect(problemOf('{"name": "something else"}').line).toBe(
			`"plant.json": this is JSON, but not a workbook: "format": "${FORMAT}" is missing. Open a file that was saved here, or correct its "format".`
		);
	});

	it('is refused when a newer program saved it, whatever else it holds', () => {
		const problem = problemOf(
			`{"format": "${FORMAT}", "version": ${VERSION + 1}, "holograms": []}`
		);
		expect(problem.code).toBe('newer-version');
		expect(problem.line).toBe(
			`"plant.json" was saved by a newer version (file version ${VERSION + 1}; this app reads up to ${VERSION}). Update the app, then open it again.`
		);
	});

	it.each(['0', '-1', '1.5', '"1"', 'null'])('is refused with the version %s', (version) => {
		expect(problemOf(edited(`"version": ${VERSION}`, `"version": ${version}`))).toMatchObject({
			code: 'not-a-workbook',
			place: 'version'
		});
	});
});

describe('a shape that does not fit is named as a person would name it', () => {
	it.each([
		[
			'"max": 60',
			'"max": "60"',
			'"plant.json", sheet Line, quantity top_speed, range, max (sheets[1].quantities[2].range.max): should be a number, not the text "60". Write a number.'
		],
		[
			'"label": "Resin price",',
			'',
			'"plant.json", sheet Material, quantity resin_price, label (sheets[0].quantities[0].label): is missing. Add "label": a text in double quotes.'
		],
		[
			'"name": "lot_size"',
			'"name": "lot size"',
			'"plant.json", sheet Line, quantity lot size, name (sheets[1].quantities[5].name): is the text "lot size", which cannot be a name. A name has a letter first, then letters, digits or underscores.'
		],
		[
			'"label": "Resin price",',
			'"label": "Resin price", "other_names": ["granulate, compound"],',
			'"plant.json", sheet Material, quantity resin_price, other_names, entry 1 (sheets[0].quantities[0].other_names[0]): is the text "granulate, compound", which cannot be another name. Leave out commas, and the space at either end.'
		],
		[
			'"fixed": true',
			'"fixd": true',
			'"plant.json", sheet Line, quantity lot_size (sheets[1].quantities[5]): has "fixd", which no workbook of this version has here. Correct the spelling, or take it out.'
		],
		[
			'"type": "yes_no"',
			'"type": "maybe"',
			'"plant.json", sheet Line, quantity installed, type (sheets[1].quantities[0].type): cannot be the text "maybe" here. Write "number", "yes_no", or {"member_of": a set}.'
		],
		[
			'"PX15B": 0.08',
			'"PX15B": [0.08]',
			`"plant.json", sheet Material, quantity mass_per_metre, value, PX15B (sheets[0].quantities[1].value.PX15B): cannot be a list here. Write a number, true, false, a member's id, null, or an object by member.`
		],
		[
			'"kind": "build_up"',
			'"kind": "hologram"',
			'"plant.json", picture Where the speed goes, kind (pictures[0].kind): cannot be the text "hologram" here. Write one of "cross_section", "build_up", "items", "ranking", "months", "payback", "capacity", "ways_out", "patterns", "week", "calendar", "bridge", "waterfall", "audit", "quote", "paper".'
		],
		[
			'"id": "dear_resin"',
			'"id": ""',
			'"plant.json", scenario number 3, id (scenarios[2].id): is the text "", which cannot be a name. A name has a letter first, then letters, digits or underscores.'
		],
		[
			'"invented": true',
			'"invented": "yes"',
			'"plant.json", invented: should be true or false, not the text "yes". Write true or false.'
		]
	])('%s turned into %s', (from, to, line) => {
		expect(problemOf(edited(from, to))).toMatchObject({ code: 'wrong-shape', line });
	});

	it('with the further problems listed after the first', () => {
		const file = edited('"max": 60', '"max": "60"').replace('"unit": "h"', '"unit": 5');
		expect(problemOf(file).others).toEqual([
			'"plant.json", sheet Line, quantity setup_time, unit (sheets[1].quantities[4].unit): should be a text in double quotes, not 5. Write a text in double quotes.'
		]);
	});

	it('on one line, even when the file name or a name in the file has several', () => {
		const loaded = loadWorkbook(
			edited('"title": "Line"', '"title": "Li\\nne", "x": 1'),
			'a\nb.json'
		);
		expect(!loaded.ok && loaded.problem.line).toMatch(/^"a b\.json", sheet Li ne [^\n]*$/);
		const unknown = problemOf(
			text.replace(/(Pattern of the line"[^]*?"per": \[")line/, '$1li\\ne')
		);
		expect(unknown.line).toMatch(/: there is no set named "li e"\. [^\n]*$/);
	});

	it('an unknown kind of study lists the kinds that there are', () => {
		const document = {
			...JSON.parse(text),
			studies: [{ name: 'why', title: 'Why', kind: 'tornado' }]
		};
		const kinds = STUDY_KINDS.map((kind) => `"${kind}"`);
		expect(problemOf(JSON.stringify(document)).line).toBe(
			`"plant.json", study why, kind (studies[0].kind): cannot be the text "tornado" here. Write one of ${kinds.join(', ')}.`
		);
		delete document.studies[0].kind;
		expect(problemOf(JSON.stringify(document)).line).toContain(
			`is missing. Add "kind": ${kinds.join(', ')}.`
		);
	});
});

describe('names that objects inherit are only names', () => {
	const file = edited('"PX15B": 0.08', '"__proto__": 0.08, "constructor": 0.09')
		.replace(
			'{\n\t\t\t\t\t"id": "PX20"',
			'{ "id": "__proto__" }, { "id": "constructor" }, { "id": "PX20"'
		)
		.replace('"name": "lot_size"', '"name": "constructor_2"');

	it('as members of a set, with their values', () => {
		const workbook = opened(file);
		const { value } = quantityOf(workbook, 'mass_per_metre');
		expect(valueAt(value, ['__proto__'])).toBe(0.08);
		expect(valueAt(value, ['constructor'])).toBe(0.09);
		expect(valueAt(value, ['toString'])).toBeUndefined();
		expect(opened(saveWorkbook(workbook))).toEqual(workbook);
	});

	it('as quantities, sets and scenarios', () => {
		const named = text
			.replaceAll('resin_price', 'hasOwnProperty')
			.replaceAll('"pattern"', '"constructor"')
			.replaceAll('"weekend"', '"toString"');
		expect(quantityOf(opened(named), 'hasOwnProperty').value).toBe(1.95);
	});

	it('but a value below __proto__ is checked like any other', () => {
		expect(problemOf(file.replace('"__proto__": 0.08', '"__proto__": [1]')).place).toBe(
			'sheet Material, quantity mass_per_metre, value, __proto__'
		);
	});

	it('and __proto__ where no member belongs is refused, not dropped', () => {
		expect(problemOf(edited('"fixed": true', '"__proto__": {"fixed": true}')).message).toBe(
			'has "__proto__", which no workbook of this version has here'
		);
	});
});
