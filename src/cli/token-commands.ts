/** `token …`: API tokens made, listed and ended where nobody signs in, for programs that are set up by those who run the server. */
import { TOKEN_SCOPES } from '$lib/protocol/roles';
import { note } from '$lib/server/people/audit';
import { roleOf } from '$lib/server/people/memberships';
import { personByEmail } from '$lib/server/people/people';
import { endTokens, listTokens, makeToken, tokenWords } from '$lib/server/people/tokens';
import type { Store } from '$lib/server/store/open';
import { readWords, type Words } from './arguments';
import type { CommandOutput } from './command-output';

const USE =
	'token takes "add EMAIL NAME --days N [--write] [--workbook ID]...", "list EMAIL" or "end EMAIL ID".';

export function tokenWordsProblem(words: readonly string[]): string | null {
	const read = readWords(words, ['days', 'workbook'], ['write']);
	if (!read.ok) return read.message;
	const [what, ...files] = read.words.files;
	const takes = { add: 2, list: 1, end: 2 }[what ?? ''];
	if (takes === undefined || files.length !== takes) return USE;
	if (what !== 'add') return null;
	const days = daysOf(read.words);
	if (days === null)
		return '--days says for how many days the token is, from 1 to 366; it ends by itself then.';
	return files[1]!.length > 60 ? 'The name of a token has at most 60 characters.' : null;
}

function daysOf({ options }: Words): number | null {
	const [text = ''] = options.get('days') ?? [];
	const days = /^\d{1,3}$/.test(text) ? Number(text) : 0;
	return days >= 1 && days <= 366 ? days : null;
}

const refused = (err: string): CommandOutput => ({ out: '', err, code: 2 });

export async function tokenCommand(store: Store, given: readonly string[]): Promise<CommandOutput> {
	const read = readWords(given, ['days', 'workbook'], ['write']);
	if (!read.ok) return refused(read.message);
	const [what, email = '', third = ''] = read.words.files;
	const person = await personByEmail(store.db, email);
	if (!person) return refused(`${email} has no account here. "account list" names those who have.`);
	const now = Date.now();
	const by = { now, personId: null, address: 'command line' };
	if (what === 'list') {
		const all = await listTokens(store.db, person.id, now);
		const lines = all.map(({ id, name, scope, workbooks, expiresAt }) =>
			[id, name, scope, workbooks?.join(' ') ?? 'all workbooks', dayOf(expiresAt)].join('\t')
		);
		return { out: `${lines.join('\n') || `${person.email} has no token.`}\n`, code: 0 };
	}
	if (what === 'end') {
		if ((await endTokens(store.db, person.id, third)) === 0)
			return refused(`${person.email} has no token ${third}. "token list ${email}" names them.`);
		await note(store.db, { ...by, event: 'token_ended', subject: third, detail: person.email });
		return { out: `The token ${third} of ${person.email} has ended.\n`, code: 0 };
	}
	const workbooks = read.words.options.get('workbook') ?? null;
	for (const workbook of workbooks ?? [])
		if ((await roleOf(store.db, workbook, person.id)) === null)
			return refused(`${person.email} has no part in the workbook "${workbook}".`);
	const scope = TOKEN_SCOPES[read.words.switches.has('write') ? 1 : 0];
	const days = daysOf(read.words)!;
	const personId = person.id;
	const made = await makeToken(store.db, { personId, name: third, scope, workbooks, days, now });
	const detail = tokenWords({ name: third, scope, workbooks, days });
	await note(store.db, { ...by, event: 'token_made', subject: person.id, detail });
	return {
		out: `${made.secret}\n`,
		err: `This is shown once. It ends on ${dayOf(made.expiresAt)}; "token end ${email} ${made.id}" ends it before.`,
		code: 0
	};
}

const dayOf = (at: number): string => new Date(at).toISOString().slice(0, 10);
