/** What is used of pdfkit 0.20, which brings no types. */
declare module 'pdfkit' {
	interface StructureElement {
		add(child: StructureElement | (() => void)): StructureElement;
		end(): void;
		readonly dictionary: { readonly data: Record<string, unknown> };
	}
	interface StructureOptions {
		alt?: string;
		lang?: string;
		title?: string;
		scope?: 'Row' | 'Column';
		/** Left, top, right and bottom, from the top of the page. */
		bbox?: [number, number, number, number];
		placement?: string;
	}
	interface Options {
		size: [number, number];
		margin: number;
		bufferPages: boolean;
		autoFirstPage: boolean;
		font: null;
		pdfVersion: string;
		subset: 'PDF/UA';
		tagged: boolean;
		lang: string;
		displayTitle: boolean;
		info: Record<string, string | Date>;
	}
	export default class PDFDocument {
		constructor(options: Partial<Options>);
		readonly info: Record<string, string | Date | undefined>;
		/** The font in use; `font` is the font library's own. */
		readonly _font: { readonly font: { hasGlyphForCodePoint(code: number): boolean } };
		readonly outline: { addItem(title: string): unknown };
		addPage(): this;
		switchToPage(page: number): this;
		registerFont(name: string, bytes: Uint8Array): this;
		font(name: string, size?: number): this;
		fontSize(size: number): this;
		widthOfString(text: string): number;
		text(text: string, x: number, y: number, options: { lineBreak: false; baseline: number }): this;
		fillColor(colour: string): this;
		strokeColor(colour: string): this;
		lineWidth(width: number): this;
		dash(length: number, options?: { space: number }): this;
		undash(): this;
		moveTo(x: number, y: number): this;
		lineTo(x: number, y: number): this;
		rect(x: number, y: number, width: number, height: number): this;
		circle(x: number, y: number, radius: number): this;
		fill(): this;
		stroke(): this;
		save(): this;
		restore(): this;
		markContent(tag: 'Artifact', options: { type: 'Pagination' | 'Layout' }): this;
		endMarkedContent(): this;
		struct(type: string, options?: StructureOptions): StructureElement;
		addStructure(element: StructureElement): this;
		appendXML(xml: string): void;
		on(event: 'data', listener: (chunk: Uint8Array) => void): this;
		on(event: 'end', listener: () => void): this;
		on(event: 'error', listener: (error: Error) => void): this;
		end(): void;
	}
	export type { StructureElement };
}
