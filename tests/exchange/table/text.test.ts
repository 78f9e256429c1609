/** Texts of separated values: RFC 4180, encodings, what parts the columns, files that are broken. */
import { describe, expect, it } from 'vitest';
import { readCsv } from '$lib/exchange/csv/rows';
import { hasOpenDates, isDayFirst, readTableDate } from '$lib/exchange/table/dates';
import { importTable } from '$lib/exchange/table/import-table';
import { proposeMapping } from '$lib/exchange/table/propose';
import { textOfBytes } from '$lib/exchange/table/text-of-bytes';
import { dateText } from '$lib/workbook/date-text';
import { openShipped } from '../../reference/shipped';

function grid(text: string) {
	const read = readCsv(text, 'f.csv');
	if (!read.ok) throw new Error(read.message);
	return read.grid;
}
const table = (text: string) => {
	const { head, rows } = grid(text);
	return [head, ...rows.map(({ cells }) => cells)];
};

/** RFC 4180, "Common Format and MIME Type for Comma-Separated Values (CSV) Files", section 2, its own examples. */
describe('the rules of RFC 4180', () => {
	const plain = [
		['aaa', 'bbb', 'ccc'],
		['zzz', 'yyy', 'xxx']
	];
	it.each([
		['1: each record on a line of its own', 'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n', plain],
		['2: the last record may lack its line break', 'aaa,bbb,ccc\r\nzzz,yyy,xxx', plain],
		[
			'3: a header line of the same format',
			'field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
			[['field_name', 'field_name', 'field_name'], ...plain]
		],
		['5: fields may be enclosed in double quotes', '"aaa","bbb","ccc"\r\nzzz,yyy,xxx', plain],
		[
			'6: line breaks, quotes and commas within quotes',
			'"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
			[
				['aaa', 'b\r\nbb', 'ccc'],
				['zzz', 'yyy', 'xxx']
			]
		],
		[
			'7: a double quote within quotes is doubled',
			'"aaa","b""bb","ccc"\r\nzzz,yyy,xxx',
			[
				['aaa', 'b"bb', 'ccc'],
				['zzz', 'yyy', 'xxx']
			]
		]
	])('%s', (_, text, expected) => {
		expect(table(text)).toEqual(expected);
	});
});

describe('what parts the columns', () => {
	it.each([
		['product;List price, EUR/km\nPX15B;26,90\n', ';'],
		['product\tprice, net\nPX15B\t26,90\n', '\t'],
		['a,b;c,d\n1,2;3,4\n', ';'],
		['a,b\n"1;2",3\n"4;5",6\n', ','],
		['a|b\n1|2\n', '|']
	])('%j', (text, parter) => {
		expect(grid(text).parter).toBe(parter);
	});
});

describe('the text of a file', () => {
	const text = 'Maß;Größe\nÄ€;1\n';
	const utf16 = (little: boolean, mark: boolean) => {
		const codes = [...(mark ? '\uFEFF' : ''), ...text].map((letter) => letter.charCodeAt(0));
		return Uint8Array.from(
			codes.flatMap((code) => (little ? [code & 255, code >> 8] : [code >> 8, code & 255]))
		);
	};
	/** In Windows-1252 the euro is 0x80, ß 0xDF, ö 0xF6, Ä 0xC4 (WHATWG Encoding, index windows-1252). */
	const windows = Uint8Array.from(
		[...text].map((letter) => (letter === '€' ? 0x80 : letter.charCodeAt(0)))
	);
	it.each([
		['UTF-8', new TextEncoder().encode(text)],
		['UTF-8', new TextEncoder().encode(`\uFEFF${text}`)],
		['UTF-16', utf16(true, true)],
		['UTF-16', utf16(false, true)],
		['UTF-16', utf16(true, false)],
		['UTF-16', utf16(false, false)],
		['Windows-1252', windows]
	])('is read of %s', (encoding, bytes) => {
		expect(textOfBytes(bytes)).toEqual({ text, encoding });
	});
});

describe('a file that is broken', () => {
	const { workbook, layout } = openShipped('marram');
	const lines = (text: string) => {
		const read = grid(text);
		return importTable(read, proposeMapping(read, workbook), layout).problems.map(
			({ line, message }) => [line, message]
		);
	};

	it('that ends within a row says so of that row', () => {
		expect(lines('product;List price;Outside diameter\nPX15B;0,5;15,1\nPX22B;0,')).toEqual([
			[3, expect.stringMatching(/^The file ends within this row, after 2 of 3 columns\./)]
		]);
	});

	it('with a row that is parted by another mark says so of that row', () => {
		expect(lines('product,List price\nPX15B,0.5\nPX22B;0,7\nPX10B,0,3\nPB10B,0.4\n')).toEqual([
			[3, expect.stringMatching(/^There is no product "PX22B;0"/)],
			[
				4,
				expect.stringMatching(/^The row has 3 columns, the head 2\. Put a text that holds a comma/)
			]
		]);
	});
});

describe('a date in a table', () => {
	const read = (text: string, dayFirst: boolean | null = null) => {
		const date = readTableDate(text, dayFirst);
		return date === null ? null : date.ok ? dateText(date.date) : date.message;
	};
	it.each([
		['2027-05-06', null, '2027-05-06'],
		['2027-05-06 00:00:00', null, '2027-05-06'],
		['06.05.2027', null, '2027-05-06'],
		['6/5/2027', true, '2027-05-06'],
		['6/5/2027', false, '2027-06-05'],
		['6/5/2027', null, expect.stringContaining('has two readings')],
		['31.02.2027', null, expect.stringContaining('is no date')],
		['26,90', null, null]
	])('%s, day first %j', (text, dayFirst, expected) => {
		expect(read(text, dayFirst)).toEqual(expected);
	});

	it('is read by the whole column', () => {
		expect(isDayFirst(['6/5/2027', '13/5/2027'])).toBe(true);
		expect(isDayFirst(['6/5/2027', '5/13/2027'])).toBe(false);
		expect(isDayFirst(['6/5/2027'])).toBeNull();
		expect(isDayFirst(['6-5-2027', '13-5-2027'])).toBe(true);
	});

	it('may leave its order open, which points and years in front do not', () => {
		expect(hasOpenDates(['', 3, '2027-05-06', '06.05.2027'])).toBe(false);
		expect(hasOpenDates(['2027-05-06', '6/5/2027'])).toBe(true);
		expect(hasOpenDates(['06-05-2027'])).toBe(true);
	});
});
