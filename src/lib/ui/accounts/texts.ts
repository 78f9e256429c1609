/** What the page of accounts says. */
import { inLanguage } from '../language';

const en = {
	// +page
	accounts: 'Accounts',

	// Accounts
	askingTheServer: 'Asking the server',
	tryAgain: 'Try again',
	forAdministrators:
		'This page is for administrators of this server. Sign in as one, or ask one for what you need.',
	noAccounts:
		'This server has no accounts: whoever sits at this machine may do everything. Make the first account on the command line.',
	toSharing: 'Share and people',

	// PeopleHere
	peopleOfThisServer: 'People of this server',
	peopleCount: (count: number) =>
		count === 1 ? 'One person has an account.' : `${count} people have an account.`,
	lineOf: (email: string, since: string, seen: string) => `${email}, here since ${since}, ${seen}`,
	seen: (sessions: number, at: string) =>
		sessions === 1 ? `signed in, last seen ${at}` : `signed in ${sessions} times, last seen ${at}`,
	notSignedIn: 'signed in nowhere',
	you: 'you',
	administrator: 'administrator',
	manage: 'Manage',
	close: 'Close',

	// ManagePerson
	mayBegin: 'may put new workbooks on this server',
	mayInvite: 'may invite people who have no account here',
	maySteward: 'manages this server: people, invitations, the trail',
	stewardsMay: 'Administrators may do both, whatever is set here.',
	isSet: (name: string) => `What ${name} may do is set.`,
	newPassword: 'Make a link for a new password',
	linkTo: (name: string, until: string) =>
		`Give this address to ${name}, by a way you trust. It sets a new password once, until ${until}, and is not shown again. The old password holds until then:`,
	copyIt: 'Copy it',
	isCopied: 'The address is copied.',
	signOutEverywhere: 'Sign out everywhere',
	isSignedOut: (name: string) => `${name} is signed out everywhere.`,
	handOver: 'Hand over the workbooks',
	ownsNothing: (name: string) => `${name} owns no workbook.`,
	owns: (name: string, titles: readonly string[]) =>
		`${name} owns ${titles.length === 1 ? 'one workbook' : `${titles.length} workbooks`}: ${titles.join(', ')}.`,
	whatHandingOverDoes: (name: string) =>
		`The one you choose becomes their owner, and ${name} has no part in them any more. Invitations that ${name} made to them end.`,
	nobodyElse: 'Nobody else has an account here. Invite somebody first.',
	toWhom: 'To',
	choose: 'choose a person',
	handThemOver: 'Hand them over',
	areHandedOver: (name: string, count: number) =>
		`${name} owns ${count === 1 ? 'the workbook' : `the ${count} workbooks`} now.`,
	remove: 'Remove the account',
	whatRemovalTakes: (name: string) =>
		`The name, the address and the sign-ins of ${name} are removed for good, and invitations that ${name} made end. Revisions stay, without the name; the trail keeps who did what. Workbooks that only ${name} owns must be handed over first.`,
	removeIt: 'Remove it',
	isRemoved: (name: string) => `The account of ${name} is removed.`,
	cancel: 'Cancel',

	// WaitingHere
	invitations: 'Invitations',
	noneOpen: 'Nobody is invited at present.',
	toTheServer: 'to this server',
	toAWorkbook: 'to a workbook',
	waiting: (to: string, by: string, until: string) =>
		`invited ${to}${by ? ` by ${by}` : ''}, until ${until}`,
	withdraw: 'Withdraw',
	ofWhom: (email: string) => `the invitation of ${email}`,
	isWithdrawn: (email: string) =>
		`The invitation of ${email} is withdrawn: its address lets nobody in.`,
	inviteByAddress: 'Invite by e-mail address, without a part in any workbook',
	invite: 'Invite',
	giveAddress:
		'Give this address to the person, by a way you trust. It works once, for seven days, and is not shown again:',

	// Tokens
	tokens: 'API tokens',
	whatTokensDo:
		'A program uses one in your name, sent as “Authorization: Bearer …”. It works on workbooks alone, never does more than you may, and what it does is named in the trail.',
	tokenLine: (scope: string, where: string, until: string, used: string) =>
		`${scope}, ${where}, until ${until}, ${used}`,
	scopes: { read: 'reads', write: 'reads and saves' },
	allWorkbooks: 'all your workbooks',
	someWorkbooks: (titles: readonly string[]) => titles.join(', '),
	goneWorkbook: 'one that is gone',
	lastUsed: (at: string) => `last used ${at}`,
	neverUsed: 'never used',
	endIt: 'End it',
	ofToken: (name: string) => `the token ${name}`,
	hasEnded: (name: string) => `The token ${name} has ended.`,
	makeAToken: 'Make a token',
	tokenName: 'What it is for',
	tokenExample: 'for example: nightly price feed',
	mayDo: 'It',
	inWhich: 'In',
	forDays: 'Days until it ends by itself, 366 at most',
	makeIt: 'Make it',
	tokenMade: (name: string, until: string) =>
		`This is the secret of ${name}. It works until ${until}, and is not shown again:`,

	// ManagePerson, tokens
	endTokens: 'End their API tokens',
	tokensEnded: (name: string) => `The API tokens of ${name} have ended.`,

	// Trail
	trail: 'The trail',
	whatTheTrailIs:
		'Who signed in, saved, read a whole workbook, took data away or changed what people may do. It is only ever added to, and each entry carries a digest of all before it. “audit verify” on the command line tells whether it is whole.',
	when: 'When',
	who: 'Who',
	what: 'What',
	number: 'No.',
	nobodyNamed: 'nobody signed in',
	byToken: (name: string, token: string) => `${name}, by the token ${token}`,
	older: 'Older entries',
	takeItAway: 'Export it as lines',

	// NewPassword
	setANewPassword: 'Set a new password',
	howToSet:
		'At least 12 characters; several words are fine. You are then signed out everywhere and sign in with it.',
	theNewPassword: 'The new password',
	setIt: 'Set it',
	isNew: 'The new password is set. Sign in with it.'
};

export const texts = inLanguage({ en });
