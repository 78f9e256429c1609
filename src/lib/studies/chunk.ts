/** Draws between two reports of progress, and those that a worker takes on at a time. */
export const CHUNK = 16_384;
