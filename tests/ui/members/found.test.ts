import { describe, expect, it } from 'vitest';
import { foundMembers } from '$lib/ui/members/found';

const members = [
	{ id: 'PX15B', label: 'Barrier 15 × 2.5' },
	{ id: 'PX15P', label: 'Plain 15 × 2.5' },
	{ id: 'PX22B', label: 'Barrier 22 × 3', note: 'for Süd alone' }
];
const ids = (typed: string) => foundMembers(members, typed).map(({ id }) => id);

describe('members of a long list', () => {
	it('are found by every word, in name, label or note, without capitals and marks', () => {
		expect(ids('15')).toEqual(['PX15B', 'PX15P']);
		expect(ids('barrier px15')).toEqual(['PX15B']);
		expect(ids('SUD')).toEqual(['PX22B']);
		expect(ids('barrier 40')).toEqual([]);
	});

	it('are all there where nothing is typed', () => {
		expect(foundMembers(members, '  ')).toBe(members);
	});
});
