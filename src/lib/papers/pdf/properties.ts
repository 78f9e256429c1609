/** The properties of the file as XMP (ISO 16684-1), with what is no mark-up in a title: the library writes titles as they are. */
import type PDFDocument from 'pdfkit';

const SIGNS: Readonly<Record<string, string>> = {
	'&': '&amp;',
	'<': '&lt;',
	'>': '&gt;',
	'"': '&quot;'
};
const safe = (text: string) => text.replace(/[&<>"]/g, (sign) => SIGNS[sign]!);

export interface Properties {
	readonly title: string;
	readonly subject?: string;
	readonly author?: string;
	readonly language: string;
	/** ISO 8601. */
	readonly made: string;
	readonly producer: string;
}

export function propertiesXml(properties: Properties): string {
	const { title, subject, author, language, made, producer } = properties;
	const alternative = (name: string, text: string | undefined) =>
		text === undefined
			? ''
			: `<dc:${name}><rdf:Alt><rdf:li xml:lang="x-default">${safe(text)}</rdf:li></rdf:Alt></dc:${name}>`;
	return [
		'<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">',
		'<dc:format>application/pdf</dc:format>',
		alternative('title', title),
		alternative('description', subject),
		author === undefined
			? ''
			: `<dc:creator><rdf:Seq><rdf:li>${safe(author)}</rdf:li></rdf:Seq></dc:creator>`,
		`<dc:language><rdf:Bag><rdf:li>${safe(language)}</rdf:li></rdf:Bag></dc:language>`,
		`<xmp:CreateDate>${safe(made)}</xmp:CreateDate>`,
		`<xmp:CreatorTool>${safe(producer)}</xmp:CreatorTool>`,
		`<pdf:Producer>${safe(producer)}</pdf:Producer>`,
		'</rdf:Description>'
	].join('');
}

/** In place of what the library would write. */
export function withProperties(doc: PDFDocument, properties: Properties): void {
	Object.assign(doc, { _addInfo: () => doc.appendXML(propertiesXml(properties)) });
}
