/**
 * What the server answers with, told once: the interface prints these schemas, its tests hold every answer against
 * them, and the browser takes its types from them. The browser imports types alone, so that no page carries a schema.
 */
import { z } from '$lib/workbook/zod';
import { changeSchema } from './change-schema';
import { ROLES, TOKEN_SCOPES } from './roles';

/** Milliseconds since 1970. */
const time = z.int();
const role = z.enum(ROLES);
const number = z.int().check(z.minimum(1));

export const personSchema = z.strictObject({
	id: z.string(),
	email: z.string(),
	name: z.string(),
	/** Who may invite to the whole server. */
	steward: z.boolean(),
	/** What is set for the person; stewards may both. */
	mayBegin: z.boolean(),
	mayInvite: z.boolean()
});
export type Person = z.infer<typeof personSchema>;

export const whoSchema = z.strictObject({
	/** `single`: one person's own machine, where nobody signs in. */
	mode: z.enum(['single', 'accounts']),
	person: z.nullable(personSchema)
});
export type Who = z.infer<typeof whoSchema>;

export const signedInSchema = z.strictObject({
	id: z.string(),
	createdAt: time,
	seenAt: time,
	expiresAt: time,
	agent: z.string(),
	current: z.boolean()
});
export type SignedIn = z.infer<typeof signedInSchema>;
export const sessionsSchema = z.strictObject({ sessions: z.array(signedInSchema) });
export type Sessions = z.infer<typeof sessionsSchema>;

export const sharedEntrySchema = z.strictObject({
	id: z.string(),
	title: z.string(),
	/** Number of the newest revision. */
	head: number,
	createdAt: time,
	savedAt: time,
	/** Left out for those who see open values alone. */
	savedBy: z.optional(z.string()),
	/** Null where everybody who is here may do everything. */
	role: z.nullable(role)
});
export type SharedEntry = z.infer<typeof sharedEntrySchema>;
export const workbooksSchema = z.strictObject({ workbooks: z.array(sharedEntrySchema) });
export type Workbooks = z.infer<typeof workbooksSchema>;

export const begunSchema = z.strictObject({ id: z.string(), revision: number });
export type Begun = z.infer<typeof begunSchema>;

export const savedSchema = z.strictObject({
	revision: number,
	/** Whether changes of others are in it. */
	merged: z.boolean(),
	changes: z.array(changeSchema),
	/** The workbook as it stands now, where that is not what was sent. */
	workbook: z.optional(z.unknown())
});
export type SavedAnswer = z.infer<typeof savedSchema>;

/** The id is null on a machine without accounts, and of those who left. */
const author = z.strictObject({ id: z.nullable(z.string()), name: z.string() });

export const revisionSchema = z.strictObject({
	number,
	madeAt: time,
	author,
	reason: z.string(),
	changes: z.array(changeSchema),
	/** The number of the revision that was brought back. */
	restores: z.nullable(number),
	name: z.nullable(z.string()),
	locked: z.boolean()
});
export type Revision = z.infer<typeof revisionSchema>;
export const revisionsSchema = z.strictObject({ revisions: z.array(revisionSchema) });
export type Revisions = z.infer<typeof revisionsSchema>;

const scalar = z.union([z.number(), z.string(), z.boolean(), z.null()]);
/** One entered value; `was` and `now` are left out where nothing stood or stands. */
const difference = {
	quantity: z.string(),
	scenario: z.string(),
	at: z.array(z.string()),
	was: z.optional(scalar),
	now: z.optional(scalar)
};
export const valueChangeSchema = z.strictObject({
	...difference,
	number,
	madeAt: time,
	author,
	reason: z.string()
});
export type ValueChange = z.infer<typeof valueChangeSchema>;
export const historySchema = z.strictObject({ changes: z.array(valueChangeSchema) });
export type History = z.infer<typeof historySchema>;

