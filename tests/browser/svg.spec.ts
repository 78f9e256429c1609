/** Charts and drawings taken along as SVG: files that stand alone. */
import { readFile } from 'node:fs/promises';
import { expect, open } from './app';
import { metre } from './figures';
import { test } from './plant';
import type { Page } from 'playwright/test';

async function takeSvg(page: Page, figure: number) {
	const [download] = await Promise.all([
		page.waitForEvent('download'),
		page.getByRole('figure').nth(figure).getByRole('button', { name: 'Save SVG' }).click()
	]);
	return {
		name: download.suggestedFilename(),
		text: await readFile(await download.path(), 'utf8')
	};
}

/** What an XML reader finds in a file, and what is seen of it as a picture in a page of its own. */
async function seen(page: Page, text: string) {
	// The policy of the app's own pages allows no pictures from elsewhere.
	const other = await page.context().newPage();
	const found = await other.evaluate(async (svg) => {
		const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml');
		const root = parsed.documentElement;
		const picture = new Image();
		picture.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
		await picture.decode();
		const { naturalWidth: width, naturalHeight: height } = picture;
		const canvas = Object.assign(document.createElement('canvas'), { width, height });
		const brush = canvas.getContext('2d')!;
		brush.drawImage(picture, 0, 0);
		const pixels = new Uint32Array(brush.getImageData(0, 0, width, height).data.buffer);
		const counts = new Map<number, number>();
		for (const pixel of pixels) counts.set(pixel, (counts.get(pixel) ?? 0) + 1);
		const paper = pixels[0] ?? 0;
		const box = root.getAttribute('viewBox')?.split(' ').map(Number);
		return {
			error: parsed.querySelector('parsererror')?.textContent ?? '',
			title: parsed.querySelector('title')?.textContent,
			description: parsed.querySelector('desc')?.textContent,
			texts: [...parsed.querySelectorAll('text')].map(
				(sVGTextElement) => sVGTextElement.textContent
			),
			hatched: [...parsed.querySelectorAll('[fill^="url("]')].length,
			dashed: [...parsed.querySelectorAll('[stroke-dasharray]')].length,
			...{ width, height, box },
			paper: [paper & 255, (paper >> 8) & 255, (paper >> 16) & 255],
			other: 1 - (counts.get(paper) ?? 0) / pixels.length,
			colours: [...counts.values()].filter((count) => count > 50).length
		};
	}, text);
	await other.close();
	expect(found.error).toBe('');
	expect(found.box).toEqual([0, 0, found.width, found.height]);
	expect(text).not.toMatch(/(?:href|src)=|NaN|undefined/);
	return found;
}

const paperOf = (page: Page) =>
	page.evaluate(() => {
		const colour = getComputedStyle(document.documentElement).backgroundColor;
		const brush = document.createElement('canvas').getContext('2d')!;
		brush.fillStyle = colour;
		brush.fillRect(0, 0, 1, 1);
		return [...brush.getImageData(0, 0, 1, 1).data].slice(0, 3);
	});

test('the chart of payback is taken along as an SVG with its axes, its lines and its words', async ({
	page
}) => {
	await open(page, '/investment');
	const heading = page.getByRole('heading', { level: 1, name: /pay back in 4\.6 years/ });
	await expect(heading).toBeVisible();
	await expect(page.getByRole('figure').getByRole('img').first()).toBeVisible();
	const { name, text } = await takeSvg(page, 0);
	expect(name).toMatch(/\.svg$/);
	const found = await seen(page, text);
	expect(found.title).toBe(await heading.textContent());
	expect(found.description).toMatch(/New line.*4\.6/);
	// The years and amounts of the axes, the names at the lines' ends, and a row of the table below.
	for (const words of ['0', '12', '+4,000', '−2,000', 'New line and rewinder', 'on Base, 8 years'])
		expect(found.texts).toContain(words);
	// A discounted line of each of seven cases, and what the key and the table show of them.
	expect(found.dashed).toBeGreaterThanOrEqual(14);
	expect(found.paper).toEqual(await paperOf(page));
	expect(found.other).toBeGreaterThan(0.02);
	expect(found.colours).toBeGreaterThan(5);
});

test('the drawing of a wall and the bars of cost are taken along as SVG, scrap hatched', async ({
	page
}) => {
	await open(page, '/product');
	await expect(page.getByRole('figure').nth(2)).toContainText(metre());
	const wall = await seen(page, (await takeSvg(page, 0)).text);
	for (const words of ['1.650 mm wall set-point', '15.0 mm', 'EVOH barrier'])
		expect(wall.texts).toContain(words);
	expect(wall.description).toMatch(/1\.650 mm/);
	expect(wall.other).toBeGreaterThan(0.1);
	const cost = await seen(page, (await takeSvg(page, 2)).text);
	for (const words of ['0.0', '0.8', 'PX15B', metre()]) expect(cost.texts).toContain(words);
	expect(cost.hatched).toBeGreaterThanOrEqual(10);
	expect(cost.other).toBeGreaterThan(0.1);
});

test('a study is taken along as SVG, on dark ground where the page is dark', async ({ page }) => {
	await page.emulateMedia({ colorScheme: 'dark' });
	await open(page, '/studies');
	await page.getByRole('link', { name: 'Resin price at which PX15B earns nothing' }).click();
	const heading = page.getByRole('heading', { level: 1, name: /at PEX resin price/ });
	await expect(heading).toBeVisible();
	await expect(page.getByRole('button', { name: 'Save SVG' })).toBeVisible();
	const found = await seen(page, (await takeSvg(page, 0)).text);
	expect(found.title).toBe(await heading.textContent());
	expect(found.texts.join(' ')).toMatch(/EUR\/kg/);
	expect(found.paper).toEqual(await paperOf(page));
	expect(Math.max(...found.paper)).toBeLessThan(80);
	expect(found.other).toBeGreaterThan(0.01);
});
