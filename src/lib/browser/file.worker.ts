/** Computes a workbook once more and writes it as an OOXML file, away from the page. Lives for one file. */
import { Model } from '$lib/engine/model';
import { restingOf } from '$lib/engine/resting';
import { StaleCells } from '$lib/engine/stale';
import { sheetsOf } from '$lib/exchange/ooxml/file';
import { writeFile } from '$lib/exchange/ooxml/write';
import type { FileAnswer, FileRequest } from './file-messages';

const scope = self as unknown as {
	onmessage: ((event: MessageEvent<FileRequest>) => void) | null;
	postMessage(answer: FileAnswer, transfer?: Transferable[]): void;
};

scope.onmessage = async ({ data: { workbook, stale } }) => {
	try {
		const model = Model.open(workbook);
		const results = workbook.scenarios.map(({ id }) => model.results(id));
		const marked =
			stale.length > 0 ? new StaleCells(workbook, restingOf(workbook, model.plan), stale) : null;
		const written = await writeFile(
			sheetsOf(workbook, model.plan, results, marked),
			workbook.title
		);
		const bytes = new Uint8Array(written);
		scope.postMessage({ ok: true, bytes }, [bytes.buffer]);
	} catch (error) {
		scope.postMessage({
			ok: false,
			message: error instanceof Error ? error.message : String(error)
		});
	}
};
