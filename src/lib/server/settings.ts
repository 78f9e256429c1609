/**
 * The settings of the server, from the environment. All wrong ones are named at once, each with what it should
 * be; nothing is guessed. The table in DEVELOPERS.md lists them for those who run it.
 */
import { nearest } from '$lib/formula/names';
import { megabytes, MOST_MEGABYTES } from '$lib/workbook/file-size';
import { z } from '$lib/server/zod';

export interface Settings {
	readonly host: string;
	readonly port: number;
	/** Folder of the embedded store. */
	readonly folder: string;
	/** PostgreSQL instead of the folder; null for none. */
	readonly databaseUrl: string | null;
	/** Where people reach the app, if that is not what their requests say: "https://plant.example". */
	readonly origin: string | null;
	/** Proxies in front that state the caller's address; 0: the connection's own address counts. */
	readonly proxies: number;
	readonly logLevel: 'debug' | 'info' | 'warn' | 'error' | 'silent';
	readonly bodyLimitBytes: number;
	readonly requestsPerMinute: number;
	readonly sessionHours: number;
	readonly sessionDays: number;
	readonly evaluationSeconds: number;
	readonly evaluationMegabytes: number;
	readonly evaluationsAtOnce: number;
}

export type SettingsResult =
	| { readonly ok: true; readonly settings: Settings }
	| { readonly ok: false; readonly problems: readonly string[] };

type Environment = Readonly<Record<string, string | undefined>>;

const whole = (least: number, most: number, given: number) =>
	z
		.string()
		.regex(/^\d{1,9}$/)
		.transform(Number)
		.pipe(z.number().min(least).max(most))
		.optional()
		.transform((value) => value ?? given);

const text = (pattern: RegExp) => z.string().regex(pattern).max(2000).optional();

/** Each with what it should be, in words. */
const VARIABLES = {
	HOST: [text(/^[\w.:-]+$/), 'an address of this machine or a name for it, for example 127.0.0.1'],
	PORT: [whole(1, 65535, 5180), 'a whole number from 1 to 65535'],
	METREWRIGHT_DATA: [text(/^[^\0]+$/), 'the path of a folder'],
	DATABASE_URL: [
		text(/^postgres(ql)?:\/\/\S+$/),
		'a PostgreSQL address, for example postgresql://user@host/metrewright'
	],
	ORIGIN: [
		text(/^https?:\/\/[^\s/?#]+$/),
		'the address that people open, without a path, for example https://plant.example'
	],
	METREWRIGHT_PROXIES: [whole(0, 10, 0), 'the number of proxies in front, from 0 to 10'],
	METREWRIGHT_LOG: [
		z.enum(['debug', 'info', 'warn', 'error', 'silent']).optional(),
		'one of debug, info, warn, error, silent'
	],
	METREWRIGHT_BODY_MB: [
		whole(1, MOST_MEGABYTES, 16),
		`a whole number of megabytes from 1 to ${MOST_MEGABYTES}`
	],
	METREWRIGHT_REQUESTS_PER_MINUTE: [whole(10, 1_000_000, 1200), 'a whole number from 10 up'],
	METREWRIGHT_SESSION_HOURS: [whole(1, 8760, 24), 'a whole number of hours from 1 to 8760'],
	METREWRIGHT_SESSION_DAYS: [whole(1, 366, 30), 'a whole number of days from 1 to 366'],
	METREWRIGHT_EVALUATION_SECONDS: [whole(1, 600, 20), 'a whole number of seconds from 1 to 600'],
	METREWRIGHT_EVALUATION_MB: [whole(64, 16384, 1024), 'a whole number of megabytes from 64 up'],
	METREWRIGHT_EVALUATIONS: [whole(1, 64, 2), 'a whole number from 1 to 64']
} as const satisfies Record<string, readonly [z.ZodType, string]>;

type Read = { [name in keyof typeof VARIABLES]: z.output<(typeof VARIABLES)[name][0]> };

/** Their names, for the table in the documentation and its test. */
export const VARIABLE_NAMES = Object.keys(VARIABLES);

/** Read by the command line and by tests, and no settings of the server. */
const KNOWN = new Set([
	...VARIABLE_NAMES,
	...['METREWRIGHT_PASSWORD', 'METREWRIGHT_CHROMIUM', 'METREWRIGHT_POSTGRES_BIN']
]);

export function readSettings(environment: Environment): SettingsResult {
	const problems: string[] = [];
	const read: Record<string, unknown> = {};
	for (const [name, [schema, should]] of Object.entries(VARIABLES)) {
		const given = environment[name];
		// Set to nothing is not set.
		const parsed = schema.safeParse(given === undefined || given === '' ? undefined : given);
		if (parsed.success) read[name] = parsed.data;
		else problems.push(`${name} is ${shownValue(name, given)}; it should be ${should}.`);
	}
	for (const name of Object.keys(environment))
		if (name.startsWith('METREWRIGHT_') && !KNOWN.has(name)) {
			const near = nearest(name, VARIABLE_NAMES);
			problems.push(`${name} is no setting.${near ? ` Did you mean ${near}?` : ' Leave it out.'}`);
		}
	const values = read as Read;
	if (problems.length > 0) return { ok: false, problems };
	const host = values.HOST ?? '127.0.0.1';
	return {
		ok: true,
		settings: {
			host,
			port: values.PORT,
			folder: values.METREWRIGHT_DATA ?? '.metrewright-data',
			databaseUrl: values.DATABASE_URL ?? null,
			origin: values.ORIGIN ?? null,
			proxies: values.METREWRIGHT_PROXIES,
			logLevel: values.METREWRIGHT_LOG ?? (isLoopback(host) ? 'warn' : 'info'),
			bodyLimitBytes: megabytes(values.METREWRIGHT_BODY_MB),
			requestsPerMinute: values.METREWRIGHT_REQUESTS_PER_MINUTE,
			sessionHours: values.METREWRIGHT_SESSION_HOURS,
			sessionDays: values.METREWRIGHT_SESSION_DAYS,
			evaluationSeconds: values.METREWRIGHT_EVALUATION_SECONDS,
			evaluationMegabytes: values.METREWRIGHT_EVALUATION_MB,
			evaluationsAtOnce: values.METREWRIGHT_EVALUATIONS
		}
	};
}

/** Secrets and addresses with passwords in them are not repeated. */
function shownValue(name: string, given: string | undefined): string {
	return /DATABASE_URL/.test(name) ? 'not as it should be' : `"${given?.slice(0, 80)}"`;
}

/** The setting by which others than this machine reach the server; null where none does. */
export function openTo({
	host,
	origin,
	proxies
}: Settings): { readonly setting: string; readonly because: string } | null {
	if (!isLoopback(host)) return { setting: 'HOST', because: `HOST is ${host}` };
	if (proxies > 0)
		return { setting: 'METREWRIGHT_PROXIES', because: `METREWRIGHT_PROXIES is ${proxies}` };
	if (origin !== null && !isLoopback(new URL(origin).hostname))
		return { setting: 'ORIGIN', because: `ORIGIN is ${origin}` };
	return null;
}

/** Whether only this machine reaches an address. */
export function isLoopback(host: string): boolean {
	const name = host.replace(/^\[|\]$/g, '').toLowerCase();
	return (
		name === 'localhost' ||
		name.endsWith('.localhost') ||
		name === '::1' ||
		/^127(\.\d{1,3}){3}$/.test(name)
	);
}
