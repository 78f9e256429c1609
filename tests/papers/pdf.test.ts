/**
 * PDFs of papers, read back by another library: every word, the tree of structure, and what PDF/UA-1 asks of a file as
 * far as a machine can tell. Numbers of clauses: ISO 14289-1:2014, and ISO 32000-1:2008 where it says so. From memory
 * of both standards; no checker of them is to be had from the registry for this Node.
 */
import { getDocumentProxy } from 'unpdf';
import { beforeAll, describe, expect, it } from 'vitest';
import { heading, list, paperText, paragraph, type Paper } from '$lib/papers/paper';
import { paperPdf, type Pdf } from '$lib/papers/pdf/pdf';
import { readFontFiles } from '$lib/server/papers/font-files';

const ROWS = 90;
const paper: Paper = {
	title: 'A case & its "question" <2027>',
	language: 'en',
	subject: 'Line 8 & co.',
	author: 'A. Person',
	foot: 'Revision 7',
	blocks: [
		paragraph('It would not earn its cost of capital: −132,853 EUR.', 'strong'),
		heading('The options'),
		paragraph('Efficient offices. '.repeat(240)),
		list(['First, ≤ 5 km', `Second ${'and more '.repeat(60)}`]),
		heading('Cash', 3),
		{
			kind: 'table',
			caption: 'Cash by year',
			columns: [{ title: 'Year' }, { title: 'Cash, kEUR', isNumber: true }, { title: 'Remark' }],
			rows: [
				{ kind: 'group', cells: ['Without'] },
				...Array.from({ length: ROWS }, (_, i) => ({ cells: [`Year ${i}`, `−${i},5`, ''] })),
				{ kind: 'total', cells: ['Total', '1,234.5', 'm²'] }
			],
			note: 'Not discounted.'
		},
		{
			kind: 'figure',
			caption: 'Running total',
			alt: 'From −510 in year 0 to +287 in year 6.',
			drawing: {
				width: 480,
				height: 160,
				marks: [
					{
						kind: 'line',
						points: [
							[0, 160],
							[480, 0]
						],
						ink: 'first',
						isDashed: true
					},
					{ kind: 'bar', x: 10, y: 10, width: 30, height: 90, ink: 'bad' },
					{ kind: 'dot', x: 100, y: 80, ink: 'second' },
					{ kind: 'text', x: 240, y: 80, text: 'year 3', at: 'middle' }
				]
			}
		}
	]
};
const made = new Date('2026-11-30T12:00:00Z');
const fonts = readFontFiles();

interface Node {
	role?: string;
	alt?: string;
	lang?: string;
	type?: string;
	id?: string;
	children?: Node[];
}
interface Item {
	str?: string;
	type?: string;
	id?: string;
	tag?: string;
}

