import { describe, expect, it } from 'vitest';
import { csvOf, guarded } from '$lib/exchange/csv/write';

describe('a table taken along', () => {
	it.each(['=1+1', '+SUM(A1)', '-2+3', '@cmd', '\tx', '\r=1'])(
		'keeps %j from being run as a formula',
		(text) => {
			expect(guarded(text)).toBe(`'${text}`);
		}
	);
	it.each(['-5', '+0.4', '-1.5e-7', '.5', 'PX15B', '5x24', 'a=b'])('leaves %j alone', (text) => {
		expect(guarded(text)).toBe(text);
	});
	it('guards heads and cells, quotes what needs it, and says that it is UTF-8', () => {
		const table = {
			caption: 'Cost',
			columns: ['Product', '=HYPERLINK("x")'],
			rows: [
				['A, 15 mm', -0.25],
				['-', null],
				['two\nlines', 1e-7]
			]
		};
		expect(csvOf(table)).toBe(
			'\uFEFFProduct,"\'=HYPERLINK(""x"")"\r\n"A, 15 mm",-0.25\r\n\'-,\r\n"two\nlines",1e-7\r\n'
		);
	});
});
