/** Computes a workbook once more and writes it as an OOXML file, away from the page. Lives for one file. */
import { Model } from '$lib/engine/model';
import { sheetsOf } from '$lib/exchange/ooxml/file';
import { writeFile } from '$lib/exchange/ooxml/write';
import type { FileAnswer, FileRequest } from './file-messages';

const scope = self as unknown as {
	onmessage: ((event: MessageEvent<FileRequest>) => void) | null;
	postMessage(answer: FileAnswer, transfer?: Transferable[]): void;
};

scope.onmessage = async ({ data: { workbook } }) => {
	try {
		const model = Model.open(workbook);
		const results = workbook.scenarios.map(({ id }) => model.results(id));
		const written = await writeFile(sheetsOf(workbook, model.plan, results), workbook.title);
		const bytes = new Uint8Array(written);
		scope.postMessage({ ok: true, bytes }, [bytes.buffer]);
	} catch (error) {
		scope.postMessage({
			ok: false,
			message: error instanceof Error ? error.message : String(error)
		});
	}
};
