/** Runs one command and writes its answer. */
import { answer } from './answer';

const { out, err, code } = answer(process.argv.slice(2));
if (out) process.stdout.write(out);
if (err) process.stderr.write(err.endsWith('\n') ? err : `${err}\n`);
process.exitCode = code;
