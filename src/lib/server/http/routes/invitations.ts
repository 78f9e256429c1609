/** Invitations: asking somebody in, and coming in. */
import { z } from '$lib/server/zod';
import {
	acceptedSchema,
	invitationsSchema,
	invitedSchema,
	roleGivenSchema
} from '$lib/protocol/answers';
import { note } from '../../people/audit';
import {
	findInvitation,
	invite,
	listInvitations,
	useInvitation,
	withdraw
} from '../../people/invitations';
import { hashPassword, isPassword, LONGEST, passwordProblem } from '../../people/passwords';
import { addPerson, personByEmail } from '../../people/people';
import { includes, ROLES } from '$lib/protocol/roles';
import { may } from '../../people/rights';
import { changeRole, giveRole, roleOf } from '../../people/memberships';
import { guessed } from '../guess';
import { problem } from '../problem';
import { empty, json, route } from '../route';
import { signedIn } from './session';

const group = 'invitations';
const email = z.email().max(254);
const answer = { 200: { description: 'All that are open', schema: invitationsSchema } };
const invited = {
	201: { description: 'The link’s secret is in the answer, this once', schema: invitedSchema }
};

export const invitationRoutes = [
	route({
		method: 'GET',
		path: '/api/v1/invitations',
		needs: 'steward',
		group,
		summary: 'Open invitations of the whole installation',
		answers: answer,
		handle: async ({ services }) =>
			json({ invitations: await listInvitations(services.store.db, null, services.now()) })
	}),
	route({
		method: 'POST',
		path: '/api/v1/invitations',
		needs: 'steward',
		group,
		summary: 'Invites a person to the installation, without a part in any workbook',
		body: z.strictObject({ email }),
		answers: invited,
		handle: async ({ services, who, body, address }) => {
			const { db } = services.store;
			const now = services.now();
			const by = who.person!.id;
			const made = await invite(db, { ...body, workbookId: null, role: null, by, now });
			await note(db, { now, event: 'invited', personId: by, subject: body.email, address });
			return json(made, { status: 201 });
		}
	}),
	route({
		method: 'DELETE',
		path: '/api/v1/invitations/{invitation}',
		needs: 'steward',
		group,
		summary: 'Withdraws an invitation',
		answers: { 204: { description: 'Withdrawn' }, 404: { description: 'No such invitation' } },
		handle: async ({ services, who, path, address }) => {
			const { db } = services.store;
			if (!(await useInvitation(db, path('invitation')))) return noSuchInvitation();
			const personId = who.person!.id;
			const now = services.now();
			await note(db, { now, event: 'invitation_withdrawn', personId, address });
			return empty();
		}
	}),
	route({
		method: 'POST',
		path: '/api/v1/invitations/accept',
		needs: 'anyone',
		group,
		summary: 'Takes an invitation up: makes the account, or joins with the one there is',
		body: z.strictObject({
			token: z.string().min(20).max(200),
			name: z.string().trim().min(1).max(100).optional(),
			password: z.string().min(1).max(LONGEST)
		}),
		answers: {
			200: { description: 'Signed in; the answer sets a cookie', schema: acceptedSchema },
			401: { description: 'The account’s password is wrong' },
			429: { description: 'Too many wrong ones; Retry-After says how long to wait' },
			404: { description: 'No such invitation' },
			422: { description: 'The new password is too easy' }
		},
		handle: async (call) => {
			const { services, body, address } = call;
			const { db } = services.store;
			const now = services.now();
			const invitation = await findInvitation(db, body.token, now);
			if (!invitation)
				return problem(
					'not-found',
					'This invitation is unknown, used or too old. Ask for another one.'
				);
			let person = await personByEmail(db, invitation.email);
			if (person) {
				// The link alone must not open an account that somebody has already.
				const { id: personId, email, password } = person;
				const tried = await guessed(call, { email, personId, where: 'invitation' }, () =>
					isPassword(password, body.password)
				);
				if (tried.is === 'refused') return tried.answer;
				if (tried.is === 'wrong')
					return problem('wrong-sign-in', 'You have an account here; its password is another.');
			} else {
				const bad = await passwordProblem(body.password, invitation.email);
				if (bad) return problem('wrong-content', bad);
				const password = await hashPassword(body.password);
				const name = body.name ?? invitation.email.split('@')[0]!;
				if (!(await useInvitation(db, invitation.id))) return usedUp();
				await addPerson(db, { email: invitation.email, name, password, steward: false, now });
				person = await personByEmail(db, invitation.email);
				if (!person) return usedUp();
				await note(db, { now, event: 'account_made', personId: person.id, address });
			}
			await useInvitation(db, invitation.id);
			if (invitation.workbookId !== null && invitation.role !== null) {
				const has = await roleOf(db, invitation.workbookId, person.id);
				// An invitation never takes anything away.
				if (has === null || !includes(has, invitation.role))
					await giveRole(db, invitation.workbookId, person.id, invitation.role);
				await note(db, {
					now,
					event: 'joined',
					personId: person.id,
					subject: invitation.workbookId,
					detail: invitation.role,
					address
				});
			}
			const headers = await signedIn(call, person, null);
			return json({ workbook: invitation.workbookId, role: invitation.role }, { headers });
		}
	}),
	route({
		method: 'GET',
		path: '/api/v1/workbooks/{workbook}/invitations',
		needs: 'owner',
		group,
		summary: 'Open invitations to a workbook',
		answers: answer,
		handle: async ({ services, path }) =>
			json({
				invitations: await listInvitations(services.store.db, path('workbook'), services.now())
			})
	}),
	route({
		method: 'POST',
		path: '/api/v1/workbooks/{workbook}/invitations',
		needs: 'owner',
		group,
		summary: 'Invites a person to a workbook; one with an account here gets the role at once',
		body: z.strictObject({ email, role: z.enum(ROLES) }),
		answers: { ...invited, 200: { description: 'The role was given', schema: roleGivenSchema } },
		handle: async ({ services, who, body, path, address }) => {
			if (who.mode === 'single')
				return problem('no-accounts', 'Make the first account on the command line.');
			const { db } = services.store;
			const now = services.now();
			const workbookId = path('workbook');
			const by = who.person!.id;
			const subject = body.email;
			const detail = `${body.role} ${workbookId}`;
			const known = await personByEmail(db, body.email);
			if (known) {
				if ((await changeRole(db, workbookId, known.id, body.role)) === 'last_owner')
					return problem('conflict', 'A workbook needs an owner. Make another one first.');
				await giveRole(db, workbookId, known.id, body.role);
				await note(db, { now, event: 'role_changed', personId: by, subject, detail, address });
				return json({ person: known.id, role: body.role });
			}
			if (!may(who.person!, 'mayInvite'))
				return problem(
					'not-allowed',
					`${body.email} has no account here, and you may not invite people who have none. Ask an administrator to invite them, then give them their role.`
				);
			const made = await invite(db, { ...body, workbookId, by, now });
			await note(db, { now, event: 'invited', personId: by, subject, detail, address });
			return json(made, { status: 201 });
		}
	}),
	route({
		method: 'DELETE',
		path: '/api/v1/workbooks/{workbook}/invitations/{invitation}',
		needs: 'owner',
		group,
		summary: 'Withdraws an invitation to a workbook: its link lets nobody in any more',
		answers: { 204: { description: 'Withdrawn' }, 404: { description: 'No such invitation' } },
		handle: async ({ services, who, path, address }) => {
			const { db } = services.store;
			const subject = path('workbook');
			if (!(await withdraw(db, path('invitation'), subject))) return noSuchInvitation();
			const personId = who.person?.id ?? null;
			const now = services.now();
			await note(db, { now, event: 'invitation_withdrawn', personId, subject, address });
			return empty();
		}
	})
];

const noSuchInvitation = () =>
	problem('not-found', 'There is no such invitation; it may have been used.');

const usedUp = () => problem('not-found', 'This invitation was used a moment ago. Sign in.');
