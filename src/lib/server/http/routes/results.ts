/** Results: what a workbook computes, all of it or only what is open. */
import { z } from '$lib/server/zod';
import { FORMAT_NAMES } from '$lib/papers/pdf/sheets';
import { evaluatedSchema, openSchema } from '$lib/protocol/results';
import type { JobOutcome } from '../../evaluation/pool';
import { headOf } from '../../store/workbooks';
import { noSuchWorkbook } from '../permission';
import { problem } from '../problem';
import { jsonText, route, type Call } from '../route';
import { etagOf } from './workbooks';

const group = 'results';
const names = z.array(z.string().min(1).max(64)).min(1);
const evaluated = {
	200: {
		description:
			'Values with units; a missing one says why. Where a programme decides, whether its plan is current',
		schema: evaluatedSchema
	}
};
const opened = { 200: { description: 'Values with units', schema: openSchema } };
const refused = {
	422: { description: 'Asked for what is not there, or stopped for its time or memory' },
	503: { description: 'Others are being evaluated; Retry-After says when to ask again' }
};

export const resultRoutes = [
	route({
		method: 'POST',
		path: '/api/v1/workbooks/{workbook}/evaluate',
		needs: 'viewer',
		group,
		summary: 'Computes a revision: the scenarios and quantities asked for, or all',
		body: z.strictObject({
			revision: z.number().int().min(1).optional(),
			scenarios: names.max(60).optional(),
			quantities: names.max(5000).optional()
		}),
		answers: { ...evaluated, ...refused },
		handle: async (call) => {
			const { body, services, path } = call;
			const at = body.revision ?? (await headOf(services.store.db, path('workbook')));
			return at === null ? noSuchWorkbook() : evaluate(call, at, body);
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/workbooks/{workbook}/revisions/{revision}/papers/{paper}',
		needs: 'viewer',
		group,
		summary: 'A paper of a revision as tagged PDF; scenarios are parted by commas',
		query: z.object({
			scenarios: z.string().min(1).max(4000).optional(),
			format: z.enum(FORMAT_NAMES).default('a4'),
			author: z.string().max(200).optional(),
			question: z.string().max(2000).optional()
		}),
		answers: {
			200: { description: 'The PDF', type: 'application/pdf' },
			404: { description: 'No such revision' },
			...refused
		},
		handle: async ({ services, path, query }) => {
			const revision = Number(path('revision'));
			const text = Number.isSafeInteger(revision)
				? await services.saver.text(path('workbook'), revision)
				: null;
			if (text === null) return problem('not-found', 'There is no such revision of this workbook.');
			const { scenarios, ...given } = query;
			const outcome = await services.pool.evaluate({
				...{ key: `${path('workbook')} ${revision}`, text },
				paper: {
					...given,
					...{ name: path('paper'), revision, made: services.now() },
					...(scenarios !== undefined && { scenarios: scenarios.split(',') })
				}
			});
			if (outcome.kind !== 'paper')
				return answered(outcome, revision, services.settings.evaluationSeconds);
			return new Response(outcome.bytes, {
				headers: {
					'content-type': 'application/pdf',
					'content-disposition': `attachment; filename="paper-${revision}.pdf"`,
					etag: etagOf(revision)
				}
			});
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/workbooks/{workbook}/open',
		needs: 'open_viewer',
		group,
		summary: 'The values of the open quantities, without what feeds them',
		answers: { ...opened, ...refused },
		handle: async (call) => {
			const { services, path } = call;
			const head = await headOf(services.store.db, path('workbook'));
			return head === null ? noSuchWorkbook() : evaluate(call, head, { openOnly: true });
		}
	})
];

async function evaluate(
	{ services, path }: Pick<Call, 'services' | 'path'>,
	number: number,
	asked: { scenarios?: string[] | undefined; quantities?: string[] | undefined; openOnly?: boolean }
): Promise<Response> {
	const workbook = path('workbook');
	const text = await services.saver.text(workbook, number);
	if (text === null) return problem('not-found', 'There is no such revision of this workbook.');
	const { scenarios, quantities, openOnly } = asked;
	const key = `${workbook} ${number}`;
	const ask = { key, text, scenarios, quantities, openOnly };
	const outcome = await services.pool.evaluate(ask);
	if (outcome.kind === 'paper') throw new RangeError('Values were asked for.');
	return answered(outcome, number, services.settings.evaluationSeconds);
}

function answered(
	outcome: Exclude<JobOutcome, { kind: 'paper' }>,
	number: number,
	seconds: number
): Response {
	switch (outcome.kind) {
		case 'no_paper':
			return problem('wrong-content', capitalised(outcome.message));
		case 'done':
			return jsonText(`{"revision":${number},${outcome.json.slice(1)}`, {
				headers: { etag: etagOf(number) }
			});
		case 'unknown':
			return problem(
				'wrong-content',
				`The workbook has no ${outcome.what} "${outcome.name}". Ask for one that it has.`
			);
		case 'too_large':
			return problem(
				'evaluation-stopped',
				`The workbook has ${outcome.cells} values, more than this server computes. Make sets smaller, or ask its administrator for a higher limit.`
			);
		case 'stopped':
			return problem(
				'evaluation-stopped',
				outcome.why === 'time'
					? `The evaluation took more than ${seconds} s and was stopped. Ask for fewer scenarios, or make sets smaller.`
					: 'The evaluation took more memory than it may and was stopped. Make sets smaller.'
			);
		case 'busy':
			return problem('busy', 'Other evaluations are waiting. Ask again in a moment.', {
				headers: { 'retry-after': '2' }
			});
		case 'broken':
			return problem('wrong-content', 'This revision does not open as a workbook.');
	}
}

const capitalised = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
