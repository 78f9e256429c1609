/**
 * A month closed from its eight files in the page, beside one file alone: from the files taken to all of them looked
 * over, and from the click that enters them to every scenario computed anew. Entered together they are one edit, so
 * eight should take little more than one.
 */
import { readdirSync } from 'node:fs';
import type { Page } from 'playwright/test';
import { follow, undoButton } from '../browser/app';
import { median } from './measure';
import { heading, line, ratio } from './print';
import { openWatched } from './watched';

const FOLDER = 'tests/exchange/close/may-2027';
const ALL = readdirSync(FOLDER).flatMap((name) =>
	name.endsWith('.csv') ? [`${FOLDER}/${name}`] : []
);
const ONE = [`${FOLDER}/ledger.csv`];
const TURNS = 5;
/** In milliseconds. */
const GOAL = 2000;

interface Turn {
	readonly looked: number;
	readonly entered: number;
	readonly work: number;
}

/** What `watch-page.js` puts into the page. */
declare const benchWatch: {
	readonly edits: readonly { readonly settled?: number }[];
	readonly openings: readonly { readonly settled?: number }[];
	areAnswered(count: number): boolean;
};

const { page, close } = await openWatched();
try {
	await page.waitForFunction(() => benchWatch.openings[0]?.settled !== undefined);
	await follow(page, '/close');
	// Each once before anything is counted.
	await closed(page, ONE);
	await closed(page, ALL);
	const [one, all]: [Turn[], Turn[]] = [[], []];
	for (let turn = 0; turn < TURNS; turn++) {
		one.push(await closed(page, ONE));
		all.push(await closed(page, ALL));
	}
	heading(`A month closed from ${ALL.length} files in the page, beside one file`);
	told('files looked over', ({ looked }) => looked);
	told('entered and computed', ({ entered }) => entered);
	told('from files to numbers', ({ looked, entered }) => looked + entered, GOAL);
	told('edits that the engine was told', ({ work }) => work);

	function told(title: string, of: (turn: Turn) => number, goal?: number) {
		const [alone, together] = [median(one.map(of)), median(all.map(of))];
		line(
			title,
			`${together.toFixed(0)}${goal ? ` ms (goal: ${goal} or less on a quiet machine)` : ''}, one alone ${alone.toFixed(0)}: ${ratio(together / alone)} as much for ${ALL.length} files`
		);
	}
} finally {
	await close();
}

async function closed(on: Page, files: readonly string[]): Promise<Turn> {
	const before = await on.evaluate(() => benchWatch.edits.length);
	const begun = performance.now();
	await on.locator('input[type="file"][multiple]').setInputFiles([...files]);
	const enter = on.getByRole('button', { name: /^Enter \d+ files?$/ });
	const name = files.length === 1 ? 'Enter 1 file' : `Enter ${files.length} files`;
	await on.waitForFunction(
		(label) =>
			[...document.querySelectorAll('button')].some(
				(button) => button.textContent?.trim() === label && !button.disabled
			),
		name
	);
	const looked = performance.now();
	await enter.click();
	await on.waitForFunction((count) => benchWatch.areAnswered(count + 1), before);
	await on.waitForFunction(
		(count) => (document.body.textContent ?? '').split(/values? entered/).length - 1 >= count,
		files.length
	);
	const entered = performance.now();
	const edits = (await on.evaluate(() => benchWatch.edits.length)) - before;
	// Plans follow in their own time, and everything is taken back for the next turn.
	while (await undoButton(on).isEnabled()) {
		const count = await on.evaluate(() => benchWatch.edits.length);
		await undoButton(on).click();
		await on.waitForFunction((told) => benchWatch.areAnswered(told + 1), count);
	}
	await on.waitForTimeout(1500);
	return { looked: looked - begun, entered: entered - looked, work: edits };
}
