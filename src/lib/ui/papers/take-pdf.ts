/** Makes a PDF of a paper and saves it; what makes it comes with the first one. Gives what there is to say of it. */
import { download, fileNameOf } from '$lib/browser/files';
import type { Paper } from '$lib/papers/paper';
import type { Format } from '$lib/papers/pdf/sheets';
import { pdfTexts as texts } from './pdf-texts';

export async function takePdf(
	paper: Paper | (() => Promise<Paper>),
	format: Format
): Promise<string> {
	const answer = await Promise.all([
		typeof paper === 'function' ? paper() : paper,
		import('./pdf-client')
	]).then(
		async ([made, { makePdf }]) => ({ made, ...(await makePdf(made, format, Date.now())) }),
		() => ({ failed: texts.notFetched })
	);
	if ('failed' in answer) return texts.failed(answer.failed);
	download(`${fileNameOf(answer.made.title)}.pdf`, answer.bytes, 'application/pdf');
	return texts.saved(answer.missing);
}
