/** The studies at work on the open workbook: one bench for each session, made by the first page of studies that asks. */
import { runStudyLater } from '$lib/browser/run-study-later';
import { getSession } from '../context';
import type { Session } from '../session.svelte';
import { StudyRunner } from './study-runner.svelte';

const benches = new WeakMap<Session, StudyRunner>();

/** To be called while a component is made. */
export function getBench(): StudyRunner {
	const session = getSession();
	let bench = benches.get(session);
	if (!bench) benches.set(session, (bench = new StudyRunner(session, runStudyLater)));
	return bench;
}

/** A bench of one's own, for tests. */
export const setBench = (bench: StudyRunner): void => void benches.set(getSession(), bench);
