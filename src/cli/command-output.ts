/** What a command answers: text for standard output, for standard error, and the exit code. */
export interface CommandOutput {
	readonly out: string;
	readonly err?: string;
	readonly code: 0 | 1 | 2;
}
