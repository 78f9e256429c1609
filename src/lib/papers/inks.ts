/** Colours of papers, on screen and in the PDF. */
import type { Ink } from './paper';

/** As the screen's colours are on paper: of Okabe and Ito, told apart by all eyes. */
export const INKS: Readonly<Record<Ink, string>> = {
	ink: '#1b1d1f',
	soft: '#55595e',
	rule: '#c9cdd2',
	first: '#0072b2',
	second: '#009e73',
	third: '#d55e00',
	good: '#2f6f8f',
	bad: '#a5502e'
};

/** Words that warn. */
export const CAUTION = '#8a2d1c';
