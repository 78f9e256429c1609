/** The order of the layers: a folder imports only from its own and from those below it. */
import { describe, expect, it } from 'vitest';

const CORE = ['units', 'formula', 'workbook', 'engine'];
const PURE = [
	'protocol',
	...CORE,
	'programmes',
	'studies',
	'calibration',
	'exchange',
	'review',
	'seeding'
];
const BELOW: Record<string, readonly string[]> = {
	units: [],
	protocol: ['workbook'],
	formula: ['units'],
	workbook: ['units', 'formula'],
	engine: ['units', 'formula', 'workbook'],
	programmes: CORE,
	studies: [...CORE, 'programmes'],
	calibration: ['units', 'workbook', 'studies'],
	exchange: [...CORE, 'review'],
	review: CORE,
	seeding: [...CORE, 'studies', 'review'],
	// Papers say what screens say, by the same words and digits: of `ui` they reach what is pure alone (below).
	papers: [...PURE, 'ui'],
	browser: PURE,
	server: [...PURE, 'papers'],
	ui: [...PURE, 'browser', 'papers']
};

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
		const doors = files.filter(([, source]) => imports(source).some((name) => name === 'highs'));
		expect(doors.map(([path]) => path)).toEqual(['/src/lib/programmes/highs.ts']);
	});

	it.each(files.filter(([path]) => [...PURE, 'papers'].includes(layerOf(path))))(
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

/** The order inside `engine`: what a folder may reach through all its imports, besides the files beside the folders. */
const ENGINE: Record<string, readonly string[]> = {
	planner: [],
	interpreter: [],
	cells: [],
	second: ['cells']
};

const ENGINE_FOLDER = '/src/lib/engine/';
const engineFolder = (path: string) =>
	path.startsWith(ENGINE_FOLDER)
		? /^([\w-]+)\//.exec(path.slice(ENGINE_FOLDER.length))?.[1]
		: undefined;

describe('the folders of the engine', () => {
	it('are all known', () => {
		const folders = new Set(files.map(([path]) => engineFolder(path)).filter(Boolean));
		expect([...folders].sort()).toEqual(Object.keys(ENGINE).sort());
	});

	it.each(Object.entries(ENGINE))('%s reaches only %j and itself', (folder, below) => {
		const graph = importsOf(sources, () => true);
		const seen = new Set<string>();
		const stack = files.map(([path]) => path).filter((path) => engineFolder(path) === folder);
		expect(stack.length).toBeGreaterThan(3);
		for (let path = stack.pop(); path !== undefined; path = stack.pop()) {
			if (seen.has(path)) continue;
			seen.add(path);
			stack.push(...(graph.get(path) ?? []));
		}
		const reached = new Set([...seen].map(engineFolder).filter(Boolean));
		expect([folder, ...below]).toEqual(expect.arrayContaining([...reached]));
	});
});

describe('papers', () => {
	it('reach of the screen what is pure alone', () => {
		const graph = importsOf(sources, (_from, _to, isType) => !isType);
		const seen = new Set<string>();
		const stack = files.map(([path]) => path).filter((path) => layerOf(path) === 'papers');
		for (let path = stack.pop(); path !== undefined; path = stack.pop()) {
			if (seen.has(path)) continue;
			seen.add(path);
			stack.push(...(graph.get(path) ?? []));
		}
		expect([...seen].filter((path) => /\.svelte(\.ts)?$/.test(path))).toEqual([]);
		expect([...seen].filter((path) => layerOf(path) === 'browser')).toEqual([]);
	});
});

/**
 * A type vanishes when the program is built, and a class may lie apart from the functions that work on it; so
 * imports of types alone may lead back, but within one folder only: between folders they count like all others.
 */
describe('imports', () => {
	const all = {
		...sources,
		...import.meta.glob<string>('/src/cli/**/*.ts', {
			query: '?raw',
			import: 'default',
			eager: true
		})
	};

	it('go in no circle', () => {
		const graph = importsOf(all, (from, to, isType) => !isType || folderOf(from) !== folderOf(to));
		expect(graph.size).toBeGreaterThan(500);
		expect([...graph.values()].reduce((count, to) => count + to.length, 0)).toBeGreaterThan(2000);
		expect(circleIn(graph)).toEqual([]);
	});

	it('that go in a circle are found', () => {
		const circle = new Map([
			['a', ['b', 'd']],
			['b', ['c']],
			['c', ['a']],
			['d', []]
		]);
		expect(circleIn(circle)).toEqual(['a', 'b', 'c', 'a']);
	});
});

const folderOf = (path: string) => path.slice(0, path.lastIndexOf('/'));

/** Which files each file imports, of those that are given. */
function importsOf(
	texts: Record<string, string>,
	counts: (from: string, to: string, isType: boolean) => boolean
): Map<string, string[]> {
	const statement = /^\s*(?:import|export)\s+(type\s)?([^;'"]*?)from\s*'([^']+)'/gm;
	return new Map(
		Object.entries(texts).map(([path, source]) => {
			const found: string[] = [];
			for (const [, type, names, name] of source.matchAll(statement)) {
				const base = name!.startsWith('$lib/')
					? `/src/lib/${name!.slice('$lib/'.length)}`
					: name!.startsWith('.')
						? new URL(name!, `file://${path}`).pathname
						: null;
				const to = base && [base, `${base}.ts`].find((candidate) => candidate in texts);
				const listed = /^\{([^}]*)\}\s*$/.exec(names!)?.[1]?.split(',') ?? [];
				const isType =
					type !== undefined ||
					(listed.length > 0 && listed.every((item) => /^\s*(type\s|$)/.test(item)));
				if (to && counts(path, to, isType)) found.push(to);
			}
			return [path, found];
		})
	);
}

/** The first circle, from a file back to itself; empty where there is none. */
function circleIn(graph: ReadonlyMap<string, readonly string[]>): string[] {
	const done = new Set<string>();
	const trail: string[] = [];
	const visit = (path: string): string[] => {
		if (trail.includes(path)) return [...trail.slice(trail.indexOf(path)), path];
		if (done.has(path)) return [];
		trail.push(path);
		for (const next of graph.get(path) ?? []) {
			const circle = visit(next);
			if (circle.length > 0) return circle;
		}
		trail.pop();
		done.add(path);
		return [];
	};
	for (const path of graph.keys()) {
		const circle = visit(path);
		if (circle.length > 0) return circle;
	}
	return [];
}
