/** The table behind a picture. How it is written as a file is said in `exchange/csv/write.ts`. */
export { csvOf, guarded, type Entry, type PlainTable } from '$lib/exchange/csv/write';
