/** Puts what a request did into the audit trail: who asked and from where comes with the request. */
import { note, type AuditEvent } from '../people/audit';
import type { Saved } from '../saving';
import { faultOf } from '../store/faults';
import type { Call, Services } from './route';

export function noted(
	{ services, who, address }: Pick<Call, 'services' | 'who' | 'address'>,
	event: AuditEvent,
	{ subject, detail }: { readonly subject?: string; readonly detail?: string } = {}
): Promise<void> {
	return note(services.store.db, {
		now: services.now(),
		event,
		personId: who.person?.id ?? null,
		address,
		...(who.token && { token: who.token.name }),
		...(subject !== undefined && { subject }),
		...(detail !== undefined && { detail })
	});
}

type Working = Pick<Call, 'services' | 'who' | 'address' | 'path'>;

/** What is done with a workbook. One person on their own machine keeps no trail of it. */
export async function notedWork(
	call: Pick<Call, 'services' | 'who' | 'address'>,
	event: AuditEvent,
	subject: string,
	detail?: string
): Promise<void> {
	if (call.who.mode === 'single') return;
	await noted(call, event, { subject, ...(detail !== undefined && { detail }) });
}

export async function notedSave(call: Working, saved: Saved, detail = ''): Promise<void> {
	if (saved.kind === 'saved')
		await notedWork(
			call,
			'workbook_saved',
			call.path('workbook'),
			`revision ${saved.number}${detail}`
		);
}

/** Of one person reading one workbook again and again, as an open page does, an hour gives one entry. */
const AGAIN_MS = 3_600_000;
const MOST_REMEMBERED = 10_000;
const lastReadings = new WeakMap<Services, Map<string, number>>();

/** That a whole workbook went out. A full disk keeps nobody from reading, so there it is only logged. */
export async function notedReading(
	call: Working,
	event: 'workbook_read' | 'revision_read',
	detail: string
): Promise<void> {
	const { services, who, path } = call;
	const now = services.now();
	let readings = lastReadings.get(services);
	if (!readings || readings.size > MOST_REMEMBERED)
		lastReadings.set(services, (readings = new Map()));
	const of = event === 'workbook_read' ? '' : detail;
	const key = [who.person?.id, who.token?.id, path('workbook'), of].join(' ');
	const last = readings.get(key);
	if (last !== undefined && Math.abs(now - last) < AGAIN_MS) return;
	readings.set(key, now);
	try {
		await notedWork(call, event, path('workbook'), detail);
	} catch (error) {
		if (faultOf(error) !== 'unwritable') throw error;
		services.log.write('error', { event: 'trail_unwritable', message: event });
	}
}
