/**
 * The commands of the command line: `evaluate FILE`, `check FILE`, `review FILE`, `ranges FILE`, `study FILE`, `solve FILE`, `paper FILE`, `roll FILE`, `functions`, `units`, `schema`;
 * those on the store (`account`, `backup`, `restore`) stand in `store-commands.ts`. Exit 0: done and well; 1: something in the
 * workbook fails; 2: the command or the file cannot be read.
 */
import { checkCommand } from './check';
import type { CommandOutput } from './command-output';
import { evaluateCommand } from './evaluate';
import { functionsCommand, unitsCommand } from './reference';
import { rangesCommand } from './ranges';
import { reviewCommand } from './review';
import { schemaCommand } from './schema';
import { studyCommand } from './study';

const USAGE = `metrewright evaluate FILE [--scenario ID]... [--quantity NAME]... [--json]
    computes a workbook and prints its values
metrewright check FILE [--json]
    proves every formula and every plan, holds every range and check, compares the two engines
metrewright check --faults N [--seed S] FILE [--json]
    seeds N faults into a copy, one at a time, and says which of them would pass unnoticed
metrewright review FILE [--all] [--template FILE] [--json]
    lists what somebody should look over once: numbers in formulas, entries far from their siblings …
metrewright ranges FILE [--quantity NAME]... [--accept FILE] [--json]
    suggests usual ranges for entries, or writes a copy of the workbook with them
metrewright study FILE [NAME] [--draws N] [--seed S] [--json]
    lists the studies of a workbook, or runs one
metrewright solve FILE [PROGRAMME] [--scenario ID]... [--out FILE] [--json]
    makes the plans of a workbook's programmes and proves each the best
metrewright roll FILE [--set NAME] [--date DAY] [--out FILE] [--json]
    moves dated months on by one: the first, closed, leaves as a frozen copy, and one comes at the end
metrewright paper FILE [NAME --out FILE.pdf] [--scenario ID]... [--format a4|letter] [--author WHO] [--question TEXT]
        [--open TEXT]... [--left-out TEXT]... [--date DAY] [--locale LOCALE] [--studies] [--force]
    lists the papers of a workbook, or makes one as a tagged PDF; --studies runs the studies that it shows
metrewright functions [NAME] [--json]
    lists what formulas may call, or says what one function does
metrewright units [SYMBOL] [--json]
    lists the units that every workbook knows, or says what one of them is
metrewright schema
    prints the JSON Schema of the file format
metrewright account list | account add-owner EMAIL | account reset EMAIL
    lists who has an account on the server; makes one that manages it; gives somebody a new password, which is asked for
metrewright account make-administrator EMAIL | account unmake-administrator EMAIL | account hand-over FROM TO
    lets a person manage the server, or no longer; makes TO owner of all workbooks that FROM owns
metrewright token add EMAIL NAME --days N [--write] [--workbook ID]... | token list EMAIL | token end EMAIL ID
    makes a secret by which a program reads, or reads and saves, in a person's name; lists them; ends one
metrewright audit export FILE | audit verify [FILE] [--anchor NUMBER:DIGEST]
    writes the server's audit trail as JSON lines; says whether it, or such a file, is whole and as it was written
metrewright backup FILE
    writes everything in the store to one file
metrewright restore FILE
    puts such a file into an empty store
`;

export async function answer(args: readonly string[]): Promise<CommandOutput> {
	const [command, ...rest] = args;
	switch (command) {
		case 'evaluate':
			return evaluateCommand(rest);
		case 'check':
			return checkCommand(rest);
		case 'review':
			return reviewCommand(rest);
		case 'ranges':
			return rangesCommand(rest);
		case 'study':
			return studyCommand(rest);
		case 'solve':
			return (await import('./solve')).solveCommand(rest);
		case 'roll':
			return (await import('./roll')).rollCommand(rest);
		case 'paper':
			return (await import('./paper')).paperCommand(rest);
		case 'functions':
			return functionsCommand(rest);
		case 'units':
			return unitsCommand(rest);
		case 'schema':
			return schemaCommand(rest);
		case undefined:
		case 'help':
		case '--help':
			return { out: USAGE, code: command === undefined ? 2 : 0 };
		default:
			return { out: '', err: `There is no command "${command}".\n${USAGE}`, code: 2 };
	}
}
