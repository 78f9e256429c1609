/** The words of a paper, in reading order. */
import { describe, expect, it } from 'vitest';
import { heading, list, paperText, paragraph, type Paper } from '$lib/papers/paper';

describe('the words of a paper', () => {
	it('come in reading order, with the words inside of figures', () => {
		const paper: Paper = {
			title: 'A case',
			language: 'en',
			blocks: [
				heading('Figures'),
				paragraph('It pays.', 'strong'),
				list(['one', 'two']),
				{
					kind: 'table',
					caption: 'By year',
					columns: [{ title: 'Year' }, { title: 'Cash', isNumber: true }],
					rows: [{ cells: ['0', '−510'] }],
					note: 'In kEUR.'
				},
				{
					kind: 'figure',
					alt: 'A line that rises',
					drawing: {
						width: 10,
						height: 10,
						marks: [
							{ kind: 'dot', x: 1, y: 1, ink: 'ink' },
							{ kind: 'text', x: 1, y: 1, text: 'year 3' }
						]
					}
				}
			]
		};
		expect(paperText(paper).split('\n')).toEqual([
			'A case',
			'Figures',
			'It pays.',
			'one',
			'two',
			'By year',
			'Year\tCash',
			'0\t−510',
			'In kEUR.',
			'A line that rises',
			'year 3'
		]);
	});
});
