/** The order of the layers: a folder imports only from its own and from those below it. */
import { describe, expect, it } from 'vitest';

const BELOW: Record<string, readonly string[]> = {
	units: [],
	protocol: [],
	formula: ['units'],
	workbook: ['units', 'formula'],
	engine: ['units', 'formula', 'workbook'],
	programmes: ['units', 'formula', 'workbook', 'engine'],
	studies: ['units', 'formula', 'workbook', 'engine', 'programmes'],
	exchange: ['units', 'formula', 'workbook', 'engine'],
	browser: [
		'protocol',
		'units',
		'formula',
		'workbook',
		'engine',
		'programmes',
		'studies',
		'exchange'
	],
	server: [
		'protocol',
		'units',
		'formula',
		'workbook',
		'engine',
		'programmes',
		'studies',
		'exchange'
	],
	ui: [
		'protocol',
		'units',
		'formula',
		'workbook',
		'engine',
		'programmes',
		'studies',
		'exchange',
		'browser'
	]
};
const PURE = [
	'protocol',
	'units',
	'formula',
	'workbook',
	'engine',
	'programmes',
	'studies',
	'exchange'
];

const sources = import.meta.glob<string>('/src/lib/**/*.{ts,svelte}', {
	query: '?raw',
	import: 'default',
	eager: true
});
const files = Object.entries(sources);

const layerOf = (path: string) => path.split('/')[3]!;
const imports = (source: string) =>
	[...source.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map((match) => match[1]!);

describe('the layers', () => {
	it('are all known, so that a new folder states what it may import', () => {
		expect(files.length).toBeGreaterThan(20);
		for (const [path] of files) expect(Object.keys(BELOW)).toContain(layerOf(path));
	});

	it.each(files)('%s imports only its own or lower layers', (path, source) => {
		const own = layerOf(path);
		for (const name of imports(source)) {
			const used = /^\$lib\/(\w+)\//.exec(name)?.[1];
			if (used) expect([own, ...BELOW[own]!], `imports ${name}`).toContain(used);
			if (name.startsWith('../')) expect(escapes(path, name), `climbs out by ${name}`).toBe(false);
		}
	});

	it('has one door to the solver of programmes', () => {
		const doors = files.filter(([, source]) => imports(source).some((name) => /^highs/.test(name)));
		expect(doors.map(([path]) => path)).toEqual(['/src/lib/programmes/highs.ts']);
	});

	it.each(files.filter(([path]) => PURE.includes(layerOf(path))))(
		'%s is pure: no page, no framework, no Node, no clock',
		(_path, source) => {
			for (const name of imports(source))
				expect(name).not.toMatch(/^(svelte|\$app|node:|@sveltejs|chart\.js|idb)/);
			expect(source).not.toMatch(/\b(document|window|localStorage|indexedDB)\./);
			expect(source).not.toMatch(/\bDate\.now\(|new Date\(\)|Math\.random\(|performance\.now\(/);
		}
	);
});

/** Whether a relative import leaves the layer's folder. */
function escapes(path: string, name: string): boolean {
	const depth = path.split('/').length - 5;
	return name.split('/').filter((part) => part === '..').length > depth;
}
