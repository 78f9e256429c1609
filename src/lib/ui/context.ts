/**
 * How pages and components reach the open workbook: set once by the layout, read everywhere below it.
 */
import { createContext } from 'svelte';
import type { OpenDocument } from './open-document.svelte';
import type { Session } from './session.svelte';

export const [getSession, setSession] = createContext<Session>();
export const [getOpenDocument, setOpenDocument] = createContext<OpenDocument>();
