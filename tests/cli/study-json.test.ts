/**
 * What a study says as JSON holds everything that it says as text, for every kind: each figure, and each word that is not
 * the text's own.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { figure } from '$lib/studies/told';
import { STUDY_KINDS, type Study, type StudyKind } from '$lib/workbook/study-schema';
import { VERSION } from '$lib/workbook/schema';
import { answer } from '../../src/cli/answer';

const folder = mkdtempSync(join(tmpdir(), 'metrewright-'));
afterAll(() => rmSync(folder, { recursive: true }));

const price = { quantity: 'price', mode: 'set' } as const;
const metres = { quantity: 'metres', mode: 'scale' } as const;
const asks = { quantity: 'revenue', members: ['big'] };
const spread = { kind: 'uniform', min: -5, max: 15 } as const;

/** Of every kind one that says as much as it can. */
const STUDIES: { readonly [K in StudyKind]: Extract<Study, { kind: K }> } = {
	bridge: {
		...{
			name: 'bridge',
			title: 'Why it differs',
			kind: 'bridge',
			...asks,
			from: 'base',
			to: 'dear'
		},
		groups: [
			{ label: 'The market', changes: [{ quantity: 'price' }] },
			{ label: 'Idle group', changes: [{ quantity: 'unused' }] }
		]
	},
	sensitivity: {
		...{
			name: 'sensitivity',
			title: 'What moves it',
			kind: 'sensitivity',
			...asks,
			scenario: 'base'
		},
		inputs: [
			{ ...price, low: 9, high: 13 },
			{ quantity: 'unused', mode: 'set', low: 1, high: 2 }
		],
		cases: [{ label: 'Downside', moves: [{ ...price, value: 7 }] }]
	},
	map: {
		...{ name: 'map', title: 'Two at once', kind: 'map', ...asks, scenario: 'base' },
		across: { ...price, from: 9, to: 11, steps: 3 },
		down: { ...metres, from: 0.9, to: 1.1, steps: 3 }
	},
	break_even: {
		...{
			name: 'break_even',
			title: 'Where it turns',
			kind: 'break_even',
			...asks,
			scenario: 'base'
		},
		input: { ...price, from: 5, to: 20 },
		target: 1234.5
	},
	risk: {
		...{ name: 'risk', title: 'How sure it is', kind: 'risk', ...asks, scenario: 'base' },
		inputs: [{ label: 'Price', ...price, distribution: spread }],
		...{ draws: 200, seed: 7, target: { at_least: 300 } }
	},
	optimise: {
		...{ name: 'optimise', title: 'The best', kind: 'optimise', ...asks, scenario: 'base' },
		direction: 'highest',
		options: [
			{
				label: 'What to ask',
				alternatives: [
					{ label: 'as today', changes: [] },
					{ label: 'more', changes: [{ quantity: 'price', value: 13 }] },
					{ label: 'nothing at all', changes: [{ quantity: 'price', value: -1 }] }
				]
			}
		]
	}
};

const path = join(folder, 'small.json');
writeFileSync(
	path,
	JSON.stringify({
		format: 'metrewright',
		version: VERSION,
		title: 'Small',
		sets: [{ name: 'size', label: 'Size', members: [{ id: 'big' }, { id: 'small' }] }],
		sheets: [
			{
				title: 'Only',
				quantities: [
					{ name: 'price', label: 'Price', unit: 'EUR/m', value: 10 },
					{ name: 'unused', label: 'Unused', value: 1 },
					{
						...{ name: 'metres', label: 'Metres', unit: 'm', per: ['size'] },
						value: { big: 100, small: 10 }
					},
					{
						...{ name: 'revenue', label: 'Revenue', unit: 'EUR', per: ['size'] },
						formula: 'metres * SQRT(price / 1[EUR/m]) * 1[EUR/m]'
					}
				]
			}
		],
		scenarios: [
			{ id: 'base', title: 'As it is', parent: null, changes: [] },
			{
				...{ id: 'dear', title: 'Dear times', parent: 'base' },
				changes: [
					{ quantity: 'price', value: 12 },
					{ quantity: 'metres', value: { big: 90 } }
				]
			}
		],
		studies: Object.values(STUDIES)
	})
);

/** Every figure as the text writes it (a share in per cent too), and every text. */
function leaves(json: unknown): string[] {
	if (typeof json === 'number') return [figure(json), figure(json * 100)];
	if (typeof json === 'string') return [json];
	return typeof json === 'object' && json !== null ? Object.values(json).flatMap(leaves) : [];
}

/** Words of the texts themselves. */
const OWN =
	/from|to|at|reach|as it (stands|is)|target( met in)?|draws?|seed|mean|standard deviation|lie (below|above)|middle|no answer in|of|highest|lowest|combinations|without (an answer|any effect)|nothing differs in|beyond the limits|none/gi;

it.each(STUDY_KINDS)('%s', async (kind) => {
	const text = (await answer(['study', path, kind])).out;
	const json = JSON.parse((await answer(['study', path, kind, '--json'])).out);
	expect(json).toMatchObject({ kind, label: 'Revenue, big', unit: 'EUR' });
	const known = [...new Set(leaves(json))].sort((a, b) => b.length - a.length);
	const figures = new Set(known);
	let rest = text;
	for (const word of known) if (/\p{L}/u.test(word)) rest = rest.replaceAll(word, ' ');
	rest = rest.replace(/-?\d+(\.\d+)?(e[+-]\d+)?/g, (number) =>
		figures.has(number) ? ' ' : number
	);
	// "5 % lie below" names the percentile by its key.
	if (kind === 'risk') rest = rest.replace(/5 % (?=lie)/g, ' ');
	const left = rest.replace(OWN, ' ').replace(/[\s,:;.%±()]/g, '');
	expect(left, text).toBe('');
});

it('the study of risk has draws without an answer, and says why in both', async () => {
	const json = JSON.parse((await answer(['study', path, 'risk', '--json'])).out);
	expect(json.errors).toBeGreaterThan(20);
	expect(json.origins[0].reason).toContain('square root');
	expect(json.target.chance).toBeGreaterThan(0);
});
