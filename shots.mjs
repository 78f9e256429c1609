import { chromium } from '@playwright/test';
const b = await chromium.launch({ executablePath: '/usr/bin/chromium' });
const [base, ...rest] = process.argv.slice(2);
const [w, scheme, ...paths] = rest;
const c = await b.newContext({ viewport: { width: Number(w), height: 1000 }, colorScheme: scheme });
const p = await c.newPage();
p.on('console', (m) => m.type() === 'error' && console.log('ERR', m.text()));
p.on('pageerror', (e) => console.log('PAGEERR', e.message));
for (const path of paths) {
	await p.goto(base + path);
	await p.waitForTimeout(path === paths[0] ? 12000 : 7000);
	await p.screenshot({ path: `/tmp/shot${path.replaceAll('/', '_')}-${w}-${scheme}.png`, fullPage: true });
}
await b.close();
