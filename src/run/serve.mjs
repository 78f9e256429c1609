/**
 * Serves the built app on one address. It adds what the framework's static files lack: a policy for
 * worker scripts (a worker takes its Content-Security-Policy from its own response, not from the
 * page) and the headers that hold for every answer.
 */
import { createServer } from 'node:http';
import { handler } from '../../build/handler.js';

const host = process.env.HOST ?? '127.0.0.1';
const port = portFrom(process.env.PORT ?? '5180');

const WORKER_POLICY =
	"default-src 'none'; script-src 'self'; connect-src 'self'; worker-src 'self'; base-uri 'none'";

const server = createServer((request, response) => {
	response.setHeader('x-content-type-options', 'nosniff');
	response.setHeader('referrer-policy', 'same-origin');
	response.setHeader('cross-origin-opener-policy', 'same-origin');
	response.setHeader('permissions-policy', 'camera=(), microphone=(), geolocation=()');
	if (request.url?.startsWith('/_app/immutable/workers/'))
		response.setHeader('content-security-policy', WORKER_POLICY);
	handler(request, response, () => {
		response.statusCode = 404;
		response.end('Not found');
	});
});

server.on('error', (problem) => {
	const known = {
		EADDRINUSE: `Port ${port} on ${host} is in use. Set PORT to another one, for example PORT=${port + 1}.`,
		EACCES: `Port ${port} on ${host} may not be opened by this user. Set PORT to one above 1023.`,
		EADDRNOTAVAIL: `HOST ${host} is not an address of this machine.`
	};
	console.error(known[problem.code] ?? `The server could not start: ${problem.message}`);
	process.exit(1);
});

server.listen(port, host, () => {
	console.log(`Metrewright is at http://${host.includes(':') ? `[${host}]` : host}:${port}`);
});

for (const signal of ['SIGINT', 'SIGTERM'])
	process.on(signal, () => {
		server.close(() => process.exit(0));
		server.closeIdleConnections();
		setTimeout(() => process.exit(0), 2000).unref();
	});

function portFrom(text) {
	const number = Number(text);
	if (Number.isInteger(number) && number > 0 && number < 65536) return number;
	console.error(`PORT is "${text}"; it must be a whole number from 1 to 65535.`);
	process.exit(1);
}
