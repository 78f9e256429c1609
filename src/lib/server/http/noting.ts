/** Puts what a request did into the audit trail: who asked and from where comes with the request. */
import { note, type AuditEvent } from '../people/audit';
import type { Call } from './route';

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
		...(subject !== undefined && { subject }),
		...(detail !== undefined && { detail })
	});
}
