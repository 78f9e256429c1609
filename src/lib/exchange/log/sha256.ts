/** The digest of a file by SHA-256 (FIPS 180-4), written out, as pages without a secure origin have none. */

const PRIMES = firstPrimes(64);
/** The first 32 bits of the fractional parts of roots of primes. */
const part = (root: number) => Math.floor((root - Math.floor(root)) * 2 ** 32);
const K = Int32Array.from(PRIMES, (prime) => part(Math.cbrt(prime)));
const START = PRIMES.slice(0, 8).map((prime) => part(Math.sqrt(prime)));

export function sha256(bytes: Uint8Array): string {
	const blocks = Math.ceil((bytes.length + 9) / 64);
	const tail = new Uint8Array(128);
	const whole = Math.floor(bytes.length / 64);
	tail.set(bytes.subarray(whole * 64));
	tail[bytes.length % 64] = 0x80;
	const view = new DataView(tail.buffer);
	const end = (blocks - whole) * 64;
	view.setUint32(end - 8, Math.floor(bytes.length / 2 ** 29));
	view.setUint32(end - 4, (bytes.length << 3) >>> 0);
	const state = Int32Array.from(START);
	const words = new Int32Array(64);
	for (let block = 0; block < blocks; block++) {
		const from = block < whole ? bytes : tail;
		takeIn(state, words, from, (block < whole ? block : block - whole) * 64);
	}
	return [...state].map((word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
}

const turned = (word: number, by: number) => (word >>> by) | (word << (32 - by));

function takeIn(state: Int32Array, words: Int32Array, bytes: Uint8Array, at: number): void {
	for (let i = 0; i < 16; i++) {
		const p = at + 4 * i;
		words[i] = (bytes[p]! << 24) | (bytes[p + 1]! << 16) | (bytes[p + 2]! << 8) | bytes[p + 3]!;
	}
	for (let i = 16; i < 64; i++) {
		const [early, late] = [words[i - 15]!, words[i - 2]!];
		const s0 = turned(early, 7) ^ turned(early, 18) ^ (early >>> 3);
		const s1 = turned(late, 17) ^ turned(late, 19) ^ (late >>> 10);
		words[i] = words[i - 16]! + s0 + words[i - 7]! + s1;
	}
	let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
	for (let i = 0; i < 64; i++) {
		const s1 = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
		const first = (h + s1 + ((e & f) ^ (~e & g)) + K[i]! + words[i]!) | 0;
		const s0 = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22);
		const second = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
		h = g;
		g = f;
		f = e;
		e = (d + first) | 0;
		d = c;
		c = b;
		b = a;
		a = (first + second) | 0;
	}
	[a, b, c, d, e, f, g, h].forEach((word, i) => (state[i] = state[i]! + word));
}

function firstPrimes(count: number): number[] {
	const primes: number[] = [];
	for (let n = 2; primes.length < count; n++)
		if (primes.every((prime) => n % prime !== 0)) primes.push(n);
	return primes;
}
