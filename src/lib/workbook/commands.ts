/** Every command, applied: `apply.ts` with all edits there from the start. */
import './commands/all';

export * from './apply';
