/**
 * What the server says: one JSON object a line on standard output, for machines to read. Only named fields are
 * written, so that no body, cookie, password or address line of a request gets in by accident.
 */
import type { Settings } from './settings';

const LEVELS = ['debug', 'info', 'warn', 'error', 'silent'] as const;
type Level = (typeof LEVELS)[number];

export interface LogFields {
	readonly event: string;
	readonly request?: string;
	readonly method?: string;
	/** The pattern, not the path: "/api/v1/workbooks/{workbook}". */
	readonly route?: string;
	readonly status?: number;
	readonly ms?: number;
	readonly person?: string;
	readonly workbook?: string;
	readonly message?: string;
	readonly stack?: string;
	readonly count?: number;
}

export interface Log {
	write(level: Exclude<Level, 'silent'>, fields: LogFields): void;
}

export function openLog(
	least: Settings['logLevel'],
	now: () => number,
	print: (line: string) => void = (line) => process.stdout.write(`${line}\n`)
): Log {
	return {
		write(level, fields) {
			if (LEVELS.indexOf(level) < LEVELS.indexOf(least)) return;
			print(JSON.stringify({ at: new Date(now()).toISOString(), level, ...fields }));
		}
	};
}
