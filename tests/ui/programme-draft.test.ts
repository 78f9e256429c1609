import { describe, expect, it } from 'vitest';
import {
	decisionChoices,
	freshProgramme,
	missingPart,
	objectiveChoices,
	requirementChoices,
	withDecision,
	withObjective,
	withoutDecision,
	withoutRequirement,
	withRequirement,
	withWorth,
	worthChoices,
	worthOf
} from '$lib/ui/programmes/draft';
import type { ListOption } from '$lib/ui/choose/options';
import { applyCommand } from '$lib/workbook/commands';
import { smallPlant } from '../programmes/small-plant';

const workbook = smallPlant();
const programme = workbook.programmes![0]!;
const names = (list: readonly ListOption[]) => list.map(({ value }) => value);
const empty = { ...programme, decisions: [], constraints: [] };

describe('what may be chosen for a part of a programme', () => {
	it('is a number by a formula for what shall be best', () => {
		expect(names(objectiveChoices(workbook))).toEqual(['planned_hours', 'contribution']);
	});

	it('is an input that is not decided yet, with its sheet', () => {
		expect(names(decisionChoices(workbook, empty))).toContain('made');
		expect(names(decisionChoices(workbook, programme))).not.toContain('made');
		expect(names(decisionChoices(workbook, programme))).not.toContain('contribution');
		expect(decisionChoices(workbook, empty).find(({ value }) => value === 'made')?.group).toBe(
			'Decided'
		);
	});

	it('is a yes or no by a formula for what must hold', () => {
		expect(names(requirementChoices(workbook, empty))).toEqual([
			'hours_hold',
			'stock_holds',
			'sold_holds'
		]);
		expect(requirementChoices(workbook, programme)).toEqual([]);
	});

	it('is an input per the same sets for the worth of one more', () => {
		expect(names(worthChoices(workbook, 'hours_hold'))).toEqual(['hours', 'hour_value']);
		expect(worthChoices(workbook, 'nothing')).toEqual([]);
	});
});

describe('a programme being written', () => {
	it('lacks its name, what shall be best and what may be chosen, in this order', () => {
		const fresh = freshProgramme(workbook, '');
		expect(missingPart(fresh)).toBe('title');
		const named = { ...fresh, title: 'Second' };
		expect(missingPart(named)).toBe('objective');
		const aimed = withObjective(workbook, named, 'minimise', 'contribution');
		expect(missingPart(aimed)).toBe('decisions');
		expect(missingPart(withDecision(aimed, 'holding'))).toBeNull();
	});

	it('has a name that no other has, and the workbook takes it', () => {
		const fresh = withDecision(
			withObjective(workbook, freshProgramme(workbook, 'Second'), 'minimise', 'contribution'),
			'holding'
		);
		expect(fresh.name).toBe('programme_2');
		const put = applyCommand(workbook, { kind: 'put_programme', programme: fresh });
		expect(put.ok && put.workbook.programmes).toHaveLength(2);
	});

	it('is solved apart for the sets of what shall be best', () => {
		const apart = withObjective(workbook, programme, 'maximise', 'planned_hours');
		expect([apart.each, apart.maximise]).toEqual([['line', 'month'], 'planned_hours']);
		const whole = withObjective(workbook, apart, 'minimise', 'contribution');
		expect([whole.each, whole.maximise, whole.minimise]).toEqual([
			undefined,
			undefined,
			'contribution'
		]);
	});

	it('takes parts in and out, and with a requirement its worth', () => {
		expect(withoutDecision(programme, 'stock').decisions).toEqual(['made', 'sold']);
		expect(withRequirement(empty, 'hours_hold').constraints).toEqual(['hours_hold']);
		expect(worthOf(programme, 'hours_hold')).toBe('hour_value');
		const without = withoutRequirement(programme, 'hours_hold');
		expect(without.constraints).toEqual(['stock_holds', 'sold_holds']);
		expect(without.shadow_prices).toBeUndefined();
		expect(withWorth(programme, 'stock_holds', 'hour_value').shadow_prices).toEqual({
			hour_value: 'stock_holds'
		});
	});
});
