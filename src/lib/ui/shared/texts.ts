/** What the pages of sharing say. */
import { inLanguage } from '../language';

const en = {
	// +page
	shareAndPeople: 'Share and people',
	revisions: 'Revisions',

	// CompareRevisions
	putBeside: 'Put beside',
	compareRevisions: 'Compare revisions',
	whatChangedFrom: 'What changed from',
	fromRevision: 'From revision',
	to: 'to',
	toRevision: 'To revision',
	compare: 'Compare',
	noDifference: (from: number, to: number) =>
		`Nothing differs between revisions ${from} and ${to}.`,
	changesBetween: (from: number, to: number, count: number) =>
		`From revision ${from} to ${to}, ${count === 1 ? 'one change' : `${count} changes`}:`,
	computingMoves: 'What this moves in the results is being computed …',
	noHeadlines: 'The workbook names no results to show first, so what this moves is not told.',
	moved: (moves: readonly string[], more: number) =>
		moves.length === 0
			? 'It moves none of the headline results.'
			: `It moves ${moves.join('; ')}${more > 0 ? `; and ${more} more` : ''}.`,
	movesUnknown: (why: string) => `What this moves in the results cannot be told. ${why}`,
	closeTheComparison: 'Close the comparison',

	// RevisionResults
	compareResults: 'Compare the results',
	resultsOf: (from: number, to: number) => `Results of revision ${from} and ${to}`,
	inScenario: 'In the scenario',
	computingResults: (from: number, to: number) =>
		`Revisions ${from} and ${to} are fetched and computed …`,
	resultsUnknown: (why: string) => `The results cannot be compared: ${why}.`,
	nothingComputed: 'nothing in it has a value yet',
	result: 'Result',
	revisionHead: (number: number) => `Revision ${number}`,
	difference: 'Difference',
	addAResult: 'Add a result',
	aResult: 'a result …',
	bridge: 'Bridge',
	bridgeOf: (label: string) => `Bridge of ${label}`,
	bridging: (label: string) =>
		`The difference of ${label} is split by its causes, in the workbook as it is open …`,

	// Conflicts
	choicesLeft: (left: number) =>
		`${left === 1 ? 'One choice is' : `${left} choices are`} still to be made. Nothing is sent before.`,
	sameThingChanged: 'Someone else changed the same thing',
	sameThingsChanged: (count: number) => `Someone else changed the same ${count} things`,
	howToChoose:
		'Choose what is to stand. Theirs is on the server and stays in its history either way; until you choose, your work is kept in this browser and nothing is sent.',
	takeAllOfMine: 'Take all of mine',
	takeAllOfTheirs: 'Take all of theirs',
	itWas: (base: string) => `It was ${base}.`,
	mine: 'Mine',
	theirs: 'Theirs',
	saveWithTheseChoices: 'Save with these choices',
	chooseLater: 'Choose later',

	// Me
	browserSignedOut: 'That browser is signed out.',
	allOtherBrowsersSignedOut: 'All other browsers are signed out.',
	passwordChanged: 'The password is changed; other browsers are signed out.',
	you: 'You',
	addressAndOffice: (email: string, isAdministrator: boolean) =>
		`${email}${isAdministrator ? ', administrator of this server' : ''}`,
	accountsOfServer: 'Accounts of this server',
	signOut: 'Sign out',
	keptAfterSignOut:
		'Workbooks that you opened stay kept in this browser after you sign out. On a machine that others use, forget them under Open.',
	signedIn: 'Signed in',
	lastSeen: (at: string, isThisBrowser: boolean) =>
		`last seen ${at}${isThisBrowser ? ', this browser' : ''}`,
	signOutThere: 'Sign out there',
	signOutAllOthers: 'Sign out all others',
	changeThePassword: 'Change the password',
	exportMyData: 'Export my data',
	removeMyAccount: 'Remove my account',
	theOldPassword: 'The old password',
	theNewPassword: 'The new password',
	whatRemovalTakes:
		'Your name, address and sign-ins are removed for good, and invitations that you made end. Revisions that you saved stay, without your name; the trail of those who manage the server keeps who did what. Workbooks that only you own must have another owner first.',
	yourPassword: 'Your password',

	// OnServer
	onThisServer: 'On this server',
	invitationAccepted: (role: string, title: string) =>
		`Invitation accepted${role ? ` as ${role}` : ''} of ${title}. What is open in this browser is another workbook.`,
	seeWhatIsOpenToYou: 'See what is open to you',
	goToIt: 'Go to it',
	nothingShared: 'Nothing yet. Share the open workbook, and it stands here.',
	noPartYet:
		'Nothing yet that you have a part in. Share the open workbook, or ask an owner to invite you.',
	workbook: 'Workbook',
	lastSave: 'Last save',
	youAre: 'You are',
	actions: 'Actions',
	openHere: ', open here',
	revisionBy: (revision: number, name: string) =>
		`revision ${revision}${name ? `, by ${name}` : ''}`,
	opening: 'Opening',
	seeOpenValues: 'See the values that are not confidential',
	open: 'Open',
	remove: 'Remove',
	removalOf: (workbook: string) =>
		`${workbook} leaves everybody’s list. Copies that browsers keep stay there.`,
	removeIt: 'Remove it',
	cancel: 'Cancel',

	// OpenValues
	openValuesOf: (title: string, revision: number) =>
		`${title}: values that are not confidential, revision ${revision}`,
	askingServerValues: 'Asking the server for the values',
	noOpenValues: 'No value of this workbook is marked open. Ask its owner.',
	closeTheseValues: 'Close these values',

	// People
	hasAccount: (whom: string, role: string) => `${whom} has an account here and is now ${role}.`,
	theAddressIsCopied: 'The address is copied.',
	peopleOfThisWorkbook: 'People of this workbook',
	addressOf: (email: string, isMe: boolean) => `${email}${isMe ? ', you' : ''}`,
	roleOf: (name: string) => `Role of ${name}`,
	hasRoleNow: (name: string, role: string) => `${name} is now ${role}.`,
	takeOut: 'Take out',
	takingOut: (isMe: boolean, name: string) =>
		`${isMe ? 'You no longer see' : `${name} no longer sees`} this workbook on the server. Revisions keep the name.`,
	isTakenOut: (name: string) => `${name} is taken out.`,
	invitedUntil: (until: string) => `invited, until ${until}`,
	invitationWithdrawn: (email: string) =>
		`The invitation of ${email} is withdrawn: its address lets nobody in.`,
	withdraw: 'Withdraw',
	theInvitationOf: (email: string) => `the invitation of ${email}`,
	inviteEMailAddress: 'Invite by e-mail address',
	as: 'as',
	roleOfTheInvited: 'Role of the invited',
	invite: 'Invite',
	giveAddressPersonWayYou:
		'Give this address to the person, by a way you trust. It works once, for seven days, and is not shown again:',
	copyIt: 'Copy it',

	// RevisionLine
	locked: (name: string, isLocked: boolean) => `${name}${isLocked ? ', locked' : ''}`,
	backToRevision: (restores: number) => `back to revision ${restores}`,
	showFewer: 'Show fewer',
	showMore: (count: number) => `Show ${count} more`,
	nameOfRevision: (number: number) => `Name of revision ${number}`,
	nameExample: 'budget 2027, approved',
	lockHint: 'Lock it: only an owner takes the name away',
	nameAndLock: 'Name and lock',
	nameIt: 'Name it',
	restoring: (number: number) =>
		`The workbook goes back to revision ${number}, as a new revision; everything since stays in this list.`,
	restore: 'Restore',
	takingNameAway: (name: string | null) =>
		`Whoever relies on the name “${name}” no longer finds it.`,
	takeTheNameAway: 'Take the name away',
	whatItChanged: 'What it changed',
	revision: (number: number) => `, revision ${number}`,
	whatChangedSince: 'What changed since',
	theRevision: (number: number) => `revision ${number}`,
	rename: 'Rename',
	name: 'Name',
	fromTheRevision: (number: number) => `from revision ${number}`,

	// Revisions
	notShared:
		'This workbook is kept in this browser alone. On the server each save becomes a revision: who, when, why and what changed.',
	shareIt: 'Share it',
	first: 'first.',
	reasonNextSave: 'Reason for the next save',
	reasonExample: 'for example: resin price of the new contract',
	tryAgain: 'Try again',
	olderRevisions: 'Older revisions',
	askingServerRevisions: 'Asking the server for the revisions',

	// Shared
	builtOn: (number: number) =>
		`The open workbook is built on revision ${number}. What you do meanwhile is kept here and sent later.`,
	askingTheServer: 'Asking the server',
	noAccounts:
		'This server has no accounts: it answers this machine alone, and whoever sits here may do everything. For several people, make the first account on the command line.',

	// SignIn
	takeUpTheInvitation: 'Take up the invitation',
	signIn: 'Sign in',
	howToAccept:
		'Choose a name and a password. If you have an account here already, give its password.',
	whySignIn:
		'What you work on is kept in this browser without it; on the server it takes an account.',
	yourName: 'Your name',
	eMailAddress: 'E-mail address',
	password: 'Password',
	acceptInvitation: 'Accept invitation',

	// ThisWorkbook
	thisWorkbook: 'This workbook',
	isOnServer: (number: number, at: string) => `is on this server, revision ${number}, saved ${at}.`,
	yourRole: (role: string, means: string) => `You are ${role}: ${means}.`,
	keptThenSent: 'What you do is kept in this browser first, then sent after a quiet moment.',
	seeItsRevisions: 'See its revisions',
	goCopyMyOwn: 'Go on in a copy of my own',
	isInBrowserAlone: 'is kept in this browser alone.',
	whatSharingGives:
		'On the server each save becomes a revision with its changes, and others can work on it too.',
	shareOnThisServer: 'Share on this server',

	// ValueHistory
	itsHistory: 'Its history',
	whoChangedWhen: 'Who changed it, and when',
	asItCame: 'As it was when the workbook came to the server.',
	fromTo: (before: string, after: string) => `${before} to ${after}`,
	historyLine: (scenario: string, name: string, at: string, number: number, reason: string) =>
		`${scenario ? `${scenario}, ` : ''}${name}, ${at}, revision ${number}${reason ? `: ${reason}` : ''}`
};

export const texts = inLanguage({ en });
