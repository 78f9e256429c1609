/** A set that is marked as time: its members are months, each right after the one before. */
import { monthId, monthNumber } from '../months';
import type { SetDefinition } from '../schema';
import type { Findings } from './findings';

export function checkMonths(findings: Findings, set: SetDefinition, i: number): void {
	let before: number | null = null;
	for (const [k, { id }] of set.members.entries()) {
		const number = monthNumber(id);
		const path = ['sets', i, 'members', k, 'id'];
		if (number === null)
			return findings.add(
				path,
				'no-month',
				`${id} is no month, and ${set.name} is marked as months`,
				'Write year and month, like "2027-04", or take "time" out.'
			);
		if (before !== null && number !== before + 1)
			return findings.add(
				path,
				'months-apart',
				`${id} does not follow ${monthId(before)}`,
				`After ${monthId(before)} comes ${monthId(before + 1)}: put the months in order, without gaps.`
			);
		before = number;
	}
	if (set.cyclic)
		findings.add(
			['sets', i, 'cyclic'],
			'cyclic-months',
			`dated months do not begin again`,
			'Take "cyclic" out, or "time".'
		);
}
