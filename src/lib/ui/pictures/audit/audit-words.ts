/** What the picture of a decided case says: its finding, its sentence, its causes and its table. */
import type { PlainTable } from '$lib/exchange/csv/write';
import { plain, type Reading } from '../../figure/read';
import { formatNumber } from '../../format';
import { amountWords } from '../waterfall/waterfall-words';
import type { Audit } from './audit';
import { texts } from './texts';

const NAMED = 3;

export function auditTitle(
	{ decided, promised, likely, decidedIn, waterfall }: Audit,
	locale: string
) {
	// A case that was just decided is computed in a moment.
	if (likely.kind === 'pending') return decided.label;
	if (likely.kind !== 'value')
		return decidedIn
			? texts.noValue(waterfall.toLabel, likely.because)
			: texts.noDecision(decided.label);
	if (promised.kind !== 'value') return texts.noValue(waterfall.fromLabel, promised.because);
	const off = likely.value - promised.value;
	return Math.abs(off) < 0.5
		? texts.asPromised(decided.label)
		: texts.title(decided.label, amountWords(Math.abs(off), waterfall.unit, locale), off > 0);
}

/** "The case promised …; booked up to March 2027 it has come to …; with the rest as planned it comes to …. It pays back …." */
export function auditSentence(audit: Audit, locale: string): string {
	const { promised, soFar, likely, lastBooked, decidedIn, waterfall } = audit;
	if (likely.kind !== 'value')
		return decidedIn || likely.kind === 'pending' ? '' : texts.enterDecision;
	const amount = ({ value }: Reading) => amountWords(value, waterfall.unit, locale);
	const has = lastBooked !== '' || Math.abs(soFar.value) >= 0.5;
	const parts = [
		texts.promised(amount(promised)),
		has ? texts.soFar(amount(soFar), lastBooked) : texts.nothing,
		texts.likely(amount(likely))
	];
	return [`${parts.join('; ')}.`, paybackWords(audit, locale)].filter(Boolean).join(' ');
}

function paybackWords({ payback, paybackPromised }: Audit, locale: string): string {
	const years = ({ value }: Reading) => texts.years(formatNumber(value, 1, locale));
	if (paybackPromised.kind !== 'value') return '';
	return `${payback.kind === 'value' ? texts.payback(years(payback), years(paybackPromised)) : texts.noPayback(years(paybackPromised))}.`;
}

/** The largest causes in one sentence; empty where nothing has moved. */
export function causesSentence({ waterfall }: Audit, locale: string): string {
	const named = waterfall.steps
		.filter(({ id, amount }) => id !== null && Math.abs(amount) >= 0.5)
		.slice(0, NAMED)
		.map(({ label, amount }) =>
			(amount < 0 ? texts.tookOff : texts.added)(
				label,
				amountWords(Math.abs(amount), waterfall.unit, locale)
			)
		);
	return named.length === 0 ? '' : `${texts.most(named.join(', '))}.`;
}

export const auditSummary = (audit: Audit, locale: string): string =>
	[auditSentence(audit, locale), causesSentence(audit, locale)].filter(Boolean).join(' ');

export function auditTable({ decided, waterfall, soFar, rest }: Audit): PlainTable {
	const { from, to, steps, unit } = waterfall;
	const reads = (amount: number) =>
		Math.abs(amount) < 0.5 ? '' : amount > 0 ? texts.better : texts.worse;
	const all = steps.flatMap((step) => (step.id === null ? step.holds : [step]));
	return {
		caption: decided.label,
		columns: [texts.cause, [texts.value, unit].filter(Boolean).join(', '), texts.reads],
		rows: [
			[waterfall.fromLabel, plain(from), ''],
			...all.map(({ label, amount }) => [label, amount, reads(amount)]),
			[waterfall.toLabel, plain(to), ''],
			[texts.sofarRow, plain(soFar), ''],
			[texts.rest, plain(rest), '']
		]
	};
}
