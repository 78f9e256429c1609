/**
 * Fits: names that differ, and what their form asks for. That quantities and members exist is not asked here: points
 * outlive them, and the page says so.
 */
import type { FitForm } from '../calibration-schema';
import type { Findings } from './findings';

export function checkCalibrations(findings: Findings): void {
	const seen = new Set<string>();
	(findings.workbook.calibrations ?? []).forEach((one, i) => {
		const add = (field: string, code: string, problem: string, remedy: string) =>
			findings.add(['calibrations', i, field], code, problem, remedy);
		if (seen.has(one.name))
			add(
				'name',
				'duplicate-calibration',
				`there are two fits named ${one.name}`,
				'Give one of them another name.'
			);
		seen.add(one.name);
		const hasX = ['line', 'proportion', 'ratio'].includes(one.form);
		if (hasX && !one.x)
			add('x', 'no-x', `the fit ${one.title} has no x`, 'Say what stands along it.');
		if (one.form === 'shares' && !one.over)
			add(
				'over',
				'no-over',
				`the fit ${one.title} says of no set that its shares add up to 1`,
				'Name the set in "over".'
			);
		const fits = PARAMETERS[one.form];
		const wrong = one.gives.find(({ parameter }) => !fits.includes(parameter));
		if (wrong)
			add(
				'gives',
				'no-parameter',
				`the fit ${one.title} gives no ${wrong.parameter}`,
				`Take ${fits.join(' or ')}.`
			);
	});
}

const PARAMETERS: Readonly<Record<FitForm, readonly string[]>> = {
	line: ['intercept', 'slope'],
	proportion: ['slope'],
	ratio: ['ratio'],
	mean: ['mean'],
	deviation: ['deviation', 'mean'],
	shares: ['share']
};
