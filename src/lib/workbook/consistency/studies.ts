/**
 * Studies: names that differ, ranges that are ones, and what a kind asks besides. That what a study asks
 * about exists is not asked here: a study outlives it, see `study-gaps.ts`.
 */
import { partsAt, partsOf, type StudyRange } from '../study-parts';
import type { Study } from '../study-schema';
import type { Findings } from './findings';

type Path = readonly PropertyKey[];

export function checkStudies(findings: Findings): void {
	const seen = new Set<string>();
	(findings.workbook.studies ?? []).forEach((study, i) => {
		const path = ['studies', i];
		if (seen.has(study.name))
			findings.add(
				[...path, 'name'],
				'duplicate-study',
				`there are two studies named ${study.name}`,
				'Give one of them another name.'
			);
		seen.add(study.name);
		checkSettings(findings, study, path);
	});
}

function checkSettings(findings: Findings, study: Study, path: Path): void {
	const { ranges, check } = partsOf(study);
	for (const { part, place } of partsAt<StudyRange>(study, ranges)) {
		const [from, to] = 'low' in part ? [part.low, part.high] : [part.from, part.to];
		if (from === to) emptyRange(findings, [...path, ...place], from);
	}
	check?.(findings, study, path);
}

function emptyRange(findings: Findings, path: Path, end: number): void {
	findings.add(
		path,
		'empty-range',
		`both ends of the range are ${end}`,
		'Give two different values.'
	);
}
