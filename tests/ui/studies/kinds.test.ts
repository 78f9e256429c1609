/** Every kind of study has all that the page needs of it, and no folder is of a kind that is none. */
import { describe, expect, it } from 'vitest';
import { kindChoices, wordsOf } from '$lib/ui/studies/kind-words';
import { STUDY_KINDS } from '$lib/workbook/study-schema';

const files = Object.keys(import.meta.glob('/src/lib/ui/studies/kinds/*/*.{ts,svelte}'));
const folders = [...new Set(files.map((path) => path.split('/')[6]!))];

describe('the kinds of studies on the page', () => {
	it('are those of the workbook, each with a folder', () => {
		expect(folders.sort()).toEqual(STUDY_KINDS.map((kind) => kind.replaceAll('_', '-')).sort());
	});

	it.each(folders)('%s has its words, its view and its settings', (folder) => {
		for (const file of ['words.ts', 'View.svelte', 'Settings.svelte'])
			expect(files).toContain(`/src/lib/ui/studies/kinds/${folder}/${file}`);
	});

	it('each have a name and a question of their own', () => {
		const names = STUDY_KINDS.map((kind) => wordsOf({ kind }).name);
		expect(new Set(names).size).toBe(STUDY_KINDS.length);
		expect(kindChoices().map(({ kind }) => kind)).toEqual(STUDY_KINDS);
		for (const { asks } of kindChoices()) expect(asks).toMatch(/^[A-Z].*[^.]$/);
	});

	it('have nothing to say of a kind that is none', () => {
		expect(() => wordsOf({ kind: 'guess' as never })).toThrow(
			'There is no words.ts for studies of the kind guess.'
		);
	});
});
