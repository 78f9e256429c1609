/** A programme in words: how large it is, and its objective and one of each requirement as sums. */
import { quantityOf, type Layout } from '$lib/engine/layout';
import type { Sample, Statement, Sum } from '$lib/programmes/inquiry/questions';
import { cellLabel } from './labels';
import { amountText } from './numbers';
import { texts } from './texts';

export interface StatementView {
	readonly size: string;
	readonly objective: SumView;
	readonly samples: readonly SumView[];
}

export interface SumView {
	/** What the sum is of. */
	readonly label: string;
	readonly terms: readonly string[];
	/** What it must come to; empty for the objective. */
	readonly bound: string;
}

export function statementView(
	statement: Statement,
	layout: Layout,
	locale: string,
	isLargest: boolean
): StatementView {
	const { decisions, requirements, factors, whole, apart, objective, samples } = statement;
	const count = (value: number) => amountText(value, '1', locale);
	return {
		size: texts.size(
			count(decisions),
			count(requirements),
			count(factors),
			whole > 0 ? count(whole) : '',
			apart > 1 ? count(apart) : ''
		),
		objective: {
			label: texts.objectiveOf(isLargest, labelOf(layout, objective.cell)),
			terms: termsOf(objective, layout, locale),
			bound: ''
		},
		samples: samples.map((sample) => ({
			label: labelOf(layout, sample.cell),
			terms: termsOf(sample, layout, locale),
			bound: boundOf(sample, locale)
		}))
	};
}

const labelOf = (layout: Layout, cell: number) =>
	quantityOf(layout, cell) ? cellLabel(layout, cell) : texts.partOfFormula;

function termsOf({ terms, more, constant }: Sum, layout: Layout, locale: string): string[] {
	const told = terms.map(({ cell, factor }, at) => {
		const size = amountText(Math.abs(factor), '1', locale, 3);
		const sign = factor < 0 ? '−' : at === 0 ? '' : '+';
		const times = size === '1' ? '' : `${size} × `;
		return `${sign}${sign && at > 0 ? ' ' : ''}${times}${cellLabel(layout, cell)}`;
	});
	if (more > 0) told.push(texts.moreTerms(amountText(more, '1', locale)));
	if (constant !== 0)
		told.push(`${constant < 0 ? '−' : '+'} ${amountText(Math.abs(constant), '1', locale)}`);
	return told;
}

const SIGNS = { most: '≤', least: '≥', equal: '=' } as const;

const boundOf = ({ way, bound, unit }: Sample, locale: string) =>
	`${SIGNS[way]} ${amountText(bound, unit, locale)}`;
