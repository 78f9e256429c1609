/** Runs a study with code that is fetched for the first one, so that no page waits for it. */
import type { Answer } from '$lib/studies/problem';
import type { StudyResult } from '$lib/studies/kinds';
import type { runStudy } from './run-study';

export const fetchStudies = () => import('./run-study');

export async function runStudyLater(
	...asked: Parameters<typeof runStudy>
): Promise<Answer<StudyResult>> {
	const fetched = await fetchStudies().catch(() => null);
	if (fetched) return await fetched.runStudy(...asked);
	const message =
		'The study was not started, because a part of the program was not fetched. Check the connection and run it again.';
	return { ok: false, problem: { code: 'stopped', message } };
}
