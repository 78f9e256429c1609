/** Reads tables and looks them over, away from the page. Lives as long as one of them is on its way in. */
import { LastLayout, TableDesk } from '$lib/exchange/table/desk';
import type { Workbook } from '$lib/workbook/schema';
import type { TableAnswer, TableAnswers, TableMessage } from './table-messages';

const scope = self as unknown as {
	onmessage: ((event: MessageEvent<TableMessage>) => void) | null;
	postMessage(answer: TableAnswer): void;
};

/** Several files that come in together are looked over against one workbook, which is laid out once. */
const layouts = new LastLayout();
const desks = new Map<number, TableDesk>();
let workbook: Workbook | null = null;

async function answerTo({
	id,
	desk: place,
	request
}: TableMessage): Promise<TableAnswers[keyof TableAnswers] | null> {
	const told = (share: number) => scope.postMessage({ id, share });
	if (request.kind === 'workbook') {
		workbook = request.workbook;
		return null;
	}
	if (request.kind === 'put_away') {
		desks.delete(place);
		return null;
	}
	const desk = desks.get(place) ?? new TableDesk(layouts);
	desks.set(place, desk);
	if (request.kind === 'read') return desk.read(request.bytes, request.name, told);
	if (!workbook) throw new Error('A table was asked about before the workbook was known.');
	switch (request.kind) {
		case 'propose':
			return desk.propose(request.sheet, workbook);
		case 'look':
			return desk.look(
				request.sheet,
				request.mapping,
				request.choices,
				workbook,
				told,
				request.typical
			);
		case 'propose_pairs':
			return desk.proposePairs(request.sheet, request.relation, workbook);
		case 'look_pairs':
			return desk.lookPairs(request.sheet, request.mapping, request.choices, workbook);
		case 'propose_log':
			return desk.proposeLog(request.sheet, workbook, request.wanted);
		case 'propose_points':
			return desk.proposePoints(request.sheet, request.fit, workbook);
		case 'points':
			return desk.points(request.sheet, request.mapping, request.fit, workbook);
		case 'look_log':
			return desk.lookLog(request.sheet, request.log, workbook, told, request.typical);
	}
}

scope.onmessage = async ({ data }) => {
	try {
		const answer = await answerTo(data);
		if (answer) scope.postMessage({ id: data.id, answer });
	} catch (error) {
		const failed = error instanceof Error ? error.message : String(error);
		scope.postMessage({ id: data.id, failed });
	}
};
