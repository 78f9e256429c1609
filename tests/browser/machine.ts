/**
 * What the machine that runs the journeys is like, measured once: a free port, how many browsers it carries, and
 * how patient to be. The runner's own process asks; what it found goes to its workers by the environment.
 */
import { createServer } from 'node:net';
import { availableParallelism, totalmem } from 'node:os';

/** What `measure` takes on two quiet cores of an ordinary server, in ms; the patience below is many times what is needed there. */
const QUIET = 250;

/** What one browser with the plant open in it, its server and its runner take together. */
const BYTES_OF_BROWSER = 3 * 2 ** 30;

export async function freePort(): Promise<number> {
	const probe = createServer();
	await new Promise<void>((resolve) => probe.listen(0, '127.0.0.1', resolve));
	const address = probe.address();
	await new Promise((resolve) => probe.close(resolve));
	if (address === null || typeof address === 'string') throw new Error('No port is free.');
	return address.port;
}

/** How long a fixed sum takes by the clock, other people's load included. */
function measure(): number {
	const begun = performance.now();
	let sum = 0;
	for (let at = 1; at < 30_000_000; at++) sum += Math.sqrt(at) / (at + sum);
	if (!Number.isFinite(sum)) throw new Error('A sum of finite terms is finite.');
	return performance.now() - begun;
}

/** 1 on a machine as quick as that, more where it is slower or others load it; at most 4, so that what fails ends. */
export const slowness = (): number => Math.min(4, Math.max(1, measure() / QUIET));

/** The second engine's first build takes a processor for longer than anything else that a journey waits for. */
export const PATIENCE_FOR_SECOND_ENGINE = 150_000 * Number(process.env.JOURNEYS_SLOWNESS ?? 1);

/** As many browsers as there are processors and room for; never more than two, which share one server. */
export const browsersAtOnce = (): number =>
	Math.max(1, Math.min(2, availableParallelism(), Math.floor(totalmem() / BYTES_OF_BROWSER)));
