/** Reads what both test runners wrote down: how many passed, failed and were skipped, and which took longest. */
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root } from './setup.mjs';

export const PURE = 'test-results/pure.json';
export const JOURNEYS = 'test-results/journeys.json';

/** So that nothing of an earlier run is counted. */
export function forgetEarlier() {
	for (const path of [PURE, JOURNEYS]) rmSync(join(root, path), { force: true });
}

function read(path) {
	const whole = join(root, path);
	return existsSync(whole) ? JSON.parse(readFileSync(whole, 'utf8')) : null;
}

const fromRoot = (path) => relative(root, path).replaceAll('\\', '/');

function pure() {
	const files = read(PURE)?.testResults ?? [];
	return files.flatMap(({ name, status, assertionResults }) => {
		const tests = assertionResults.map((test) => ({
			title: `${fromRoot(name)}: ${test.fullName}`,
			outcome: { passed: 'passed', failed: 'failed' }[test.status] ?? 'skipped',
			ms: test.duration ?? 0
		}));
		// A file that could not be read has no tests to fail.
		const isBroken = status === 'failed' && !tests.some(({ outcome }) => outcome === 'failed');
		return isBroken ? [...tests, { title: fromRoot(name), outcome: 'failed', ms: 0 }] : tests;
	});
}

const OUTCOMES = { expected: 'passed', flaky: 'passed', skipped: 'skipped', unexpected: 'failed' };

function inSuite(suite, path = suite.file ?? '') {
	const here = (suite.specs ?? []).flatMap(({ title, tests }) =>
		tests.map(({ status, results }) => ({
			title: `tests/browser/${path}: ${title}`,
			outcome: OUTCOMES[status],
			ms: results.reduce((sum, { duration }) => sum + duration, 0)
		}))
	);
	return [...here, ...(suite.suites ?? []).flatMap((inner) => inSuite(inner, path))];
}

const journeys = () => (read(JOURNEYS)?.suites ?? []).flatMap((suite) => inSuite(suite));

/** Prints the twenty slowest, and in the last line the sum of both runners; returns that sum. */
export function tell() {
	const all = [...pure(), ...journeys()];
	const slowest = all.sort((a, b) => b.ms - a.ms).slice(0, 20);
	console.log('\nThe twenty slowest tests:');
	for (const { ms, title } of slowest)
		console.log(`${(ms / 1000).toFixed(1).padStart(7)} s  ${title}`);
	const count = (wanted) => all.filter(({ outcome }) => outcome === wanted).length;
	const [passed, failed, skipped] = ['passed', 'failed', 'skipped'].map(count);
	console.log(`\n${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
	return { passed, failed, skipped };
}
