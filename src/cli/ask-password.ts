/**
 * Takes a new password from the environment, from a terminal without showing it, or from a pipe; never from the
 * words of the command, which others on the machine can see.
 */
import { createInterface } from 'node:readline';
import { Writable } from 'node:stream';

export async function askPassword(): Promise<string | null> {
	const given = process.env['METREWRIGHT_PASSWORD'];
	if (given) return given;
	if (!process.stdin.isTTY) return firstLine();
	process.stderr.write('New password: ');
	const silent = new Writable({ write: (_piece, _encoding, done) => done() });
	const reader = createInterface({ input: process.stdin, output: silent, terminal: true });
	const password = await new Promise<string>((resolve) => reader.question('', resolve));
	reader.close();
	process.stderr.write('\n');
	return password === '' ? null : password;
}

async function firstLine(): Promise<string | null> {
	const pieces: Buffer[] = [];
	for await (const piece of process.stdin) pieces.push(piece as Buffer);
	const [line = ''] = Buffer.concat(pieces).toString('utf8').split(/\r?\n/);
	return line === '' ? null : line;
}
