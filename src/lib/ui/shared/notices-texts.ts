/** What any page says of a shared workbook. */
import { inLanguage } from '../language';

const en = {
	// SharedNotices
	forReading: 'For reading.',
	forReadingHint:
		'You may see this workbook, not change it. To try something, go on in a copy of your own.',
	makeMyOwnCopy: 'Make it my own copy',
	alsoChanged: (count: number) =>
		`${count === 1 ? 'One thing was' : `${count} things were`} changed by someone else too.`,
	choiceHint: 'Your work is kept here; it goes to the server once you have chosen.',
	choose: 'Choose',
	keptHereNotSent: 'Kept here, not sent.',
	toTheServer: 'To the server',
	tryAgain: 'Try again'
};

export const texts = inLanguage({ en });
