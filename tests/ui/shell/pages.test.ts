import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { placesOf } from '$lib/ui/shell/pages';
import type { Workbook } from '$lib/workbook/schema';

it('everywhere that a reader can go has a name of its own, sheets and pages apart', () => {
	const plant = JSON.parse(readFileSync('scenarios/marram-coil-works.json', 'utf8')) as Workbook;
	const places = placesOf(plant);
	const texts = places.map(({ text }) => text);
	expect(texts).toContain('Quote (sheet)');
	expect(texts.filter((text, at) => texts.indexOf(text) !== at)).toEqual([]);
	expect(new Set(places.map(({ group }) => group))).toEqual(new Set(['Sheets', 'Pages']));
});
