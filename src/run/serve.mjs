/**
 * Serves the built app on one address. It adds what the framework's static files lack: a policy for
 * worker scripts (a worker takes its Content-Security-Policy from its own response, not from the
 * page) and the headers that hold for every answer. When told to stop it answers what it has begun.
 */
import { createServer } from 'node:http';
import { fileURLToPath } from 'node:url';

const host = process.env.HOST ?? '127.0.0.1';
const port = portFrom(process.env.PORT ?? '5180');

const WORKER_POLICY =
	"default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'; worker-src 'self'; base-uri 'none'";

// The framework's own limit of half a megabyte would refuse a large workbook before the server's limit does.
process.env.BODY_SIZE_LIMIT = '66M';
// One folder, wherever the command is called from.
process.env.METREWRIGHT_DATA ||= fileURLToPath(new URL('../../.metrewright-data', import.meta.url));
// The framework reads it before the settings are looked over, and would fail without a word of use.
if (process.env.ORIGIN && !URL.canParse(process.env.ORIGIN))
	fail(
		`ORIGIN is "${process.env.ORIGIN}"; it should be the address that people open, for example https://plant.example.`
	);
const { handler } = await import('../../build/handler.js').catch((problem) => {
	// What the one who starts it can mend is said without the place in the program.
	fail(problem.name === 'StartError' ? problem.message : problem);
});
const parts = globalThis[Symbol.for('metrewright.server')];

const server = createServer((request, response) => {
	response.setHeader('x-content-type-options', 'nosniff');
	response.setHeader('referrer-policy', 'same-origin');
	response.setHeader('cross-origin-opener-policy', 'same-origin');
	response.setHeader('permissions-policy', 'camera=(), microphone=(), geolocation=()');
	if (request.url?.startsWith('/_app/immutable/workers/'))
		response.setHeader('content-security-policy', WORKER_POLICY);
	if (process.env.ORIGIN?.startsWith('https:'))
		response.setHeader('strict-transport-security', 'max-age=31536000');
	handler(request, response, () => {
		response.statusCode = 404;
		response.end('Not found');
	});
});

// Slow senders do not hold connections for ever; streams of events have no end and no such limit.
server.headersTimeout = 20_000;
server.requestTimeout = 120_000;

server.on('error', (problem) => {
	const known = {
		EADDRINUSE: `Port ${port} on ${host} is in use. Set PORT to another one, for example PORT=${port + 1}.`,
		EACCES: `Port ${port} on ${host} may not be opened by this user. Set PORT to one above 1023.`,
		EADDRNOTAVAIL: `HOST ${host} is not an address of this machine.`,
		ENOTFOUND: `HOST ${host} is no name that this machine knows.`
	};
	fail(known[problem.code] ?? `The server could not start: ${problem.message}`);
});

// A file of the build that is gone while the server runs costs its one answer, not everybody's.
process.on('uncaughtException', (problem) => {
	if (problem.code === 'ENOENT' && problem.syscall === 'open') console.error(problem.message);
	else fail(problem);
});

server.listen(port, host, () => {
	console.log(`Metrewright is at http://${host.includes(':') ? `[${host}]` : host}:${port}`);
});

/** How long requests in hand may take once the server is told to stop. */
const PATIENCE_MS = 10_000;
let isStopping = false;

for (const signal of ['SIGINT', 'SIGTERM'])
	process.on(signal, () => {
		if (isStopping) process.exit(1);
		isStopping = true;
		parts?.beginStop();
		server.close(() => {
			void Promise.resolve(parts?.stop()).finally(() => process.exit(0));
		});
		server.closeIdleConnections();
		setTimeout(() => server.closeAllConnections(), PATIENCE_MS).unref();
	});

function portFrom(text) {
	const number = Number(text);
	if (Number.isInteger(number) && number > 0 && number < 65536) return number;
	return fail(`PORT is "${text}"; it must be a whole number from 1 to 65535.`);
}

function fail(why) {
	console.error(why);
	process.exit(1);
}
