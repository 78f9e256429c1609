/** The interface on a port of its own, straight from the sources, as a process that can be killed. Settings as for the server. */
import { createServer } from 'node:http';
import { Readable } from 'node:stream';
import { settingsFrom, start } from '$lib/server/start';

const running = await start(settingsFrom(process.env));

const server = createServer((incoming, outgoing) => {
	const headers = new Headers();
	for (const [name, value] of Object.entries(incoming.headers))
		if (value !== undefined) headers.set(name, String(value));
	const hasBody = incoming.method !== 'GET' && incoming.method !== 'HEAD';
	const request = new Request(`http://${incoming.headers.host}${incoming.url}`, {
		method: incoming.method ?? 'GET',
		headers,
		...(hasBody && { body: Readable.toWeb(incoming) as ReadableStream, duplex: 'half' })
	} as RequestInit);
	void running.app.handle(request, incoming.socket.remoteAddress ?? '').then(async (answer) => {
		outgoing.writeHead(answer.status, Object.fromEntries(answer.headers));
		outgoing.end(Buffer.from(await answer.arrayBuffer()));
	});
});
server.listen(0, '127.0.0.1', () => {
	const address = server.address();
	console.log(`port ${typeof address === 'object' ? address?.port : ''}`);
});
