/**
 * From the Enter key to the changed number on screen, in Chromium, on the built app: an input of the demo
 * is edited by keyboard, and the cost of a metre at the top of the page watched. Beside it the time until
 * the interpreter's answer was back from its worker: what lies between is the page's own.
 */
import type { Page } from 'playwright/test';
import { median, quantile } from './measure';
import { heading, line, ratio } from './print';
import { openWatched } from './watched';

const TURNS = 50;
const WARM_UP = 8;
const FRAME = 1000 / 60;

interface Turn {
	readonly enter: number;
	readonly told: number;
	readonly answered: number;
	readonly settled: number;
	readonly changed: number;
	readonly painted: number;
}

/** What `watch-page.js` puts into the page. */
declare const benchWatch: {
	readonly judged: number;
	readonly openings: readonly { readonly settled?: number }[];
	isDone(): boolean;
};

const { page, close } = await openWatched();
try {
	await open(page);
	for (let turn = 0; turn < WARM_UP; turn++) await edit(page, turn);
	const work = await workOf(page);
	const frames = [await framesOf(page)];
	const before = await work();
	for (let turn = 0; turn < TURNS; turn++) await edit(page, WARM_UP + turn);
	const spent = (await work()) - before;
	frames.push(await framesOf(page));
	report((await page.evaluate('benchWatch.turns')) as Turn[], frames.flat(), spent / TURNS);
} finally {
	await close();
}

async function open(page: Page): Promise<void> {
	await page.waitForFunction(() => benchWatch.openings[0]?.settled !== undefined);
	const spent = await (await workOf(page))();
	await page.waitForFunction(() => benchWatch.judged >= 0, null, { timeout: 120_000 });
	const judged = (await page.evaluate('performance.now()')) as number;
	const [shown, confirmed, second] = (await page.evaluate(
		'[benchWatch.shown, benchWatch.openings[0].settled, benchWatch.second]'
	)) as [number, number, number];
	heading('The page in Chromium');
	line(
		'first number painted',
		`${shown.toFixed(0)} ms after the address was asked for (goal: 1000 or less on a quiet machine)`
	);
	line(
		'all numbers confirmed',
		`after ${confirmed.toFixed(0)} ms by the page's own engine; ${spent.toFixed(0)} ms of the processor in the page's thread until then`
	);
	line(
		'second engine',
		`asked for ${Math.abs(second - shown).toFixed(0)} ms ${second < shown ? 'BEFORE' : 'after'} that; all values judged after ${judged.toFixed(0)} ms`
	);
	await page.keyboard.press('Control+K');
	await page.keyboard.type('speed_ratio');
	await page.keyboard.press('Enter');
	await page.waitForSelector('[role="gridcell"][data-active="true"]');
	await page.evaluate('benchWatch.start()');
}

/** Another value each time, far enough from the last to show in four digits. */
async function edit(page: Page, turn: number): Promise<void> {
	await page.keyboard.type((84 + ((turn * 7) % 11) + (turn % 10) / 10).toFixed(1));
	await page.keyboard.press('Enter');
	await page.waitForFunction(() => benchWatch.isDone(), null, { timeout: 30_000 });
	// Enter goes one row down.
	await page.keyboard.press('ArrowUp');
}

async function framesOf(page: Page): Promise<number[]> {
	return (await page.evaluate('benchWatch.frames(30)')) as number[];
}

/** Milliseconds of the processor that the page's own thread has spent on scripts, styles and layout. */
async function workOf(page: Page): Promise<() => Promise<number>> {
	const session = await page.context().newCDPSession(page);
	await session.send('Performance.enable', { timeDomain: 'threadTicks' });
	return async () => {
		const { metrics } = await session.send('Performance.getMetrics');
		const counted = ['ScriptDuration', 'LayoutDuration', 'RecalcStyleDuration'];
		const seconds = metrics.filter(({ name }) => counted.includes(name));
		return seconds.reduce((sum, { value }) => sum + 1000 * value, 0);
	};
}

function report(all: readonly Turn[], frames: readonly number[], work: number): void {
	const turns = all.slice(-TURNS);
	const figures = (name: string, series: readonly number[], goal = '') =>
		line(
			name,
			`median ${median(series).toFixed(1)} ms, 95th percentile ${quantile(series, 0.95).toFixed(1)} ms${goal}`
		);
	figures(
		'Enter to painted',
		turns.map((turn) => turn.painted - turn.enter),
		' (goal: median 50 or less)'
	);
	figures(
		'interpreter, there and back',
		turns.map((turn) => turn.answered - turn.told)
	);
	figures(
		'all scenarios back',
		turns.map((turn) => turn.settled - turn.told)
	);
	figures(
		'key to question',
		turns.map((turn) => turn.told - turn.enter)
	);
	figures(
		'answer to changed page',
		turns.map((turn) => turn.changed - turn.answered)
	);
	const after = turns.map((turn) => turn.painted - turn.answered);
	figures('answer to painted', after, ' (goal: 16 and 33 or less)');
	figures('one changed word, painted', frames);
	const within = after.filter((ms) => ms <= FRAME).length;
	line(
		'within one frame',
		`${within} of ${turns.length} edits painted within ${FRAME.toFixed(1)} ms of the answer (goal: the median); ${ratio(median(after) / median(frames))} one changed word`
	);
	line('work of the page', `${work.toFixed(1)} ms of the processor an edit, typing included`);
}
