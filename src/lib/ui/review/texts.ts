/** What the Review page says; what each line says is worded where it is found. */
import { inLanguage } from '../language';

const en = {
	title: 'Review',
	lead: 'What somebody should look over once: none of it is wrong for certain. Tick a line off with your name and a reason; it comes back when what it speaks of changes.',
	looking: 'Looking through the workbook …',
	count: (open: number, done: number) =>
		`${open === 1 ? '1 line' : `${open} lines`} to review, ${done} ticked off`,
	nothing: 'Nothing is left to look over.',
	of: (label: string, members: string) => (members ? `${label}, ${members}` : label),
	inScenario: (title: string) => `in ${title}`,
	isBack: 'changed since it was ticked off',
	tickOff: 'Tick off',
	tickOffOf: (label: string) => ` ${label}`,
	tickAll: (count: number) => `Tick off all ${count}`,
	name: 'Your name',
	reason: 'Why it is right as it stands',
	cancel: 'Cancel',
	done: (count: number) => `${count} ticked off`,
	by: (name: string, reason: string) => `${name}: ${reason}`,
	openAgain: 'Open again',
	usual: 'Usual ranges to accept',
	usualWhy:
		'A number outside of its usual range is taken, with a caution beside it. These are suggested from what stands: a third of the least to three times the most.',
	usualCount: (sheet: string, count: number) => `${sheet}: ${count}`,
	accept: (count: number) => (count === 1 ? 'Accept 1 range' : `Accept ${count} ranges`),
	acceptIn: (sheet: string) => ` of ${sheet}`
};

export const texts = inLanguage({ en });
