/**
 * How pages and components reach the open workbook: set once by the layout, read everywhere below it.
 */
import { createContext } from 'svelte';
import type { Desk } from './desk.svelte';
import type { Session } from './session.svelte';
import type { Bench } from './studies/bench.svelte';

export const [getSession, setSession] = createContext<Session>();
export const [getDesk, setDesk] = createContext<Desk>();
export const [getBench, setBench] = createContext<Bench>();
