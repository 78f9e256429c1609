/** `audit export FILE` and `audit verify`: the trail as JSON lines, and whether it is whole and as it was written. */
import { createReadStream, createWriteStream, existsSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { note, trailEnd, trailLines, wholeTrail } from '$lib/server/people/audit';
import { verifyChain, type Anchor, type Chained } from '$lib/server/people/audit-chain';
import type { Store } from '$lib/server/store/open';
import { z } from '$lib/server/zod';
import { readWords } from './arguments';
import type { CommandOutput } from './command-output';

const USE =
	'audit takes "export FILE", or "verify [FILE] [--anchor NUMBER:DIGEST]", which looks at the store or at an export.';

const entrySchema = z.strictObject({
	seq: z.number(),
	id: z.string(),
	at: z.number(),
	event: z.string(),
	person_id: z.string().nullable(),
	person_name: z.string(),
	token: z.string(),
	subject: z.string(),
	subject_name: z.string(),
	detail: z.string(),
	address: z.string(),
	digest: z.string()
}) satisfies z.ZodType<Chained>;

export function auditWordsProblem([what, ...rest]: readonly string[]): string | null {
	const read = readWords(rest, ['anchor'], []);
	if (!read.ok) return read.message;
	const { files, options } = read.words;
	const [file] = files;
	if (what === 'export' && file !== undefined && files.length === 1 && options.size === 0)
		return existsSync(file)
			? `${file} exists already. Name a new file, so that no older export is lost.`
			: null;
	if (what !== 'verify' || files.length > 1) return USE;
	if (file !== undefined && !existsSync(file))
		return `${file}: there is no such file. Check the path.`;
	const given = options.get('anchor');
	return given && (given.length > 1 || !anchorOf(given[0]!))
		? 'An anchor is a number and a digest, as "verify" prints them: 12:5f0c…, with all 64 digits.'
		: null;
}

function anchorOf(text: string): Anchor | null {
	const match = /^([1-9]\d{0,9}):([\da-f]{64})$/.exec(text);
	return match ? { seq: Number(match[1]), digest: match[2]! } : null;
}

/** Whether it looks at a file alone, so that no store is needed. */
export const isOfFile = ([what, ...rest]: readonly string[]): boolean =>
	what === 'verify' && rest.some((word, i) => !word.startsWith('--') && rest[i - 1] !== '--anchor');

export async function auditCommand(
	store: Store | null,
	[what, ...rest]: readonly string[]
): Promise<CommandOutput> {
	const read = readWords(rest, ['anchor'], []);
	if (!read.ok) return { out: '', err: read.message, code: 2 };
	const [file] = read.words.files;
	if (what === 'export' && store && file !== undefined) return exportTo(store, file);
	const anchor = anchorOf(read.words.options.get('anchor')?.[0] ?? '');
	const verified = store
		? await verifyChain(wholeTrail(store.db), { anchor, end: await trailEnd(store.db) })
		: await verifyChain(linesOf(file!), { anchor });
	if (!verified.ok) return { out: '', err: verified.why, code: 1 };
	const { entries, digest } = verified;
	return {
		out:
			entries === 0
				? 'The trail is empty.\n'
				: `The trail is whole: ${entries === 1 ? '1 entry' : `${entries} entries`}, each as it was written.\nNote this elsewhere, and "audit verify --anchor" tells later whether anything up to it was changed:\n${entries}:${digest}\n`,
		code: 0
	};
}

async function exportTo(store: Store, file: string): Promise<CommandOutput> {
	await note(store.db, {
		now: Date.now(),
		event: 'trail_exported',
		personId: null,
		address: 'command line'
	});
	let count = 0;
	const counted = async function* () {
		for await (const line of trailLines(store.db)) {
			count++;
			yield line;
		}
	};
	await pipeline(Readable.from(counted()), createWriteStream(file, { mode: 0o600, flags: 'wx' }));
	return { out: `${file} holds the whole trail: ${count} entries.\n`, code: 0 };
}

async function* linesOf(file: string): AsyncGenerator<Chained> {
	let line = 0;
	for await (const text of createInterface({ input: createReadStream(file) })) {
		line++;
		if (text === '') continue;
		let json: unknown;
		try {
			json = JSON.parse(text);
		} catch {
			json = null;
		}
		const read = entrySchema.safeParse(json);
		if (!read.success)
			throw new TrailFileError(`${file}, line ${line}: this is no entry of a trail.`);
		yield read.data;
	}
}

/** The file that is looked at is no export. */
export class TrailFileError extends Error {
	override name = 'TrailFileError';
}
