import { describe, expect, it } from 'vitest';
import { paperRules } from '$lib/ui/shell/paper';

const paper = {
	workbook: 'Marram Coil Works',
	page: 'Shifts',
	scenarios: ['Base', 'New line'],
	revision: 7,
	date: '30 November 2026'
};

describe('the margins of a printed page', () => {
	it('say what is printed, of which scenario and revision, when, and which page it is', () => {
		const rules = paperRules(paper);
		expect(rules).toContain('@top-left { content: "Marram Coil Works: Shifts"');
		expect(rules).toContain('@top-right { content: "30 November 2026"');
		expect(rules).toContain('@bottom-left { content: "Base; scenario shown: New line, revision 7"');
		expect(rules).toContain('content: "Page " counter(page) " of " counter(pages)');
	});
	it('name no revision of a workbook that is on no server, and no page that has no name', () => {
		const rules = paperRules({ ...paper, page: '', scenarios: ['Base'], revision: null });
		expect(rules).toContain('@top-left { content: "Marram Coil Works"');
		expect(rules).toContain('@bottom-left { content: "Base"');
	});
	it('hold titles with quotes, backslashes and line ends, which end no rule', () => {
		const rules = paperRules({ ...paper, workbook: 'A "b" \\ c\n</style>', page: '' });
		expect(rules).toContain('content: "A \\"b\\" \\\\ c  /style>"');
	});
});
