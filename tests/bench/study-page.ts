/** 100,000 draws of the shipped plant in Chromium, on the pool of workers: how long the page's own thread is held up. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright/test';
import { build, preview } from 'vite';
import type { RiskStudy } from '$lib/studies/risk';
import type { Workbook } from '$lib/workbook/schema';
import { heading, line } from './print';
import { openShipped } from './shipped';
import type { Watched } from './study-page/main';

declare function watchStudy(workbook: Workbook, study: RiskStudy): Promise<Watched>;

const study: RiskStudy = {
	kind: 'risk',
	name: 'bench',
	title: 'Bench',
	quantity: 'ebit',
	scenario: 'base',
	draws: 100_000,
	seed: 1,
	inputs: ['main_price', 'demand', 'wage', 'run_at', 'band_price'].map((quantity, i) => ({
		label: quantity,
		quantity,
		mode: 'scale' as const,
		distribution: { kind: 'pert' as const, min: 0.97 - i / 100, likely: 0.99, max: 1 }
	})),
	correlations: [{ between: ['main_price', 'demand'], rank: -0.4 }]
};

const root = join(process.cwd(), 'tests/bench/study-page');
const outDir = mkdtempSync(join(tmpdir(), 'metrewright-study-'));
const executablePath = process.env.METREWRIGHT_CHROMIUM;
if (executablePath) await measure(executablePath);
else console.error('Left out: a study in the page, because no Chromium could be found.');

async function measure(browserPath: string): Promise<void> {
	const settings = {
		configFile: false as const,
		root,
		logLevel: 'error' as const,
		resolve: { alias: { $lib: join(process.cwd(), 'src/lib') } },
		worker: { format: 'es' as const },
		build: { outDir, emptyOutDir: true, target: 'es2022' }
	};
	await build(settings);
	const server = await preview({ ...settings, preview: { port: 0, host: '127.0.0.1' } });
	const browser = await chromium.launch({ executablePath: browserPath });
	try {
		const page = await browser.newPage();
		await page.goto(server.resolvedUrls?.local[0] ?? '');
		await page.waitForFunction(() => typeof watchStudy === 'function');
		const workbook = openShipped();
		const first = await page.evaluate(([book, one]) => watchStudy(book, one), [
			workbook,
			study
		] as const);
		const again = await page.evaluate(([book, one]) => watchStudy(book, one), [
			workbook,
			study
		] as const);
		heading('A study in the page: 100,000 draws, one result of the full plant');
		for (const [name, one] of [
			['workers starting', first],
			['workers warm', again]
		] as const)
			line(
				name,
				one.problem ??
					`${(one.ms / 1000).toFixed(1)} s on ${one.cores} cores, ${one.reports} reports of progress, ${one.errors} draws without a value; ${one.longest === 0 ? 'no task of the page over 50 ms' : `longest task of the page ${one.longest.toFixed(0)} ms`}`
			);
	} finally {
		await browser.close();
		await server.close();
		rmSync(outDir, { recursive: true });
	}
}