export const comparedSchema = z.strictObject({
	from: number,
	to: number,
	changes: z.array(changeSchema),
	values: z.array(z.strictObject(difference))
});
export type Compared = z.infer<typeof comparedSchema>;

export const memberSchema = z.strictObject({
	id: z.string(),
	email: z.string(),
	name: z.string(),
	role
});
export type Member = z.infer<typeof memberSchema>;
export const membersSchema = z.strictObject({ people: z.array(memberSchema) });
export type Members = z.infer<typeof membersSchema>;

export const invitationSchema = z.strictObject({
	id: z.string(),
	email: z.string(),
	/** Null: to the server as a whole. */
	workbookId: z.nullable(z.string()),
	role: z.nullable(role),
	invitedBy: z.string(),
	createdAt: time,
	expiresAt: time
});
export type Invitation = z.infer<typeof invitationSchema>;
export const invitationsSchema = z.strictObject({ invitations: z.array(invitationSchema) });
export type Invitations = z.infer<typeof invitationsSchema>;
export const invitedSchema = z.strictObject({ invitation: invitationSchema, token: z.string() });
/** A person with an account here gets the role at once. */
export const roleGivenSchema = z.strictObject({ person: z.string(), role });
export type Invited = z.infer<typeof invitedSchema> | z.infer<typeof roleGivenSchema>;
export const acceptedSchema = z.strictObject({
	workbook: z.nullable(z.string()),
	role: z.nullable(role)
});
export type Accepted = z.infer<typeof acceptedSchema>;

export const peopleSchema = z.strictObject({
	people: z.array(
		z.strictObject({
			...personSchema.shape,
			createdAt: time,
			/** Browsers that they are signed in from. */
			sessions: z.int(),
			/** Null for those who are signed in nowhere. */
			seenAt: z.nullable(time)
		})
	)
});
export type People = z.infer<typeof peopleSchema>;
export type PersonHere = People['people'][number];

export const resetLinkSchema = z.strictObject({ token: z.string(), expiresAt: time });
export type ResetLink = z.infer<typeof resetLinkSchema>;
export const ownedSchema = z.strictObject({
	workbooks: z.array(
		z.strictObject({
			id: z.string(),
			title: z.string(),
			/** Nobody else owns it. */
			alone: z.boolean()
		})
	)
});
export type Owned = z.infer<typeof ownedSchema>;
export const handedOverSchema = z.strictObject({ workbooks: z.array(z.string()) });
export type HandedOver = z.infer<typeof handedOverSchema>;
export const auditSchema = z.strictObject({
	entries: z.array(
		z.strictObject({
			id: z.string(),
			/** From 1 on, without gaps. */
			seq: number,
			at: time,
			event: z.string(),
			personId: z.nullable(z.string()),
			/** Names as they were then. */
			personName: z.string(),
			/** The API token by which it was done; empty for none. */
			token: z.string(),
			subject: z.string(),
			subjectName: z.string(),
			detail: z.string(),
			address: z.string(),
			/** Of this entry and all before it. */
			digest: z.string()
		})
	)
});
export type Audit = z.infer<typeof auditSchema>;
export type AuditEntry = Audit['entries'][number];

export const tokenSchema = z.strictObject({
	id: z.string(),
	name: z.string(),
	scope: z.enum(TOKEN_SCOPES),
	/** Null: all in which the person has a part. */
	workbooks: z.nullable(z.array(z.string())),
	createdAt: time,
	expiresAt: time,
	/** Null for one that was never used. */
	usedAt: z.nullable(time)
});
export type ApiToken = z.infer<typeof tokenSchema>;
export const tokensSchema = z.strictObject({ tokens: z.array(tokenSchema) });
export type Tokens = z.infer<typeof tokensSchema>;
export const tokenMadeSchema = z.strictObject({
	id: z.string(),
	secret: z.string(),
	expiresAt: time
});
export type TokenMade = z.infer<typeof tokenMadeSchema>;
