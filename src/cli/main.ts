/** Runs one command and writes its answer. */
import { answer } from './answer';
import type { CommandOutput } from './command-output';
import { askPassword } from './ask-password';

/** Commands that work on the store bring its packages with them; the others start without. */
const STORE_COMMANDS = ['account', 'token', 'audit', 'backup', 'restore'];

async function answered(words: readonly string[]): Promise<CommandOutput> {
	if (!STORE_COMMANDS.includes(words[0] ?? '')) return answer(words);
	const { storeCommand } = await import('./store-commands');
	return storeCommand(words, process.env, askPassword);
}

const { out, err, code } = await answered(process.argv.slice(2));
if (out) process.stdout.write(out);
if (err) process.stderr.write(err.endsWith('\n') ? err : `${err}\n`);
process.exitCode = code;
