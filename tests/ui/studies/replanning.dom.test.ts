/** What planning anew is worth, how long it takes, and where the choice is offered. */
import { flushSync, mount, unmount } from 'svelte';
import { afterEach, expect, it } from 'vitest';
import type { Engine } from '$lib/browser/engine-client';
import { refuse } from '$lib/studies/problem';
import type { RiskResult } from '$lib/studies/risk-result';
import { UnitSystem } from '$lib/units/system';
import { setSession } from '$lib/ui/context';
import { setBench } from '$lib/ui/studies/bench';
import { Session } from '$lib/ui/session.svelte';
import { durationText } from '$lib/ui/studies/duration';
import { replanningWords } from '$lib/ui/studies/kinds/risk/replanning-words';
import { shownFor } from '$lib/ui/studies/shown';
import { StudyRunner } from '$lib/ui/studies/study-runner.svelte';
import StudySettings from '$lib/ui/studies/StudySettings.svelte';
import type { Study, StudyOf } from '$lib/workbook/study-schema';
import { smallPlant } from '../../programmes/small-plant';

const risk: StudyOf<'risk'> = {
	...{ name: 'sure', title: 'How sure', kind: 'risk', quantity: 'contribution' },
	...{ scenario: 'base', inputs: [], draws: 1000, seed: 1 }
};
const book = () => smallPlant((book) => ({ ...book, studies: [risk] }));
const { system: units } = UnitSystem.create([]);
const shown = shownFor(units, { unit: 'EUR' }, 1000, 'en');

const result = (mean: number, errors = 0) =>
	({ kind: 'risk', mean, errors, percentiles: { '5': mean - 100 } }) as unknown as RiskResult;
const ran = (study: Study, value: RiskResult) => ({
	...{ study, workbook: book() },
	answer: { ok: true as const, value }
});

it('the worth of planning anew is the difference of the means, over the same draws', () => {
	const kept = ran(risk, result(400));
	const follow = { ...risk, plans: 'follow' } as const;
	const words = replanningWords(book(), follow, result(450), kept, shown);
	expect(words).toContain('worth +50 EUR on average');
	expect(words).toContain('450 with the plan that follows and 400 EUR with the plan as it');
	// The same, seen from the other side.
	expect(replanningWords(book(), risk, result(400), ran(follow, result(450)), shown)).toBe(words);
	for (const other of [
		undefined,
		ran(follow, result(400)),
		ran({ ...risk, draws: 500 }, result(400)),
		ran(risk, result(400, 1))
	])
		expect(replanningWords(book(), follow, result(450), other, shown)).toBe('');
});

it('a time is told no more exactly than it is known', () => {
	const texts = [300, 8_400, 240_000, 5_400_000, 40_000_000].map((ms) => durationText(ms, 'en'));
	expect(texts).toEqual(['less than 1 s', 'about 8 s', 'about 4 min', 'about 1.5 h', 'about 11 h']);
});

const quiet: Engine = {
	open: () => {},
	apply: () => {},
	why: () => Promise.resolve(null),
	tryQuantity: () => Promise.resolve(null),
	lend: () => {},
	close: () => {}
};
let close = () => {};
afterEach(() => close());

function settingsOf(study: Study) {
	const session = new Session(() => quiet, 'en');
	session.open({ ...book(), studies: [study] });
	const runner = new StudyRunner(session, () => Promise.resolve(refuse('cancelled', '')));
	const form = ((anchor, props) => {
		setSession(session);
		setBench(runner);
		return StudySettings(anchor, props);
	}) as typeof StudySettings;
	const own = mount(form, {
		target: document.body,
		context: new Map(),
		props: { workbook: session.workbook!, study }
	});
	flushSync();
	close = () => void unmount(own);
	const choice = document.querySelector<HTMLSelectElement>('select:has(option[value="follow"])');
	return { session, choice };
}

it('the choice is offered where the result rests on a programme, and is kept in the study', () => {
	const { session, choice } = settingsOf(risk);
	expect(choice?.value).toBe('keep');
	expect([...choice!.options].map(({ text }) => text)).toEqual([
		'planned anew in every draw',
		'the plan as it stands'
	]);
	expect(document.body.textContent).toContain('Nobody reacts');
	choice!.value = 'follow';
	choice!.dispatchEvent(new Event('change', { bubbles: true }));
	expect(session.workbook!.studies![0]!.plans).toBe('follow');
	expect(session.undoable).not.toBeNull();
});

it('the choice is not offered where nothing that is decided is read', () => {
	const even: Study = {
		...{ name: 'even', title: 'Even', kind: 'break_even', quantity: 'holding', scenario: 'base' },
		...{ target: 0, input: { quantity: 'holding', mode: 'set', from: 0, to: 1 } }
	};
	expect(settingsOf(even).choice).toBeNull();
});
