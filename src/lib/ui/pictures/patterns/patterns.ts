/**
 * Shift patterns as columns, and the small week above each: which of its hours are worked.
 */
import type { Layout } from '$lib/engine/layout';
import type { Picture } from '$lib/workbook/schema';
import { formatNumber } from '../../format';
import { sourceOf, type Open } from '../../figure/open';
import { read, type Source } from '../../figure/read';
import type { Side, SideRow } from './sides';
import { midSentence } from '../../figure/words';

export type PatternsPicture = Extract<Picture, { kind: 'patterns' }>;

export function patternSides(open: Open, picture: PatternsPicture, scenario: string): Side[] {
	const source = sourceOf(open, scenario);
	return (open.layout.sets.get(picture.pattern)?.members ?? []).map(({ id, label }, ordinal) => ({
		...{ id, title: id, aside: label && label !== id ? label : '' },
		...{ source, scenario, at: { [picture.pattern]: ordinal } }
	}));
}

export function scenarioSides(open: Open): Side[] {
	return open.layout.workbook.scenarios.map(({ id, title }) => ({
		...{ id, title, aside: '', source: sourceOf(open, id), scenario: id, at: {} }
	}));
}

/** The pattern to compare with at first: what the picture says, else the first. */
export function firstAgainst(layout: Layout, picture: PatternsPicture): string {
	const members = layout.sets.get(picture.pattern)?.members ?? [];
	return members.find(({ id }) => id === picture.against)?.id ?? members[0]?.id ?? '';
}

/** The finding: who makes the most metres, against whom, and what a metre then costs. */
export function patternsTitle(
	picture: PatternsPicture,
	sides: readonly Side[],
	against: string,
	locale: string
): string {
	const from = sides.find((side) => side.id === against);
	const metres = (side: Side) => read(side.source, picture.metres, side.at);
	const most = sides
		.filter((side) => metres(side).kind === 'value')
		.sort((a, b) => metres(b).value - metres(a).value)[0];
	if (!from || !most || metres(from).kind !== 'value')
		return `${from?.title ?? 'No pattern'} has no good metres to compare with`;
	const here = metres(from).value;
	if (metres(most).value <= here) return `No pattern makes more good metres than ${from.title}`;
	const more =
		here > 0 ? `${formatNumber((metres(most).value / here - 1) * 100, 0, locale)} %` : '';
	const said = `${most.title} makes ${more} more good metres than ${from.title}`.replace('  ', ' ');
	const [cost, before] = [most, from].map((side) => read(side.source, picture.cost, side.at));
	if (cost?.kind !== 'value' || before?.kind !== 'value') return said;
	const label = midSentence(cost.quantity?.quantity.label ?? 'cost');
	const step = cost.value / before.value - 1;
	const size = formatNumber(Math.abs(step) * 100, 1, locale);
	if (!Number.isFinite(step)) return said;
	if (size === formatNumber(0, 1, locale)) return `${said}, at the same ${label}`;
	return `${said}, at ${size} % ${step < 0 ? 'less' : 'more'} for ${label}`;
}

/** The finding between scenarios: who has most of the first figure. */
export function scenariosTitle(
	sides: readonly Side[],
	rows: readonly SideRow[],
	against: string
): string {
	const first = rows[0];
	const cells = first?.cells ?? [];
	const value = (i: number) =>
		cells[i]?.reading.kind === 'value' ? (cells[i]?.reading.value ?? -Infinity) : -Infinity;
	const top = sides.map((_, i) => i).sort((a, b) => value(b) - value(a))[0] ?? -1;
	const from = sides.find((side) => side.id === against);
	if (!first || value(top) === -Infinity) return 'Scenarios side by side';
	const label = midSentence(first.label);
	const cell = cells[top];
	if (sides[top]?.id === against || !cell?.difference)
		return `No scenario has more ${label} than ${from?.title ?? ''}`;
	return `${sides[top]?.title} has the most ${label}, ${cell.difference} ${first.unit} against ${from?.title ?? ''}`;
}

/** Figures in all, for somebody who cannot see the table. */
export function sidesSummary(sides: readonly Side[], rows: readonly SideRow[]): string {
	return rows
		.map(({ label, unit, cells }) => {
			const each = cells.map((cell, i) => `${sides[i]?.title} ${cell.text}`);
			return `${label}${unit ? ` in ${unit}` : ''}: ${each.join(', ')}`;
		})
		.join('. ');
}

/** Worked hours by day, as runs: [first hour, hours]; null where the workbook does not say. */
export function weekRuns(
	source: Source,
	picture: PatternsPicture,
	pattern: number
): (readonly [from: number, length: number])[][] | null {
	const { hour, worked } = picture;
	if (hour === undefined || worked === undefined) return null;
	const hours = source.layout.sets.get(hour)?.members.length ?? 0;
	const days: [number, number][][] = [];
	for (let day = 0; day * 24 < hours; day++) {
		const runs: [number, number][] = [];
		for (let at = 0; at < 24; at++) {
			const place = { [picture.pattern]: pattern, [hour]: day * 24 + at };
			const reading = read(source, worked, place);
			if (reading.kind !== 'value' || reading.value === 0) continue;
			const last = runs.at(-1);
			if (last && last[0] + last[1] === at) last[1]++;
			else runs.push([at, 1]);
		}
		days.push(runs);
	}
	return days;
}
