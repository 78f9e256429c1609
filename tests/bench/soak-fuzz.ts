/**
 * Requests that no honest program sends: broken, deep and huge JSON, prototype names, tricks with paths, wrong types and
 * methods, headers full of nonsense. None may be answered with a fault of the server, and the memory must stay.
 */
import { OWN_HEADER } from '$lib/server/http/guard';
import { ROUTES } from '$lib/server/http/routes';
import type { Running } from '$lib/server/start';
import { saveWorkbook } from '$lib/workbook/save';
import { withPrices } from './soak-workbook';

export interface FuzzFigures {
	readonly requests: number;
	readonly faults: readonly string[];
	readonly statuses: Readonly<Record<number, number>>;
	/** Growth of the heap in megabytes, from a tenth of the way on. */
	readonly growthMb: number;
}

/** Numbers from a seed, so that a finding can be met again. */
function dice(seed: number): (sides: number) => number {
	let state = seed >>> 0 || 1;
	return (sides) => {
		state ^= state << 13;
		state ^= state >>> 17;
		state ^= state << 5;
		return (state >>> 0) % sides;
	};
}

const good = saveWorkbook(withPrices([1, 2, 3]));
const WORDS = [
	'__proto__',
	'constructor',
	'toString',
	'..',
	'%2e%2e',
	'%00',
	'-1',
	'0',
	'1e999',
	'NaN',
	"' or 1=1 --",
	'a'.repeat(70),
	'ÿ',
	'%ff',
	'"',
	'\\',
	'9'.repeat(20),
	'{workbook}',
	'null',
	'true',
	'[]',
	'{}'
];

export async function soakFuzz(
	{ app }: Running,
	requests: number,
	seed: number
): Promise<FuzzFigures> {
	const roll = dice(seed);
	const pick = <T>(list: readonly T[]): T => list[roll(list.length)]!;
	const made = await app.handle(asked('POST', '/api/v1/workbooks', good, {}), 'fuzz');
	const { id } = (await made.json()) as { id: string };
	const faults: string[] = [];
	const statuses: Record<number, number> = {};
	const used = () => {
		globalThis.gc?.();
		return process.memoryUsage().heapUsed / 1024 / 1024;
	};
	let before = used();
	for (let i = 0; i < requests; i++) {
		if (i === Math.floor(requests / 10)) before = used();
		const route = pick(ROUTES);
		if (route.path.endsWith('/events') || route.path.endsWith('/evaluate')) continue;
		const method =
			roll(8) === 0 ? pick(['GET', 'POST', 'PUT', 'DELETE', 'PATCH', 'HEAD']) : route.method;
		// The workbook stays, or every later request would meet none.
		if (method === 'DELETE' && route.path.endsWith('{workbook}')) continue;
		const path = route.path.replace(/\{(\w+)\}/g, (_all, name: string) =>
			name === 'workbook' && roll(4) > 0 ? id : roll(3) === 0 ? '1' : encodeURI(pick(WORDS))
		);
		const query =
			roll(3) === 0
				? `?${pick(['limit', 'before', 'at', 'from', 'quantity', 'x'])}=${encodeURIComponent(pick(WORDS))}`
				: '';
		const headers: Record<string, string> = {};
		if (roll(2))
			headers['if-match'] = pick(['"1"', '"2"', '*', '"999999999"', 'W/"1"', '', '"-1"']);
		if (roll(6) === 0)
			headers['content-type'] = pick([
				'text/plain',
				'multipart/form-data',
				'',
				'application/JSON; charset=x'
			]);
		if (roll(8) === 0) headers['content-encoding'] = pick(['gzip', 'identity', 'br']);
		if (roll(8) === 0)
			headers['cookie'] = pick([
				'metrewright=',
				'metrewright=x'.repeat(50),
				';;;==',
				`metrewright=${'a'.repeat(43)}`
			]);
		if (roll(8) === 0)
			headers['metrewright-reason'] = pick(['%', '%ff', 'a'.repeat(5000), '%F0%9F']);
		const body = method === 'GET' || method === 'HEAD' ? undefined : nonsense(roll, pick);
		let answer: Response;
		try {
			answer = await app.handle(asked(method, path + query, body, headers), `fuzz ${i % 50}`);
		} catch (error) {
			faults.push(`${method} ${path}: ${String(error)}`);
			continue;
		}
		statuses[answer.status] = (statuses[answer.status] ?? 0) + 1;
		if (answer.status >= 500) faults.push(`${method} ${path}${query}: ${await answer.text()}`);
		else await answer.body?.cancel();
	}
	return { requests, faults, statuses, growthMb: used() - before };
}

function nonsense(roll: (sides: number) => number, pick: <T>(list: readonly T[]) => T): string {
	switch (roll(10)) {
		case 0:
			return '';
		case 1:
			return '['.repeat(1 + roll(5000));
		case 2:
			return `{"a":${'9'.repeat(1 + roll(400))}e${roll(999)}}`;
		case 3:
			return `{"__proto__":{"steward":true},"constructor":${JSON.stringify(pick(WORDS))}}`;
		case 4:
			return '{"a":1,"a":2}';
		case 5:
			return JSON.stringify({
				[pick(WORDS)]: pick(WORDS),
				name: pick(WORDS),
				email: pick(WORDS),
				password: pick(WORDS),
				role: 'owner'
			});
		case 6: {
			// A workbook with one place spoiled.
			const at = roll(good.length);
			return good.slice(0, at) + pick(WORDS) + good.slice(at + roll(6));
		}
		case 7:
			return good.slice(0, roll(good.length));
		case 8:
			return good.replaceAll('price_1', pick(WORDS).replace(/["\\]/g, ''));
		default:
			return good.replace('"value": 2', `"value": ${roll(1_000_000)}`);
	}
}

function asked(
	method: string,
	path: string,
	body: string | undefined,
	headers: Record<string, string>
): Request {
	return new Request(`http://127.0.0.1:5180${path}`, {
		method,
		headers: { 'content-type': 'application/json', [OWN_HEADER]: '1', ...headers },
		...(body !== undefined && { body })
	});
}
