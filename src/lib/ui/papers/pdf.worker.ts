/** Makes a PDF of a paper, away from the page. It lives for one paper. */
import type { Paper } from '$lib/papers/paper';
import type { FontFiles } from '$lib/papers/pdf/letters';
import { paperPdf, type Pdf } from '$lib/papers/pdf/pdf';
import type { Format } from '$lib/papers/pdf/sheets';

export interface PaperRequest {
	readonly paper: Paper;
	readonly fonts: FontFiles;
	readonly format: Format;
	/** Milliseconds since 1970. */
	readonly made: number;
}
export type PaperAnswer = Pdf | { readonly failed: string };

const scope = self as unknown as {
	onmessage: ((event: MessageEvent<PaperRequest>) => void) | null;
	postMessage(answer: PaperAnswer): void;
};

scope.onmessage = ({ data: { paper, fonts, format, made } }) => {
	void paperPdf(paper, { fonts, format, made: new Date(made) }).then(
		(pdf) => scope.postMessage(pdf),
		(error: unknown) =>
			scope.postMessage({ failed: error instanceof Error ? error.message : String(error) })
	);
};
