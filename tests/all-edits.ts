/** Every edit is there from the start, as it is on a page once its first numbers stand. */
import '$lib/workbook/commands/all';
