/** How large the file of a workbook may be: told once, for the page, the command line and the server. */

const MEGABYTE = 1024 * 1024;

/** No server can be set to take more. In characters where a text is at hand, which are bytes for all but a few. */
export const MOST_MEGABYTES = 64;
export const MOST_BYTES = MOST_MEGABYTES * MEGABYTE;

export const megabytes = (count: number): number => count * MEGABYTE;
/** "65 MB", "16 kB": what is above a limit is never rounded down to it. */
export const sizeWords = (bytes: number): string =>
	bytes < MEGABYTE ? `${Math.ceil(bytes / 1024)} kB` : `${Math.ceil(bytes / MEGABYTE)} MB`;
