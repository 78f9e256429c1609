/** The interface as a program meets it, without a socket: requests in, answers out, cookies kept. */
import { Documents } from '$lib/server/documents/documents';
import { OWN_HEADER } from '$lib/server/http/guard';
import { ROUTES } from '$lib/server/http/routes';
import { addPerson } from '$lib/server/people/people';
import { hashPassword } from '$lib/server/people/passwords';
import { readSettings, type Settings } from '$lib/server/settings';
import { z } from '$lib/server/zod';
import { start, type Running } from '$lib/server/start';
import type { Where } from '$lib/server/store/open';

export const PASSWORD = 'a pipe of eleven metres';

export interface Server extends Running {
	/** Moves the clock that the server reads. */
	pass(ms: number): void;
	/** Does something while that clock stands still, so that no wait ends by itself. */
	atOnce(work: () => Promise<void>): Promise<void>;
	readonly logged: string[];
}

/** The same for all servers of a file, because a thread starts slowly from the sources; no server ends them. */
const threads = new Documents();
threads.close = () => Promise.resolve();

export async function startServer(
	where: Where,
	environment: Record<string, string> = {}
): Promise<Server> {
	const settings = settingsOf(where, environment);
	let late = 0;
	let still: number | null = null;
	const now = () => still ?? Date.now() + late;
	const logged: string[] = [];
	const log = {
		write: (level: string, fields: object) => void logged.push(JSON.stringify({ level, ...fields }))
	};
	const running = await start(settings, { now, log, documents: threads });
	return Object.assign(running, {
		logged,
		pass: (ms: number) => {
			late += ms;
		},
		async atOnce(work: () => Promise<void>) {
			still = now();
			await work();
			still = null;
		}
	});
}

function settingsOf(where: Where, environment: Record<string, string>): Settings {
	const store: Record<string, string> =
		'url' in where ? { DATABASE_URL: where.url } : { METREWRIGHT_DATA: where.folder };
	const read = readSettings({
		METREWRIGHT_REQUESTS_PER_MINUTE: '100000',
		METREWRIGHT_EVALUATION_SECONDS: '120',
		...store,
		...environment
	});
	if (!read.ok) throw new Error(read.problems.join('\n'));
	return read.settings;
}

export interface Asked {
	readonly body?: unknown;
	readonly text?: string;
	readonly headers?: Record<string, string>;
}

/** Every answer is one that the table of routes describes, in the shape that it says and with nothing besides. */
async function holdToTable(method: string, path: string, answer: Response): Promise<void> {
	const [way = ''] = path.split('?');
	const fits = (template: string) =>
		new RegExp(`^${template.replace(/\{\w+\}/g, '[^/]+')}$`).test(way);
	const route =
		ROUTES.find((each) => each.method === method && each.path === way) ??
		ROUTES.find((each) => each.method === method && fits(each.path));
	if (!route || answer.status >= 400) return;
	const described = route.answers[answer.status];
	if (!described)
		throw new Error(`${method} ${path} answers ${answer.status}, which is not described`);
	const { schema } = described;
	if (schema === undefined || schema === 'workbook') return;
	const read = z.safeParse(schema, await answer.clone().json());
	if (!read.success)
		throw new Error(`${method} ${path} answers otherwise than described: ${read.error.message}`);
}

/** One browser or program: it keeps its cookies. */
export class Client {
	readonly cookies = new Map<string, string>();

	constructor(
		readonly server: Running,
		readonly address = '192.0.2.1',
		readonly host = 'http://127.0.0.1:5180'
	) {}

	async ask(method: string, path: string, asked: Asked = {}): Promise<Response> {
		const headers = new Headers({ [OWN_HEADER]: '1', ...asked.headers });
		if (this.cookies.size > 0)
			headers.set(
				'cookie',
				[...this.cookies].map(([name, value]) => `${name}=${value}`).join('; ')
			);
		const body = asked.text ?? (asked.body === undefined ? null : JSON.stringify(asked.body));
		if (body !== null && !headers.has('content-type'))
			headers.set('content-type', 'application/json');
		const request = new Request(this.host + path, { method, headers, body });
		const answer = await this.server.app.handle(request, this.address);
		for (const line of answer.headers.getSetCookie()) {
			const [name, value] = line.split(';')[0]!.split('=') as [string, string];
			if (value === '') this.cookies.delete(name);
			else this.cookies.set(name, value);
		}
		await holdToTable(method, path, answer);
		return answer;
	}

	/** The answer's JSON, after its status was seen to be good. */
	async json<T = Record<string, unknown>>(method: string, path: string, asked?: Asked): Promise<T> {
		const answer = await this.ask(method, path, asked);
		const text = await answer.text();
		if (!answer.ok) throw new Error(`${method} ${path}: ${answer.status} ${text}`);
		return (text === '' ? {} : JSON.parse(text)) as T;
	}

	signIn(email: string, password = PASSWORD): Promise<Response> {
		return this.ask('POST', '/api/v1/session', { body: { email, password } });
	}
}

let kept: Promise<string> | undefined;

/** An account with the one password, and a browser signed in to it. */
export async function person(
	server: Server,
	name: string,
	{ steward = false, signIn = true } = {}
): Promise<Client & { readonly id: string; readonly email: string }> {
	kept ??= hashPassword(PASSWORD);
	const email = `${name}@plant.example`;
	const { store, now } = server.services;
	const made = await addPerson(store.db, {
		email,
		name,
		password: await kept,
		steward,
		now: now()
	});
	const client = new Client(server, `198.51.100.${name.length}`);
	if (signIn) {
		const answer = await client.signIn(email);
		if (!answer.ok) throw new Error(await answer.text());
	}
	return Object.assign(client, { id: made!.id, email });
}
