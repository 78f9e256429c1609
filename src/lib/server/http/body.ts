/** Reads the body of a request, but no more of it than the limit. */

export type BodyResult =
	| { readonly ok: true; readonly text: string }
	| { readonly ok: false; readonly why: 'too-large' | 'wrong-type' | 'broken' };

export async function readBody(request: Request, limitBytes: number): Promise<BodyResult> {
	const type = (request.headers.get('content-type') ?? '').split(';')[0]!.trim().toLowerCase();
	if (type !== 'application/json') return { ok: false, why: 'wrong-type' };
	// A small body that unpacks to a large one is not unpacked.
	const encoding = request.headers.get('content-encoding');
	if (encoding !== null && encoding !== 'identity') return { ok: false, why: 'wrong-type' };
	const stated = Number(request.headers.get('content-length') ?? 0);
	if (stated > limitBytes) return { ok: false, why: 'too-large' };
	if (!request.body) return { ok: true, text: '' };
	const pieces: Uint8Array[] = [];
	let size = 0;
	try {
		for await (const piece of request.body as unknown as AsyncIterable<Uint8Array>) {
			size += piece.byteLength;
			if (size > limitBytes) return { ok: false, why: 'too-large' };
			pieces.push(piece);
		}
	} catch (error) {
		// The framework's own limit ends the stream with an error of this status.
		const status = (error as { status?: unknown } | null)?.status;
		return { ok: false, why: status === 413 ? 'too-large' : 'broken' };
	}
	try {
		return {
			ok: true,
			text: new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(pieces))
		};
	} catch {
		return { ok: false, why: 'broken' };
	}
}
