/** Who has which part in a workbook. */
import { z } from '$lib/server/zod';
import { membersSchema } from '$lib/protocol/answers';
import { note } from '../../people/audit';
import { changeRole, listMembers } from '../../people/memberships';
import { ROLES, type Role } from '$lib/protocol/roles';
import { problem } from '../problem';
import { empty, json, route, type Call } from '../route';

const group = 'members';
const answers = {
	204: { description: 'Done' },
	404: { description: 'No such member' },
	409: { description: 'The workbook would be left without an owner' }
};

export const memberRoutes = [
	route({
		method: 'GET',
		path: '/api/v1/workbooks/{workbook}/people',
		needs: 'owner',
		group,
		summary: 'Who has which role',
		answers: { 200: { description: 'By name', schema: membersSchema } },
		handle: async ({ services, path }) =>
			json({ people: await listMembers(services.store.db, path('workbook')) })
	}),
	route({
		method: 'PUT',
		path: '/api/v1/workbooks/{workbook}/people/{person}',
		needs: 'owner',
		group,
		summary: 'Changes a role',
		body: z.strictObject({ role: z.enum(ROLES) }),
		answers,
		handle: (call) => change(call, call.body.role)
	}),
	route({
		method: 'DELETE',
		path: '/api/v1/workbooks/{workbook}/people/{person}',
		needs: 'owner',
		group,
		summary: 'Takes a role away',
		answers,
		handle: (call) => change(call, null)
	})
];

async function change(
	{ services, path, who, address }: Pick<Call, 'services' | 'path' | 'who' | 'address'>,
	role: Role | null
): Promise<Response> {
	const { db } = services.store;
	const [workbook, person] = [path('workbook'), path('person')];
	const done = await changeRole(db, workbook, person, role);
	if (done === 'missing')
		return problem('not-found', 'This person has no part in the workbook. Invite them.');
	if (done === 'last_owner')
		return problem('conflict', 'A workbook needs an owner. Make another one first.');
	await note(db, {
		now: services.now(),
		event: 'role_changed',
		personId: who.person?.id ?? null,
		subject: person,
		detail: `${role ?? 'none'} ${workbook}`,
		address
	});
	return empty();
}
