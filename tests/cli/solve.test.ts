/** `solve` as a script meets it. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { solveCommand } from '../../src/cli/solve';
import { saveWorkbook } from '$lib/workbook/save';
import type { Workbook } from '$lib/workbook/schema';
import { smallPlant, withQuantity } from '../programmes/small-plant';

const folder = mkdtempSync(join(tmpdir(), 'metrewright-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(workbook: Workbook): string {
	const path = join(folder, 'plant.json');
	writeFileSync(path, saveWorkbook(workbook));
	return path;
}

describe('solve', () => {
	it('plans every scenario, proves each best and exits 0', async () => {
		const { out, code } = await solveCommand([file(smallPlant())]);
		expect(code).toBe(0);
		expect(out).toContain('allocation, base: 7270, proven best');
		expect(out).toContain('hour_value of L1, feb: 20 EUR/h');
		expect(out).toContain('2 of 2 plans proven best.');
	});

	it('says it as JSON, for one scenario', async () => {
		const { out } = await solveCommand([
			file(smallPlant()),
			'allocation',
			'--scenario',
			'base',
			'--json'
		]);
		const { programmes } = JSON.parse(out);
		expect(programmes).toHaveLength(1);
		expect(programmes[0]).toMatchObject({
			scenario: 'base',
			status: 'optimal',
			gap: 0,
			proven: true
		});
		// A plan lies a hair inside of what is required.
		expect(programmes[0].objective / 7270).toBeCloseTo(1, 9);
	});

	it('writes the workbook with its plans', async () => {
		const out = join(folder, 'out.json');
		await solveCommand([file(smallPlant()), '--out', out]);
		const { plans } = JSON.parse(readFileSync(out, 'utf8'));
		expect(plans.map(({ scenario }: { scenario: string }) => scenario)).toEqual([
			'base',
			'more_hours'
		]);
	});

	it('exits 1 where there is no plan, and says why', async () => {
		const pin = withQuantity('made', { value: { A: { L1: { jan: 2000 } } } });
		const { out, code } = await solveCommand([file(smallPlant(pin))]);
		expect(code).toBe(1);
		expect(out).toContain('hours_hold, L1, jan, by 100 h');
	});

	it('exits 2 at a name that there is not, naming the nearest', async () => {
		const { err, code } = await solveCommand([file(smallPlant()), 'alocation']);
		expect(code).toBe(2);
		expect(err).toContain('did you mean allocation?');
	});
});
