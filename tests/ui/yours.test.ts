/** Which figures to replace first, and how many are one's own: from the shipped workbooks and their own results. */
import { describe, expect, it } from 'vitest';
import { layOut } from '$lib/engine/layout';
import { ownQuantities } from '$lib/review/template';
import { runSensitivity } from '$lib/studies/sensitivity';
import {
	mattering,
	restsOnPlanAlone,
	resultsToAsk,
	spreadOf,
	studyOf
} from '$lib/ui/yours/matters';
import { applyCommand } from '$lib/workbook/commands';
import type { Workbook } from '$lib/workbook/schema';
import { openShipped } from '../reference/shipped';

const template = openShipped('shop').workbook;

function changed(at: string, value: number): Workbook {
	const entries = [{ quantity: at, at: [], value }];
	const edit = applyCommand(template, { kind: 'set_inputs', scenario: 'base', entries });
	if (!edit.ok) throw new Error(edit.problem.message);
	return edit.workbook;
}

function first(workbook: Workbook) {
	const layout = layOut(workbook);
	const [asked] = resultsToAsk(layout, workbook.front?.first_subject ?? null);
	const answer = runSensitivity(workbook, studyOf(asked!, workbook.scenarios[0]!.id));
	if (!answer.ok) throw new Error(answer.problem.message);
	return {
		asked: asked!,
		lines: mattering(layout, answer.value, ownQuantities(workbook, template))
	};
}

describe('figures to replace first', () => {
	it('are those that move the first result most, the widest first, with where they stand', () => {
		const { asked, lines } = first(template);
		expect(asked.label).toMatch(/cost per metre/i);
		expect(lines).toHaveLength(10);
		const moves = lines.map((line) => line.moves!);
		expect(moves).toEqual([...moves].sort((a, b) => b - a));
		expect(moves.at(-1)).toBeGreaterThan(0);
		for (const { share, spread, moves } of lines)
			expect(moves).toBeCloseTo((share! * spread) / 0.1, 12);
		for (const { cell, label } of lines) {
			expect(cell).toBeGreaterThanOrEqual(0);
			expect(label).not.toBe('');
		}
	});

	it('weigh what ten per cent does by how far the figure may lie off', () => {
		const figure = { name: 'x', label: 'x' };
		const spread = { min: 1.8, likely: 2, max: 2.3 };
		expect(spreadOf({ ...figure, spread, usual: { min: 0, max: 9 } }, 2)).toBeCloseTo(0.125, 12);
		expect(spreadOf({ ...figure, usual: { min: 1, max: 3 } }, 2)).toBeCloseTo(0.25, 12);
		// The permitted range stands in for the end that a usual one leaves open.
		const share = { ...figure, usual: { min: 80 }, range: { min: 0, max: 100 } };
		expect(spreadOf(share, 90)).toBeCloseTo(5 / 90, 12);
		expect(spreadOf({ ...figure, usual: { min: 1, max: 100 } }, 2)).toBe(0.5);
		expect([spreadOf(figure, 2), spreadOf(figure, 0)]).toEqual([0.1, 0]);
	});

	it('are none where the plan alone decides, as it stands', () => {
		const layout = layOut(template);
		const asked = resultsToAsk(layout, null).find(({ label }) => label === 'Good metres a year')!;
		const answer = runSensitivity(template, studyOf(asked, template.scenarios[0]!.id));
		if (!answer.ok) throw new Error(answer.problem.message);
		expect(answer.value.swings.length).toBeGreaterThan(0);
		expect(restsOnPlanAlone(layout, answer.value)).toBe(true);
		const moved = { ...answer.value.swings[0]!, quantity: 'resin_price' };
		expect(restsOnPlanAlone(layout, { swings: [moved] })).toBe(false);
	});

	it('leave out what is one’s own by now', () => {
		const before = first(template).lines.find(({ quantity }) => quantity === 'resin_price');
		expect(before).toMatchObject({ label: 'Resin price' });
		const { lines } = first(changed('resin_price', 2.3));
		expect(lines.map(({ quantity }) => quantity)).not.toContain('resin_price');
		expect(lines).toHaveLength(10);
	});
});
