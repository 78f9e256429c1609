/** Fetches what changes more than a value: no first number waits for it, and nobody edits before there are any. */
export const fetchStructural = () => import('$lib/workbook/commands/all');
