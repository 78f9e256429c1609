/**
 * Starts what the server consists of, once for the process, and stops it: settings, store, threads, the interface.
 */
import { Documents } from './documents/documents';
import { Hub } from './events';
import { Pool } from './evaluation/pool';
import { App } from './http/app';
import { RateLimit } from './http/guard';
import type { Services } from './http/route';
import { openLog, type Log } from './log';
import { hasAccounts } from './people/people';
import { Saver } from './saving';
import { openTo, readSettings, type Settings } from './settings';
import { faultOf } from './store/faults';
import { NewerSchemaError } from './store/migrations';
import { openStore, type Store, type Where } from './store/open';

/** Why the server does not start, in words for whoever starts it. */
export class StartError extends Error {
	override name = 'StartError';
}

/** Evaluations that wait for each thread. */
const EVALUATIONS_WAITING = 8;
/** Of one address: enough for an office behind one, too few to guess one word for every account. */
const SIGN_INS_PER_MINUTE = 30;

export interface Running {
	readonly app: App;
	readonly services: Services;
	/** Ends streams and says "not ready"; requests in hand go on. */
	beginStop(): void;
	/** Ends threads and the store; requests in hand should have been answered before. */
	stop(): Promise<void>;
}

export function settingsFrom(environment: Readonly<Record<string, string | undefined>>): Settings {
	const read = readSettings(environment);
	if (read.ok) return read.settings;
	throw new StartError(`The settings do not fit:\n${read.problems.join('\n')}`);
}

export const whereOf = ({ databaseUrl, folder }: Settings): Where =>
	databaseUrl === null ? { folder } : { url: databaseUrl };

/** Opens the store, or says in words why that cannot be. */
export async function openStoreOf(settings: Settings, now: number): Promise<Store> {
	try {
		return await openStore(whereOf(settings), now);
	} catch (error) {
		if (error instanceof NewerSchemaError) throw new StartError(error.message);
		const code = (error as NodeJS.ErrnoException).code ?? '';
		const why = error instanceof Error ? error.message : String(error);
		if (settings.databaseUrl !== null)
			throw new StartError(
				`The PostgreSQL of DATABASE_URL cannot be used: ${why}. Check that it runs, and its address, user and password.`
			);
		if (faultOf(error) || /^E(ACCES|PERM|ROFS|NOENT|NOTDIR|EXIST|NOSPC)$/.test(code))
			throw new StartError(
				`The folder "${settings.folder}" cannot hold the data: ${why}. Set METREWRIGHT_DATA to a folder that this user may write to.`
			);
		throw error;
	}
}

export async function start(
	settings: Settings,
	{
		now = Date.now,
		log = openLog(settings.logLevel, now),
		documents = new Documents()
	}: { now?: () => number; log?: Log; documents?: Documents } = {}
): Promise<Running> {
	const store = await openStoreOf(settings, now());
	const open = openTo(settings);
	if (open && !(await hasAccounts(store.db))) {
		await store.close();
		throw new StartError(
			`${open.because}, so others can reach this server, but nobody has an account. Make the first one with "npm run -s metrewright -- account add-owner EMAIL", or leave ${open.setting} out to serve this machine alone.`
		);
	}
	if (open && settings.origin?.startsWith('https:') !== true)
		log.write('warn', {
			event: 'plain_http',
			message: `${open.because}, and ORIGIN is no https address: passwords may travel readable by others. Put a proxy that speaks https in front, and set ORIGIN to its address.`
		});
	let isOpen = true;
	const listeners = new Set<() => void>();
	const hub = new Hub(store.db);
	const services: Services = {
		settings,
		store,
		saver: new Saver(store.db, (workbookId, number) => hub.tell(workbookId, number), documents),
		hub,
		pool: new Pool({
			threads: settings.evaluationsAtOnce,
			seconds: settings.evaluationSeconds,
			megabytes: settings.evaluationMegabytes,
			waiting: EVALUATIONS_WAITING
		}),
		log,
		signIns: new RateLimit(SIGN_INS_PER_MINUTE),
		now,
		isOpen: () => isOpen,
		whenStopping: (listener) => {
			listeners.add(listener);
			return () => listeners.delete(listener);
		}
	};
	log.write('info', { event: 'started', message: store.kind });
	const beginStop = () => {
		isOpen = false;
		for (const listener of [...listeners]) listener();
		hub.close();
	};
	return {
		app: new App(services),
		services,
		beginStop,
		async stop() {
			beginStop();
			await services.pool.close();
			await documents.close();
			await store.close();
			log.write('info', { event: 'stopped' });
		}
	};
}
