import { describe, expect, it } from 'vitest';
import { loadWorkbook } from '$lib/workbook/load';
import { saveWorkbook } from '$lib/workbook/save';
import { FORMAT, VERSION } from '$lib/workbook/schema';
import { latestVersion, upgradeDocument, UPGRADES, type Upgrade } from '$lib/workbook/upgrades';

/** Frozen when each version shipped; never edit one. */
const saved = import.meta.glob<string>('./saved/*.json', {
	query: '?raw',
	import: 'default',
	eager: true
});

const fileOf = (version: number) => saved[`./saved/version-${version}.json`] ?? '';

describe('every version that was ever released', () => {
	const versions = Array.from({ length: VERSION }, (_, i) => i + 1);

	it.each(versions)('version %i has a frozen file, and it opens', (version) => {
		const loaded = loadWorkbook(fileOf(version), `version-${version}.json`);
		expect(loaded.ok || loaded.problem.line).toBe(true);
	});

	it.each(UPGRADES)(
		'the step to version $to ($why) gives the frozen file of that version',
		(step) => {
			const before = JSON.parse(fileOf(step.to - 1));
			expect(step.up(before)).toEqual(JSON.parse(fileOf(step.to)));
		}
	);

	it('is reached by the steps, one for each version', () => {
		expect(UPGRADES.map(({ to }) => to)).toEqual(versions.slice(1));
		expect(latestVersion(UPGRADES)).toBe(VERSION);
	});

	it('is saved today exactly as the newest frozen file', () => {
		const loaded = loadWorkbook(fileOf(VERSION), 'newest.json');
		expect(loaded.ok && saveWorkbook(loaded.workbook)).toBe(fileOf(VERSION));
	});
});

describe('steps taken one after another', () => {
	const steps: readonly Upgrade[] = [
		{ to: 2, why: 'prices got a currency', up: (document) => ({ ...document, currency: 'EUR' }) },
		{
			to: 3,
			why: 'the currency is a unit',
			up: ({ currency, ...rest }) => ({ ...rest, units: [{ symbol: currency ?? null }] })
		}
	];

	it('bring the oldest file to the newest, and say so', () => {
		expect(upgradeDocument({ version: 1 }, 1, steps)).toEqual({
			document: { version: 3, units: [{ symbol: 'EUR' }] },
			notices: [
				'Brought from file version 1 to 2: prices got a currency.',
				'Brought from file version 2 to 3: the currency is a unit.'
			]
		});
	});

	it('start at the version of the file', () => {
		const { document, notices } = upgradeDocument({ version: 3, currency: 'SEK' }, 2, steps);
		expect(document).toEqual({ version: 3, units: [{ symbol: 'SEK' }] });
		expect(notices).toHaveLength(1);
	});

	it('leave a file of the present version alone', () => {
		const present = { version: 3, units: [] };
		expect(upgradeDocument(present, 3, steps)).toEqual({ document: present, notices: [] });
	});

	it('happen on opening, before the file is checked', () => {
		const strict: Upgrade = { to: 2, why: 'x', up: (document) => ({ ...document, title: 'Up' }) };
		const file = JSON.stringify({ format: FORMAT, version: 1 });
		const loaded = loadWorkbook(file, 'old.json', [strict]);
		expect(!loaded.ok && loaded.problem.others.join()).not.toContain('title');
	});

	it('are not taken for a file from beyond the last of them', () => {
		const loaded = loadWorkbook(JSON.stringify({ format: FORMAT, version: 4 }), 'f.json', steps);
		expect(!loaded.ok && loaded.problem.line).toBe(
			'"f.json" was saved by a newer version (file version 4; this app reads up to 3). Update the app, then open it again.'
		);
	});
});
