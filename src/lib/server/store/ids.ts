/** Names for rows and secrets for people, from the system's source of randomness. */
import { createHash, randomBytes } from 'node:crypto';

/** Without letters that are read for each other. */
const LETTERS = '0123456789abcdefghjkmnpqrstvwxyz';

/** Sixteen letters, 80 bits: nobody meets one twice, and it can be read out. */
export function newId(): string {
	return [...randomBytes(16)].map((byte) => LETTERS[byte & 31]).join('');
}

/** A secret for a cookie or a link; 256 bits. */
export const newToken = (): string => randomBytes(32).toString('base64url');

/** What is kept of a secret. A secret of 256 bits needs no slow hash. */
export const hashOf = (secret: string): string => createHash('sha256').update(secret).digest('hex');
