/**
 * The plant of 60 pipes, 300 items and 12 lines in the page, beside the shipped one: from the address to the numbers of
 * all scenarios, and from Enter to the changed number. Each is opened from what the browser keeps, in turn; the least of
 * several rounds counts, as the machine may be busy.
 */
import type { Page } from 'playwright/test';
import { Model } from '$lib/engine/model';
import { Solver } from '$lib/programmes/highs';
import { planAll } from '$lib/programmes/plan-all';
import { saveWorkbook } from '$lib/workbook/save';
import { largePlant } from './large-plant';
import { heading, line } from './print';
import { openShipped } from './shipped';
import { openWatched } from './watched';

const ROUNDS = 3;
const TURNS = 8;
const OPEN_MS = 3000;
const EDIT_MS = 100;

interface Opened {
	readonly begun: number;
	readonly shown: number;
	readonly settled: number;
}

interface Turn {
	readonly enter: number;
	readonly painted: number;
	readonly settled: number;
}

/** What `watch-page.js` puts into the page. */
declare const benchWatch: {
	readonly openings: readonly { readonly at: number; readonly settled?: number }[];
	readonly turn: { readonly painted?: number; readonly settled?: number } | null;
	readonly shown: number;
};

const copy = await figuresOf(saveWorkbook({ ...openShipped(), title: 'A copy' }));
const large = await figuresOf(await plannedText());
heading('A plant of 60 pipes, 300 items, 12 lines in the page, beside the shipped one');
told('engine told', (figures) => figures.opened.map(({ begun }) => begun));
told('first number painted', (figures) => figures.opened.map(({ shown }) => shown));
told(
	'numbers of all scenarios',
	(figures) => figures.opened.map(({ settled }) => settled),
	OPEN_MS
);
told('Enter to painted', ({ turns }) => turns.map((turn) => turn.painted - turn.enter), EDIT_MS);
told('Enter to all scenarios', ({ turns }) => turns.map((turn) => turn.settled - turn.enter));

async function figuresOf(text: string): Promise<{ opened: Opened[]; turns: Turn[] }> {
	const { page, close } = await openWatched();
	try {
		await settled(page, 1);
		await page.getByRole('button', { name: 'Open', exact: true }).click();
		const file = { name: 'plant.json', mimeType: 'application/json', buffer: Buffer.from(text) };
		await page.getByLabel('Choose a file').setInputFiles(file);
		await settled(page, 2);
		await page
			.getByText(/^saved \d\d:\d\d$/)
			.first()
			.waitFor();
		const opened: Opened[] = [];
		for (let round = 0; round < ROUNDS; round++) {
			await page.reload();
			await settled(page, 1);
			await page.waitForFunction(() => benchWatch.shown > 0);
			opened.push(
				await page.evaluate(() => {
					const [first] = benchWatch.openings;
					return { begun: first!.at, shown: benchWatch.shown, settled: first!.settled! };
				})
			);
		}
		return { opened, turns: await edits(page) };
	} finally {
		await close();
	}
}

async function edits(page: Page): Promise<Turn[]> {
	await page.keyboard.press('Control+K');
	await page.keyboard.type('speed_ratio');
	await page.keyboard.press('Enter');
	await page.waitForSelector('[role="gridcell"][data-active="true"]');
	await page.evaluate('benchWatch.start()');
	const turns: Turn[] = [];
	for (let turn = 0; turn < TURNS; turn++) {
		await page.keyboard.type((84 + ((turn * 7) % 11)).toFixed(1));
		await page.keyboard.press('Enter');
		await page.waitForFunction(
			() => benchWatch.turn?.painted !== undefined && benchWatch.turn.settled !== undefined
		);
		turns.push((await page.evaluate('benchWatch.turn')) as Turn);
		// Enter goes one row down.
		await page.keyboard.press('ArrowUp');
	}
	return turns;
}

async function settled(page: Page, openings: number): Promise<void> {
	await page.waitForFunction(
		(count) => benchWatch.openings[count - 1]?.settled !== undefined,
		openings,
		{ timeout: 120_000 }
	);
}

async function plannedText(): Promise<string> {
	const model = Model.open(largePlant());
	const solver = await Solver.load();
	for (const each of planAll(solver, model)) void each;
	return saveWorkbook(model.workbook);
}

function told(
	name: string,
	of: (figures: { opened: Opened[]; turns: Turn[] }) => number[],
	goal?: number
): void {
	const [here, beside] = [Math.min(...of(large)), Math.min(...of(copy))];
	const verdict = goal === undefined ? '' : ` (goal: ${goal}${here <= goal ? '' : ', MISSED'})`;
	line(name, `${here.toFixed(0)} ms beside ${beside.toFixed(0)} ms${verdict}`);
}
