/**
 * Finds the Chromium that the browser tests drive, or brings one in: the one named by
 * METREWRIGHT_CHROMIUM, one on the path, the test library's own, Debian's package (as root), the test
 * library's download.
 */
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { bin, run } from './setup.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'];

function onPath() {
	for (const folder of (process.env.PATH ?? '').split(delimiter))
		for (const name of NAMES) {
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

async function ownOfLibrary() {
	const { chromium } = await import('@playwright/test');
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
		run('apt-get', ['update', '-qq'], { quiet: true, required: false, env });
		run('apt-get', ['install', '-y', '-qq', 'chromium'], { quiet: true, required: false, env });
	}
	if (!onPath()) run(bin('playwright'), ['install', 'chromium'], { required: false });
	return findBrowser();
}