describe('a PDF of a paper', () => {
	let pdf: Pdf;
	let raw: string;
	let doc: Awaited<ReturnType<typeof getDocumentProxy>>;
	let pages: Item[][];
	let trees: Node[];
	beforeAll(async () => {
		pdf = await paperPdf(paper, { fonts, made });
		raw = Buffer.from(pdf.bytes).toString('latin1');
		doc = await getDocumentProxy(pdf.bytes.slice());
		pages = [];
		trees = [];
		for (let i = 1; i <= doc.numPages; i++) {
			const page = await doc.getPage(i);
			pages.push((await page.getTextContent({ includeMarkedContent: true })).items as Item[]);
			trees.push((await page.getStructTree()) as Node);
		}
	});

	/** Words by the mark that they lie in, those beside the text left out. */
	function tagged(items: readonly Item[]) {
		const stack: string[] = [];
		const words = new Map<string, string>();
		const beside: string[] = [];
		for (const { type, tag, id, str } of items) {
			if (type?.startsWith('beginMarkedContent'))
				stack.push(tag === 'Artifact' ? 'Artifact' : (id ?? ''));
			else if (type === 'endMarkedContent') stack.pop();
			else if (str) {
				const top = stack.at(-1);
				if (top === 'Artifact') beside.push(str);
				else words.set(top ?? '', (words.get(top ?? '') ?? '') + str);
			}
		}
		return { words, beside };
	}
	const walk = (node: Node, seen: (node: Node) => void): void => {
		seen(node);
		node.children?.forEach((child) => walk(child, seen));
	};

	it('holds every word of the paper, in its order, and replaces none', () => {
		const plain = (text: string) => text.replace(/\s+/g, '');
		const inOrder = trees.flatMap((tree, page) => {
			const { words } = tagged(pages[page]!);
			const found: string[] = [];
			walk(tree, ({ id }) => id !== undefined && found.push(words.get(id) ?? ''));
			return found;
		});
		const said = plain(inOrder.join('')).replaceAll('•', '');
		// The alternative of a figure is no part of its letters.
		const figure = paper.blocks.at(-1)!;
		const expected = paperText(paper).replace(figure.kind === 'figure' ? figure.alt : '', '');
		expect(said).toBe(plain(expected));
		expect(pdf.missing).toEqual([]);
	});

	it('7.1: all content is tagged or an artifact, and the file says that it is tagged', async () => {
		expect(await doc.getMarkInfo()).toMatchObject({ Marked: true, Suspects: false });
		for (const [page, items] of pages.entries()) {
			expect(tagged(items).words.has(''), `page ${page + 1}`).toBe(false);
			const ids = new Set<string>();
			walk(trees[page]!, ({ id }) => id !== undefined && ids.add(id));
			for (const id of tagged(items).words.keys()) expect([...ids]).toContain(id);
		}
	});

	it('7.1: shows its title, and has it in XMP with the identifier of PDF/UA-1 (5)', async () => {
		const { info } = (await doc.getMetadata()) as unknown as { info: Record<string, unknown> };
		expect(info).toMatchObject({
			Title: paper.title,
			Author: 'A. Person',
			Subject: 'Line 8 & co.'
		});
		expect(await doc.getViewerPreferences()).toMatchObject({ DisplayDocTitle: true });
		const xmp = Buffer.from(raw, 'latin1').toString('utf8');
		expect(xmp).toContain('<pdfuaid:part>1</pdfuaid:part>');
		expect(xmp).toContain('A case &amp; its &quot;question&quot; &lt;2027&gt;');
		expect(xmp).toContain('<rdf:li>A. Person</rdf:li>');
	});

	it('7.2: names its language', async () => {
		const { info } = (await doc.getMetadata()) as unknown as { info: Record<string, unknown> };
		expect(info.Language).toBe('en');
	});

	it('7.3: a figure has its words, and its place', () => {
		const figures: Node[] = [];
		for (const tree of trees) walk(tree, (node) => node.role === 'Figure' && figures.push(node));
		expect(figures.map(({ alt }) => alt)).toEqual(['From −510 in year 0 to +287 in year 6.']);
		expect(raw).toMatch(/\/S \/Figure[\s\S]{0,400}\/BBox \[/);
	});

	it('7.4: headings come in order, from the first level on, none left out', () => {
		const levels: number[] = [];
		for (const tree of trees)
			walk(tree, ({ role }) => {
				const level = /^H(\d)$/.exec(role ?? '')?.[1];
				if (level) levels.push(Number(level));
			});
		expect(levels).toEqual([1, 2, 3]);
	});

	it('7.5: heads of tables say what they are the head of, and rows are equally long', () => {
		const heads = raw.match(/\/S \/TH\n[\s\S]*?endobj/g) ?? [];
		// Three columns; a group, the rows and the total.
		expect(heads).toHaveLength(3 + 1 + ROWS + 1);
		for (const head of heads) expect(head).toMatch(/\/Scope \/(Row|Column)/);
		expect(raw.match(/\/ColSpan 3/g)).toHaveLength(1);
		// An empty cell is no content of a page, so rows are counted where they are written.
		const rows = raw.match(/\/S \/TR\n[\s\S]*?endobj/g) ?? [];
		expect(rows).toHaveLength(1 + 1 + ROWS + 1);
		for (const row of rows) {
			const cells = /\/K \[([^\]]*)\]/.exec(row)?.[1]?.match(/\d+ 0 R/g) ?? [];
			expect([1, 3]).toContain(cells.length);
		}
	});

	it('7.6: lists are lists, with labels and bodies', () => {
		const roles: string[] = [];
		for (const tree of trees)
			walk(tree, ({ role, children }) => {
				if (role === 'LI') roles.push((children ?? []).map((child) => child.role).join(' '));
			});
		expect(roles[0]).toBe('Lbl LBody');
		expect(roles).toHaveLength(2);
	});

	it('7.8, 14.8.2.2 of ISO 32000-1: numbers of pages and repeated heads are artifacts', () => {
		expect(doc.numPages).toBeGreaterThan(2);
		pages.forEach((items, page) => {
			const beside = tagged(items).beside.join(' ');
			expect(beside).toContain(`${page + 1} of ${doc.numPages}`);
			expect(beside).toContain('Revision 7');
		});
		const repeated = pages.filter((items) => tagged(items).beside.join(' ').includes('Cash, kEUR'));
		expect(repeated.length).toBeGreaterThanOrEqual(1);
		expect(raw).toContain('/Tabs /S');
	});

	it('7.21: every font is embedded, and each of its signs has its letter', () => {
		const fontsUsed = raw.match(/\/Type \/FontDescriptor[\s\S]*?endobj/g) ?? [];
		expect(fontsUsed.length).toBeGreaterThanOrEqual(2);
		for (const font of fontsUsed) expect(font).toMatch(/\/FontFile[23]? \d+ 0 R/);
		expect(raw.match(/\/Subtype \/Type0/g)?.length).toBe(raw.match(/\/ToUnicode \d+ 0 R/g)?.length);
		expect(raw).not.toMatch(/\/BaseFont \/(Helvetica|Times|Courier)/);
	});

	it('cuts no row: each stands on one page', () => {
		const rowsOn = trees.map((tree) => {
			const found: string[] = [];
			walk(tree, (node) => {
				if (node.role !== 'TR') return;
				const ids: string[] = [];
				walk(node, ({ id }) => id !== undefined && ids.push(id));
				found.push(`${ids.length}`);
			});
			return found.length;
		});
		// A row on two pages would be in both trees.
		expect(rowsOn.reduce((sum, rows) => sum + rows, 0)).toBe(1 + 1 + ROWS + 1);
	});

	it('is the same to the byte for the same paper and time, and another on letter', async () => {
		expect(Buffer.from((await paperPdf(paper, { fonts, made })).bytes).equals(pdf.bytes)).toBe(
			true
		);
		const letter = await paperPdf(paper, { fonts, made, format: 'letter' });
		expect(Buffer.from(letter.bytes).toString('latin1')).toContain('/MediaBox [0 0 612 792]');
		expect(raw).toContain('/MediaBox [0 0 595.28 841.89]');
	});

	it('tells the signs that no font has, and shows that something stood there', async () => {
		const odd = await paperPdf(
			{ title: 'T', language: 'en', blocks: [paragraph('量 stays')] },
			{ fonts, made }
		);
		expect(odd.missing).toEqual(['量']);
		const read = await getDocumentProxy(odd.bytes);
		const items = (await (await read.getPage(1)).getTextContent()).items as Item[];
		expect(items.map(({ str }) => str).join('')).toContain('? stays');
	});
});
