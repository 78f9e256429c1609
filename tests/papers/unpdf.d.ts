/** What is used of unpdf, whose own types bring the whole of the library behind it. */
declare module 'unpdf' {
	interface Item {
		readonly str?: string;
	}
	interface Page {
		getTextContent(options?: {
			includeMarkedContent: boolean;
		}): Promise<{ readonly items: readonly (Item | { readonly type: string })[] }>;
		getStructTree(): Promise<unknown>;
	}
	interface Proxy {
		readonly numPages: number;
		getPage(number: number): Promise<Page>;
		getMarkInfo(): Promise<unknown>;
		getMetadata(): Promise<unknown>;
		getViewerPreferences(): Promise<unknown>;
	}
	export function getDocumentProxy(bytes: Uint8Array): Promise<Proxy>;
}
