/** The digest of a file by SHA-256 (FIPS 180-4), as text. A page without a secure origin is given none by its browser. */
import { sha256 as digestOf } from '@noble/hashes/sha2';
import { bytesToHex } from '@noble/hashes/utils';

export const sha256 = (bytes: Uint8Array): string => bytesToHex(digestOf(bytes));
