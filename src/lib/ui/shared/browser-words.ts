/** What a browser said it was, in few words: "Firefox on Linux". It may say anything, so it is only ever a hint. */

const BROWSERS = [
	['Edg/', 'Edge'],
	['OPR/', 'Opera'],
	['Firefox/', 'Firefox'],
	['Chrome/', 'Chrome or Chromium'],
	['Safari/', 'Safari']
] as const;
const SYSTEMS = [
	['Android', 'Android'],
	['iPhone', 'an iPhone'],
	['iPad', 'an iPad'],
	['Windows', 'Windows'],
	['Mac OS X', 'a Mac'],
	['Linux', 'Linux']
] as const;

export function browserWords(agent: string): string {
	const named = (table: readonly (readonly [string, string])[]) =>
		table.find(([mark]) => agent.includes(mark))?.[1];
	const browser = named(BROWSERS) ?? 'a browser or program';
	const system = named(SYSTEMS);
	return system === undefined ? browser : `${browser} on ${system}`;
}
