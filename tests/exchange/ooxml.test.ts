import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import { sheetsOf } from '$lib/exchange/ooxml/file';
import { quoted, sheetNames } from '$lib/exchange/ooxml/names';
import { fileFormula } from '$lib/exchange/ooxml/texts';
import { writeFile } from '$lib/exchange/ooxml/write';
import type { Workbook } from '$lib/workbook/schema';
import { openScenarios, openShipped } from '../reference/shipped';
import { readFile, Recalculation } from './recalculate';

async function fileOf(model: Model) {
	const { workbook, plan } = model;
	const results = workbook.scenarios.map(({ id }) => model.results(id));
	const bytes = await writeFile(sheetsOf(workbook, plan, results), workbook.title);
	return readFile(bytes);
}

const column = (address: string) => /^[A-Z]+/.exec(address)![0];

describe('the names of sheets', () => {
	it('keep to 31 characters, lose what a name may not hold, and stay apart', () => {
		const long = 'Three lines on weekends from July to November';
		expect(sheetNames(['A/B: [c]', "'x'", long, `${long}!`, 'history', '', '::'])).toEqual([
			'A B c',
			'x',
			'Three lines on weekends from Ju',
			'Three lines on weekends from 2',
			'history 2',
			'Sheet',
			'Sheet 2'
		]);
	});

	it('are quoted in references', () => {
		expect(quoted("Line's plan")).toBe("'Line''s plan'");
	});
});

describe('formula text', () => {
	it('has prefixes for later functions and capital exponents, outside of quotes alone', () => {
		expect(fileFormula(`=IFNA(A1,1e-9)+'2e5 IFNA(x)'!B2&"3e4"`)).toBe(
			`_xlfn.IFNA(A1,1E-9)+'2e5 IFNA(x)'!B2&"3e4"`
		);
	});
});

describe('the small shop as a file', async () => {
	const model = openShipped('shop');
	const { sheets, parts } = await fileOf(model);
	const recalculated = new Recalculation(sheets);

	it('is a package of the parts that ISO/IEC 29500 asks for', () => {
		expect(parts).toEqual(
			expect.arrayContaining(['[Content_Types].xml', '_rels/.rels', 'xl/workbook.xml'])
		);
		expect([...sheets.keys()]).toEqual([
			'Overview',
			...sheetNames(model.workbook.scenarios.map(({ title }) => title)),
			'Notes'
		]);
	});

	it('every number kept for a formula is what the file recalculates to, from its inputs alone', () => {
		let compared = 0;
		for (const [sheet, cells] of sheets)
			for (const [address, { formula, value }] of cells) {
				if (formula === null || typeof value !== 'number') continue;
				const again = recalculated.value(sheet, address);
				expect(Number(again), `${sheet}!${address} ${formula}`).toBeCloseTo(
					value,
					9 - Math.ceil(Math.log10(Math.abs(value) + 1e-9))
				);
				compared++;
			}
		expect(compared).toBeGreaterThan(100);
	});

	it('holds the numbers of the screen, in the order of the layout', () => {
		const { layout } = model;
		const base = sheets.get(sheetNames([model.workbook.scenarios[0]!.title])[0]!)!;
		const inFile = [...base].filter(
			([address, { value }]) =>
				column(address) === 'C' && Number(address.slice(1)) > 4 && typeof value === 'number'
		);
		const { values, states } = model.results(model.workbook.scenarios[0]!.id);
		const shown = Array.from(values).filter((_, cell) => states[cell] === 0);
		expect(inFile.map(([, { value }]) => value)).toEqual(shown);
		expect(shown.length).toBeGreaterThan(layout.cells * 0.9);
	});

	it('an input overwritten in the file changes what the app would change', () => {
		const base = sheetNames([model.workbook.scenarios[0]!.title])[0]!;
		const edited = new Map([...sheets].map(([name, cells]) => [name, new Map(cells)]));
		const cells = edited.get(base)!;
		const input = model.layout.quantities.find(
			({ quantity, count }) =>
				count === 1 && !quantity.formula && (quantity.type ?? 'number') === 'number'
		)!.quantity;
		const [address] = [...cells].find(([at]) => cells.get(at)!.value === input.label)!;
		const place = `C${address.slice(1)}`;
		const before = Number(cells.get(place)!.value);
		cells.set(place, { formula: null, value: before * 1.1 });
		const applied = model.apply({
			kind: 'set_inputs',
			scenario: model.workbook.scenarios[0]!.id,
			entries: [{ quantity: input.name, at: [], value: before * 1.1 }]
		});
		expect(applied.ok).toBe(true);
		const after = model.results(model.workbook.scenarios[0]!.id);
		const again = new Recalculation(edited);
		const results = [...cells].filter(
			([at, { formula, value }]) =>
				column(at) === 'C' && formula !== null && typeof value === 'number'
		);
		const values = results.map(([at]) => Number(again.value(base, at)));
		const expected = model.layout.quantities
			.filter(({ quantity }) => quantity.formula !== undefined)
			.flatMap(({ base: from, count }) => Array.from(after.values.slice(from, from + count)))
			.filter((value) => !Number.isNaN(value));
		expect(values.length).toBe(expected.length);
		values.forEach((value, i) => expect(value).toBeCloseTo(expected[i]!, 6));
	});
});

