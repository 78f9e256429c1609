/** The picture of a decided case: its finding, its sentence, its causes and its table, of the shipped plant. */
import { describe, expect, it } from 'vitest';
import type { Model } from '$lib/engine/model';
import { pictureOf } from '$lib/workbook/lookup';
import { auditOf, casesOf } from '$lib/ui/pictures/audit/audit';
import {
	auditSentence,
	auditTable,
	auditTitle,
	causesSentence
} from '$lib/ui/pictures/audit/audit-words';
import { apply, enter, openShipped, read } from '../../reference/shipped';

const CASE = 'Better gauging 2026';
const EN = 'en-GB';
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

function told(model: Model, id = CASE) {
	const source = {
		...{ layout: model.layout, results: model.results('base'), faults: model.faults('base') }
	} as never;
	const picture = pictureOf(model.workbook, 'audit')!;
	return { cases: casesOf(picture, source), audit: auditOf(picture, source, id) };
}
const number = (value: number) =>
	new Intl.NumberFormat(EN, { maximumFractionDigits: 0 }).format(value);

describe('what became of a decided case', () => {
	it('is said in one sentence: promised, so far, with the rest as planned, and payback', () => {
		const model = openShipped('marram');
		const { audit, cases } = told(model);
		expect(cases.map(({ id }) => id)).toEqual([CASE]);
		const [promised, soFar, likely] = ['promised_npv', 'npv_to_date', 'likely_npv'].map((name) =>
			read(model, name, CASE)
		);
		expect(plain(auditTitle(audit!, EN))).toBe(
			`Better gauging, decided October 2026 (invented): ${number(promised! - likely!)} EUR less than promised`
		);
		const years = (name: string) => read(model, name, CASE).toFixed(1);
		expect(plain(auditSentence(audit!, EN))).toBe(
			`The case promised a net present value of ${number(promised!)} EUR; booked up to March 2027 it has come to ${number(soFar!).replace('-', '\u2212')} EUR; with the rest as planned it comes to ${number(likely!)} EUR. It pays back in ${years('likely_payback')} years, promised was ${years('promised_payback')} years.`
		);
	});

	it('names its largest causes, and its table adds up', () => {
		const model = openShipped('marram');
		const { audit } = told(model);
		expect(plain(causesSentence(audit!, EN))).toMatch(
			/^Most of the difference: timing took [\d,]+ EUR off, investment took [\d,]+ EUR off, volume took [\d,]+ EUR off\.$/
		);
		// A single small one needs nobody to stand together with.
		expect(audit!.waterfall.steps.map(({ id }) => id)).not.toContain(null);
		const { rows } = auditTable(audit!);
		const amounts = rows.map(([, amount]) => Number(amount));
		const [soFar, rest] = amounts.slice(-2);
		const steps = amounts.slice(0, -3).reduce((sum, one) => sum + one, 0);
		expect(steps).toBeCloseTo(amounts.at(-3)!, 4);
		expect(soFar! + rest!).toBeCloseTo(amounts.at(-3)!, 4);
	});

	it('says where nothing is booked, and where the decision has no month', () => {
		const model = openShipped('marram');
		const months = model.layout.sets.get('audit_month')!.members.map(({ id }) => id);
		const lines = model.layout.sets.get('audit_line')!.members.map(({ id }) => id);
		apply(model, {
			...{ kind: 'set_inputs', scenario: 'base' },
			entries: [
				...months.flatMap((month) => [
					...lines.map((line) => ({
						quantity: 'booked_line',
						at: [CASE, line, month],
						value: null
					})),
					{ quantity: 'booked_outlay', at: [CASE, month], value: null }
				]),
				{ quantity: 'begun_in', at: [CASE], value: null },
				{ quantity: 'outlay_finished', at: [CASE], value: false }
			]
		});
		const nothing = told(model).audit!;
		expect(auditTitle(nothing, EN)).toContain('as promised');
		expect(auditSentence(nothing, EN)).toContain('nothing is booked of it yet');
		expect(auditSentence(nothing, EN)).toContain('It still pays back in 1.7');
		expect(causesSentence(nothing, EN)).toBe('');
		enter(model, ['decided_in', [CASE], '2026-10']);
		apply(model, {
			...{ kind: 'set_inputs', scenario: 'base' },
			entries: [{ quantity: 'decided_in', at: [CASE], value: null }]
		});
		const undated = told(model).audit!;
		expect(auditTitle(undated, EN)).toContain('the month of the decision is missing');
		expect(auditSentence(undated, EN)).toContain('Enter the month');
	});

	it('says no more than its name while it is computed', () => {
		const model = openShipped('marram');
		const source = { layout: model.layout, results: undefined, faults: undefined };
		const audit = auditOf(pictureOf(model.workbook, 'audit')!, source, CASE)!;
		expect(auditTitle(audit, EN)).toBe('Better gauging, decided October 2026 (invented)');
		expect(auditSentence(audit, EN)).toBe('');
	});

	it('is none where no case has this name', () => {
		expect(told(openShipped('marram'), 'another').audit).toBeNull();
	});
});
