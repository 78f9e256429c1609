import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Model } from '$lib/engine/model';
import {
	checkedWorkbook,
	packValues,
	unpackValues,
	type ShippedValues
} from '$lib/engine/shipped-values';
import { loadWorkbook } from '$lib/workbook/load';
import { asLoaded } from '../../src/routes/shipped/as-loaded';

const text = readFileSync('scenarios/one-line-shop.json', 'utf8');
const loaded = loadWorkbook(text, 'one-line-shop.json');
if (!loaded.ok) throw new Error(loaded.problem.line);
const ids = loaded.workbook.scenarios.map(({ id }) => id);
const model = Model.open(loaded.workbook);
const live = {
	problems: model.problems,
	results: ids.map((id) => model.results(id)),
	faults: ids.map((id) => model.faults(id))
};
const travelled = JSON.parse(JSON.stringify(packValues(text, 'one', live))) as ShippedValues;

describe('values that come with a workbook', () => {
	it('are those that the engine computes, to the last digit, in every scenario', () => {
		expect(ids.length).toBeGreaterThan(1);
		expect(unpackValues(travelled, text, 'one')).toEqual(live);
	});
	it('are nothing for another text of the workbook, or another build of the program', () => {
		expect(unpackValues(travelled, text.replace('1', '2'), 'one')).toBeNull();
		expect(unpackValues(travelled, text, 'two')).toBeNull();
	});
	it.each(['one-line-shop', 'marram-coil-works'])(
		'come with a text that reads as the loader reads it: %s',
		async (name) => {
			const shipped = readFileSync(`scenarios/${name}.json`, 'utf8');
			const opened = loadWorkbook(shipped, name);
			const { text: served } = await asLoaded(`${name}.json`);
			expect(opened.ok && opened.workbook).toEqual(checkedWorkbook(served));
		}
	);
});
