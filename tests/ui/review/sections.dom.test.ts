/** The review list as its page shows it: by kind, open lines apart from those ticked off, each with its cell. */
import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { PLAIN } from '$lib/engine/number-words';
import { reviewLines } from '$lib/review/review';
import { tickOf } from '$lib/review/ticks';
import { Reviewing } from '$lib/ui/review/reviewing.svelte';
import { cellOf, sectionsOf, subjectOf } from '$lib/ui/review/sections';
import { book, entered, formula, perLine } from '../../review/book';

const workbook = book([
	perLine('pay', 20, 21, 210, 19, 20.5),
	entered('wage', 20),
	formula('result', '3 * wage + SUM(pay over line)')
]);
const lines = reviewLines(workbook);

describe('the sections of the review', () => {
	it('stand in the order in which one goes through them, without kinds that have no line', () => {
		expect(sectionsOf(workbook, lines).map(({ kind, open }) => [kind, open.length])).toEqual([
			['far_from_siblings', 1],
			['literal', 1]
		]);
	});

	it('keep what was ticked off apart', () => {
		const ticked = { ...workbook, reviewed: [tickOf(lines[1]!, 'Ada', 'three shifts')] };
		const [, literal] = sectionsOf(ticked, lines);
		expect([literal!.open.length, literal!.done.length]).toEqual([0, 1]);
		expect(literal!.done[0]!.tick).toMatchObject({ by: 'Ada' });
	});

	it('lead to the cell of the member, or the first of the quantity', () => {
		const layout = layOut(workbook);
		const places = lines.map((line) => cellOf(layout, line));
		expect(places).toEqual([layout.byName.get('pay')!.base + 2, layout.byName.get('result')!.base]);
	});

	it('lead to the scenario where they are about it as a whole', () => {
		const idle = { id: 'idle', title: 'Idle', parent: 'base', changes: [] };
		const twice = { ...workbook, scenarios: [...workbook.scenarios, idle] };
		const line = reviewLines(twice).find(({ kind }) => kind === 'same_entries')!;
		expect([cellOf(layOut(twice), line), subjectOf(twice, line)]).toEqual([null, 'Idle']);
	});

	it('are found in slices, the last workbook winning', async () => {
		const reviewing = new Reviewing(PLAIN);
		reviewing.look(book([entered('wage', 20), formula('result', 'wage')]));
		reviewing.look(workbook);
		await expect
			.poll(() => reviewing.lines?.map(({ kind }) => kind))
			.toEqual(['far_from_siblings', 'literal']);
		reviewing.stop();
	});
});
