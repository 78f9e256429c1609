/** In what order test files are run: those of each project together, and first those that take long, so that all processors end together. */
import type { TestSequencer } from 'vitest/node';

/** What takes more than some ten seconds, the longest first. */
const LONG = [
	'engine/second.test.ts',
	'scenarios/studies.test.ts',
	'scenarios/asked.test.ts',
	'server/soak.test.ts',
	'workbook/laws.test.ts',
	'exchange/ooxml.test.ts',
	'server/people.test.ts',
	'workbook/begin/begin.test.ts',
	'begin/second-plant.test.ts',
	'scenarios/month-end.test.ts'
].map((file) => `/tests/${file}`);

type Files = Parameters<TestSequencer['sort']>[0];

export class LongestFirst implements TestSequencer {
	sort(files: Files): Files {
		const place = (file: string) => {
			const at = LONG.findIndex((one) => file.endsWith(one));
			return at < 0 ? LONG.length : at;
		};
		return files.toSorted(
			(a, b) =>
				a.project.name.localeCompare(b.project.name) ||
				place(a.moduleId) - place(b.moduleId) ||
				a.moduleId.localeCompare(b.moduleId)
		);
	}

	/** Nothing is spread over machines. */
	shard(files: Files): Files {
		return files;
	}
}
