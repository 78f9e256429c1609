/**
 * Finds the Chromium that the browser tests drive, or brings one in: the one named by METREWRIGHT_CHROMIUM, a
 * headless shell or a whole Chromium on the path, the test library's own, Debian's package (as root), the test
 * library's download. The shell comes first, because it starts sooner and draws no window.
 */
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { bin, run } from './setup.mjs';

const NAMES = [
	'chromium-headless-shell',
	'chromium',
	'chromium-browser',
	'google-chrome-stable',
	'google-chrome'
];

function pathOf(name) {
	for (const folder of (process.env.PATH ?? '').split(delimiter)) {
		const path = join(folder, name);
		try {
			accessSync(path, constants.X_OK);
			return path;
		} catch {
			// Not here: look in the next folder.
		}
	}
	return null;
}

function onPath() {
	for (const name of NAMES) {
		const path = pathOf(name);
		if (path) return path;
	}
	return null;
}

async function ownOfLibrary() {
	const { chromium } = await import('playwright');
	const path = chromium.executablePath();
	return path && existsSync(path) ? path : null;
}

/** The path of a Chromium, or null if none is here. */
export async function findBrowser() {
	const named = process.env.METREWRIGHT_CHROMIUM;
	if (named) return existsSync(named) ? named : null;
	return onPath() ?? (await ownOfLibrary());
}

/** The same, after trying to install one; null when none can be had. */
export async function ensureBrowser() {
	const found = await findBrowser();
	if (found || process.env.METREWRIGHT_CHROMIUM) return found;
	console.log('Setting up: no Chromium found, trying to install one (once).');
	const debian = existsSync('/usr/bin/apt-get') && process.getuid?.() === 0;
	if (debian) {
		const env = { DEBIAN_FRONTEND: 'noninteractive' };
		const apt = (...words) => run('apt-get', words, { quiet: true, required: false, env });
		apt('update', '-qq');
		// Older releases have no package of the shell alone.
		for (const name of ['chromium-headless-shell', 'chromium'])
			if (!onPath()) apt('install', '-y', '-qq', name);
	}
	if (!onPath()) run(bin('playwright'), ['install', 'chromium'], { required: false });
	return findBrowser();
}
