/**
 * Asks for a PDF of a paper. The page makes it itself: that works without a server, and for a workbook that is on none.
 * What it takes (the library, the font) comes with the first paper.
 */
import type { Paper } from '$lib/papers/paper';
import type { Format } from '$lib/papers/pdf/sheets';
import cyrillic4 from '@fontsource/ysabeau-office/files/ysabeau-office-cyrillic-400-normal.woff?url';
import cyrillic6 from '@fontsource/ysabeau-office/files/ysabeau-office-cyrillic-600-normal.woff?url';
import greek4 from '@fontsource/ysabeau-office/files/ysabeau-office-greek-400-normal.woff?url';
import greek6 from '@fontsource/ysabeau-office/files/ysabeau-office-greek-600-normal.woff?url';
import latin4 from '@fontsource/ysabeau-office/files/ysabeau-office-latin-400-normal.woff?url';
import latin6 from '@fontsource/ysabeau-office/files/ysabeau-office-latin-600-normal.woff?url';
import latinExt4 from '@fontsource/ysabeau-office/files/ysabeau-office-latin-ext-400-normal.woff?url';
import latinExt6 from '@fontsource/ysabeau-office/files/ysabeau-office-latin-ext-600-normal.woff?url';
import math4 from '@fontsource/ysabeau-office/files/ysabeau-office-math-400-normal.woff?url';
import math6 from '@fontsource/ysabeau-office/files/ysabeau-office-math-600-normal.woff?url';
import symbols4 from '@fontsource/ysabeau-office/files/ysabeau-office-symbols-400-normal.woff?url';
import symbols6 from '@fontsource/ysabeau-office/files/ysabeau-office-symbols-600-normal.woff?url';
import vietnamese4 from '@fontsource/ysabeau-office/files/ysabeau-office-vietnamese-400-normal.woff?url';
import vietnamese6 from '@fontsource/ysabeau-office/files/ysabeau-office-vietnamese-600-normal.woff?url';
import { pdfTexts as texts } from './pdf-texts';
import type { PaperAnswer, PaperRequest } from './pdf.worker';
import PaperWorker from './pdf.worker?worker';

/** The most used signs first, as `server/papers/font-files.ts` has them. */
const REGULAR = [latin4, latinExt4, math4, greek4, cyrillic4, vietnamese4, symbols4];
const STRONG = [latin6, latinExt6, math6, greek6, cyrillic6, vietnamese6, symbols6];

let fetched: Promise<PaperRequest['fonts']> | null = null;

async function fonts(): Promise<PaperRequest['fonts']> {
	const bytes = async (url: string) => {
		const answer = await fetch(url);
		if (!answer.ok) throw new Error(texts.notFetched);
		return new Uint8Array(await answer.arrayBuffer());
	};
	const all = (urls: readonly string[]) => Promise.all(urls.map(bytes));
	const [regular, strong] = await Promise.all([all(REGULAR), all(STRONG)]);
	return { regular, strong };
}

/** The bytes of the PDF, or a sentence that says why there are none. */
export async function makePdf(paper: Paper, format: Format, made: number): Promise<PaperAnswer> {
	let files: PaperRequest['fonts'];
	try {
		files = await (fetched ??= fonts());
	} catch {
		fetched = null;
		return { failed: texts.notFetched };
	}
	const worker = new PaperWorker();
	try {
		return await new Promise<PaperAnswer>((resolve) => {
			worker.onmessage = ({ data }: MessageEvent<PaperAnswer>) => resolve(data);
			worker.onerror = () => resolve({ failed: texts.notFetched });
			worker.postMessage({ paper, fonts: files, format, made } satisfies PaperRequest);
		});
	} finally {
		worker.terminate();
	}
}
