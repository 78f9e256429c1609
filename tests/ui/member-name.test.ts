/** What members are called where their values stand. */
import { describe, expect, it } from 'vitest';
import type { Member } from '$lib/workbook/schema';
import { cutToRoom, memberName } from '$lib/ui/member-name';

const names = (members: Member[]) => {
	const set = { name: 's', label: 'S', plural: 'S', members };
	return members.map((member) => memberName(set, member));
};

describe('a member is called', () => {
	it('by its label where all labels of its set are short', () => {
		expect(names([{ id: 'week', label: 'week crews' }, { id: 'L1' }])).toEqual([
			'week crews',
			'L1'
		]);
	});
	it('by its id as the trade says it where a label is long, but never by an id of the workbook’s own', () => {
		const long = { id: '5x24', label: 'three shifts, on five days a week' };
		const own = { id: 'by_customer', label: 'ex works, customer pays the freight' };
		expect(names([long, own, { id: 'full_rota' }])).toEqual([
			'5x24',
			'ex works, customer pays the freight',
			'full_rota'
		]);
	});
	it('as far as there is room, by whole words', () => {
		expect(cutToRoom('ex works, customer pays the freight')).toBe('ex works, customer…');
		expect(cutToRoom('one rota, full crew in every hour')).toBe('one rota, full crew…');
		expect(cutToRoom('two shifts')).toBe('two shifts');
	});
});