describe('the shipped plant as a file', async () => {
	const model = openScenarios('base', 'new_line', 'forecast_2027');
	const { sheets } = await fileOf(model);

	it(
		'a sample from every sheet recalculates to the numbers kept in it',
		{ timeout: 120_000 },
		() => {
			const recalculated = new Recalculation(sheets);
			let compared = 0;
			let beyond = 0;
			let place = 0;
			for (const [sheet, cells] of sheets)
				for (const [address, { formula, value }] of cells) {
					if (formula === null || typeof value !== 'number' || place++ % 41 !== 0) continue;
					const again = Number(recalculated.value(sheet, address));
					// Rates of return count changes of sign over a whole range at once.
					if (recalculated.beyond.has(`${sheet}!${address}`)) {
						beyond++;
						continue;
					}
					const off = Math.abs(again - value) / Math.max(Math.abs(value), 1e-9);
					expect(off, `${sheet}!${address} is ${again}, kept ${value}: ${formula}`).toBeLessThan(
						1e-8
					);
					compared++;
				}
			expect(compared).toBeGreaterThan(300);
			expect(beyond).toBeLessThan(compared / 50);
		}
	);

	it('names what a choice comes to, beside its place in the set', () => {
		const base = sheets.get('Base')!;
		const named = [...base].filter(([at, { formula }]) => column(at) === 'D' && formula !== null);
		expect(named.length).toBeGreaterThan(20);
		for (const [, { value }] of named) if (value !== null) expect(typeof value).toBe('string');
	});
});

describe('what could break a file', () => {
	it('texts that look like formulas or markup stay texts', async () => {
		const model = openShipped('shop');
		const [sheet] = model.workbook.sheets;
		const [quantity, ...rest] = sheet!.quantities;
		const hostile: Workbook = {
			...model.workbook,
			title: '=1+1 <b>&"\'',
			sheets: [
				{ ...sheet!, quantities: [{ ...quantity!, label: '=cmd|x!A1', note: '<&>' }, ...rest] },
				...model.workbook.sheets.slice(1)
			]
		};
		const { sheets } = await fileOf(Model.open(hostile));
		const texts = [...sheets.values()].flatMap((cells) => [...cells.values()]);
		const label = texts.find(({ value }) => value === '=cmd|x!A1');
		expect(label?.formula).toBeNull();
		expect(texts.some(({ value }) => value === '=1+1 <b>&"\'')).toBe(true);
	});
});
