/**
 * What a database refused, in one vocabulary for both: the drivers' own codes are read here alone.
 */
export type Fault =
	/** A key is there already. */
	| 'taken'
	/** Others are writing; try again. */
	| 'busy'
	/** No connection, no disk. */
	| 'unreachable'
	/** Nothing more can be written: the disk is full or read-only. */
	| 'unwritable';

const BY_CODE: readonly (readonly [RegExp, Fault])[] = [
	[/^(23505|SQLITE_CONSTRAINT_(PRIMARYKEY|UNIQUE))$/, 'taken'],
	[/^(40001|40P01|55P03|57014|SQLITE_(BUSY|LOCKED)\w*)$/, 'busy'],
	[/^(53100|SQLITE_(FULL|READONLY\w*))$/, 'unwritable'],
	[/^(08\w{3}|57P0\d|53300|3D000|28\w{3}|SQLITE_(CANTOPEN|IOERR)\w*)$/, 'unreachable'],
	[/^(ECONNREFUSED|ECONNRESET|ENOTFOUND|ETIMEDOUT|EPIPE|EHOSTUNREACH|EAI_AGAIN)$/, 'unreachable']
];

/** Null for what is no fault of the database: a mistake in the program. */
export function faultOf(error: unknown): Fault | null {
	if (!(error instanceof Error)) return null;
	const code = 'code' in error && typeof error.code === 'string' ? error.code : '';
	const known = BY_CODE.find(([pattern]) => pattern.test(code));
	if (known) return known[1];
	// The pool gives these two no code.
	return /timeout exceeded when trying to connect|Connection terminated/.test(error.message)
		? 'unreachable'
		: null;
}
