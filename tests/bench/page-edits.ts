/**
 * Edits of other kinds than one value, made in the page as a person makes them: how long until all scenarios are
 * answered, that none opens the workbook anew, and which pieces of work hold the page's thread up meanwhile.
 */
import type { Page } from 'playwright/test';
import { findMember, follow, paste } from '../browser/app';
import { median } from './measure';
import { heading, line } from './print';
import { openWatched } from './watched';

const TURNS = 7;
/** In milliseconds. */
const GOAL = 60;
const LONGEST_TASK = 50;

interface Watched {
	readonly edits: readonly { readonly told: number; readonly settled: number }[];
	readonly openings: readonly unknown[];
	readonly long: readonly { readonly startTime: number; readonly duration: number }[];
}

/** What `watch-page.js` puts into the page. */
declare const benchWatch: { areAnswered(count: number): boolean };

const { page, close } = await openWatched();
try {
	await page.waitForFunction(() => document.querySelector('[role="gridcell"]'));
	await page.waitForTimeout(1000);
	const begun = await page.evaluate(() => performance.now());
	heading('Edits in the page, from the engine being told to all scenarios answered');
	await findMember(page, 'main_price', 1);
	await measure('a paste into two scenarios', (turn) =>
		paste(page, `2.1${turn}\t2.2${turn}\n3.3${turn}\t3.4${turn}`)
	);
	await follow(page, '/scenarios');
	await measure('a new scenario', (turn) => inDialog('New scenario', `Faster ${turn}`));
	await measure('its title', (turn) => inDialog('Rename', `Slower ${turn}`));
	const { openings, long } = await watched(page);
	line('workbook opened', `${openings.length} times (goal: 1)`);
	const after = long.filter(({ startTime }) => startTime > begun);
	const longest = Math.max(0, ...after.map(({ duration }) => duration));
	line(
		'long tasks of the page',
		`${after.length} over ${LONGEST_TASK} ms (goal: 0), the longest ${longest.toFixed(0)} ms`
	);
} finally {
	await close();
}

async function measure(title: string, act: (turn: number) => Promise<void>): Promise<void> {
	const { edits: before } = await watched(page);
	for (let turn = 0; turn < TURNS; turn++) {
		await act(turn);
		await page.waitForFunction((count) => benchWatch.areAnswered(count), before.length + turn + 1);
	}
	const { edits } = await watched(page);
	const series = edits.slice(before.length).map(({ told, settled }) => settled - told);
	line(
		title,
		`median ${median(series).toFixed(1)} ms (goal: ${GOAL} or less), longest ${Math.max(...series).toFixed(1)} ms`
	);
}

async function inDialog(button: string, title: string): Promise<void> {
	await page.getByRole('button', { name: button, exact: true }).last().click();
	await page.getByRole('dialog').getByLabel('Title').fill(title);
	await page.getByRole('dialog').getByLabel('Title').press('Enter');
	await page.getByRole('dialog').waitFor({ state: 'hidden' });
}

async function watched(of: Page): Promise<Watched> {
	return (await of.evaluate('benchWatch')) as Watched;
}
